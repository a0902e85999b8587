"""What the crop took: the short table; feed, light and electricity, work and cost in full."""

from collections import defaultdict
from contextlib import suppress

from growlog.calculations.dose_units import dose_per_litre
from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.records.display import fixed, plain
from growlog.records.entry import Training
from growlog.services.money.labour import Work
from growlog.services.money.lines import CostKind
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.lines import LineOf, Shown
from growlog.services.review.wording import amount, joined, minor_money, money, of_figure, shortened, work
from growlog.words import say, say_count


def took_lines() -> list[LineOf]:
    """The short table of the first page."""
    return [
        LineOf("light-sum", say("Light at the canopy"), lambda c: of_figure(c.figure("light-sum"), 0), "light-sum"),
        LineOf("power", say("Power"), _power, "kwh", beside=lambda c: of_figure(c.figure("kwh"), 0)),
        LineOf("feed", say("Feed"), _feed, _feed_figure),
        LineOf("pollinating", say("Pollinating"), _pollinating, beside=_pollinating_time),
        LineOf("other-work", say("All other work"), _other_work, "labour-minutes"),
        LineOf("all-costs", say("All costs"), _all_costs, "cost", beside=_total_cost, is_money=True),
    ]


def feed_lines() -> list[LineOf]:
    """Feed plan and totals."""
    return [
        LineOf("feeds", say("Feeds"), _feeds),
        LineOf("mixes", say("Mixes, in order"), _mixes),
        LineOf("concentrates", say("Poured into it"), _poured, _poured_figure, beside=_poured_amounts),
        LineOf("feed-ec", say("Mean EC given"), lambda c: _mean_of(c, "ec_ms_per_cm", "mS/cm")),
        LineOf("drain-ec", say("Mean EC of the drain"), lambda c: _mean_of(c, "drain_ec_ms_per_cm", "mS/cm")),
        LineOf("feed-ph", say("Mean pH given"), lambda c: _mean_of(c, "ph", "")),
        LineOf("feed-cost", say("Nutrients"), lambda c: _cost_of(c, CostKind.NUTRIENTS), is_money=True),
    ]


def light_lines() -> list[LineOf]:
    """Light and electricity."""
    return [
        LineOf("photoperiod", say("Hours of light, at the end"), _hours),
        LineOf("ppfd", say("At the canopy, at the end"), lambda c: of_figure(c.figure("canopy-ppfd"), 0),
               "canopy-ppfd"),
        LineOf("mean-dli", say("A day, on average"), lambda c: of_figure(c.figure("mean-dli"), 1, "mol/m²"),
               "mean-dli"),
        LineOf("usual-dli", say("Usual for such a crop"), _usual_light, "usual-dli"),
        LineOf("lamp-kwh", say("Power of the lamps"), lambda c: _kwh(c, "kwh-lamps"), "kwh-lamps"),
        LineOf("device-kwh", say("Power of fans, pumps and the like"), lambda c: _kwh(c, "kwh-devices"),
               "kwh-devices"),
        LineOf("kwh-per-kg", say("Power for a kg of fruit"), lambda c: of_figure(c.figure("kwh-per-kg"), 0, "kWh"),
               "kwh-per-kg"),
    ]  # fmt: skip


def training_lines() -> list[LineOf]:
    """Training and work."""
    lines = [
        LineOf("training", say("Training"), _training),
        LineOf("work", say("Work in all"), lambda c: work(c.labour.minutes) if c.labour.minutes else "",
               "labour-minutes"),
        LineOf("work-per-fruit", say("Work for a fruit"), _per_fruit, "minutes-per-fruit"),
    ]  # fmt: skip
    return lines + [LineOf(f"work-{w}", _work_label(w), _work_shown(w)) for w in Work]


def cost_lines() -> list[LineOf]:
    """Cost by kind, and what a fruit came to."""
    kinds = [LineOf(f"cost-{k}", _upper(say(k.label)), _cost_shown(k), _explained(k), is_money=True) for k in CostKind]
    return [
        *kinds,
        LineOf("cost", say("All costs"), _total_cost, "cost", is_money=True),
        LineOf("cost-per-fruit", say("A fruit"), lambda c: _per(c, "cost-per-fruit"), "cost-per-fruit",
               is_money=True),
        LineOf("cost-per-kg", say("A kg of fruit"), lambda c: _per(c, "cost-per-kg"), "cost-per-kg", is_money=True),
        LineOf("cost-per-day", say("A day"), lambda c: _per(c, "cost-per-day"), "cost-per-day", is_money=True),
        LineOf("shop-fruit", say("A shop asks for a fruit"), lambda c: _shop(c, c.crop.shop_price_minor_per_fruit),
               is_money=True),
        LineOf("shop-kg", say("A shop asks for a kg"), lambda c: _shop(c, c.crop.shop_price_minor_per_kg),
               is_money=True),
    ]  # fmt: skip


def poured(crop: CropFigures) -> dict[tuple[str, str], float]:
    """How much of each product went into the crop's own feeds, by its mixes: (product, measure) to amount."""
    found: dict[tuple[str, str], float] = defaultdict(float)
    for feed, share in crop.shared_feeds:
        mix = crop.mixes.get(feed.mix_id or "")
        if mix is None or feed.volume_l is None:
            continue
        factor = share * feed.volume_l * (100.0 if feed.strength_percent is None else feed.strength_percent) / 100
        for part in mix.parts:
            with suppress(ValueError):  # a dose per tank: how large the tank was is not known here
                dose = dose_per_litre(part.dose_per_l, part.unit)
                found[part.product, dose.measure] += dose.amount * factor
    return dict(found)


def _power(crop: CropFigures) -> str:
    kwh = of_figure(crop.figure("kwh"), 0)
    per_kg = crop.number("kwh-per-kg")
    if not kwh or per_kg is None:
        return kwh
    return say("{kwh}, {per_kg} a kg", kwh=kwh, per_kg=amount(per_kg, 0, ""))


def _feed(crop: CropFigures) -> str:
    return fixed(crop.litres, 0, "L") if crop.litres else ""


def _feed_figure(crop: CropFigures) -> Figure:
    given = (Input("feeds", len(crop.feeds)), Input("with a volume", sum(f.volume_l is not None for f in crop.feeds)))
    method = say("The volumes of feeds and plain water, added up; of a tank's feeds an equal part.")
    return Figure("feed-volume", round(crop.litres, 3), "L", given, method, DEFINITION, Sure.PUBLISHED)


def _pollinating(crop: CropFigures) -> str:
    minutes = crop.number(f"minutes-{Work.POLLINATION}") or 0
    rounds = len(crop.pollinations)
    if not rounds and not minutes:
        return ""
    return joined(say_count("{n} round", "{n} rounds", rounds), work(minutes) if minutes else "")


def _pollinating_time(crop: CropFigures) -> str:
    minutes = crop.number(f"minutes-{Work.POLLINATION}") or 0
    rounds = len(crop.pollinations)
    return work(minutes) if minutes else say_count("{n} round", "{n} rounds", rounds) if rounds else ""


def _other_work(crop: CropFigures) -> str:
    minutes = crop.labour.minutes - (crop.number(f"minutes-{Work.POLLINATION}") or 0)
    return work(minutes) if minutes > 0.5 else ""


def _all_costs(crop: CropFigures) -> str:
    if crop.figure("cost") is None:
        return ""
    total = money(crop.costs.total, crop.currency)
    power = crop.costs.by_kind.get(CostKind.ENERGY)
    return say("{total}, power {power} of it", total=total, power=minor_money(power, "")) if power else total


def _total_cost(crop: CropFigures) -> str:
    return "" if crop.figure("cost") is None else money(crop.costs.total, crop.currency)


def _feeds(crop: CropFigures) -> str:
    water = sum(f.water_only for f in crop.feeds)
    fed = len(crop.feeds) - water
    if not crop.feeds:
        return ""
    plain = say_count("{n} of plain water", "{n} of plain water", water) if water else ""
    return joined(say_count("{n} feed", "{n} feeds", fed), plain)


def _mixes(crop: CropFigures) -> str:
    return shortened(crop.mixes[f.mix_id or ""].name for f in crop.feeds if f.mix_id in crop.mixes)


def _poured(crop: CropFigures) -> str:
    return ", ".join(_poured_words(*key, value) for key, value in poured(crop).items() if value)


def _poured_amounts(crop: CropFigures) -> str:
    return ", ".join(_measured(measure, value) for (_, measure), value in poured(crop).items() if value)


def _poured_words(product: str, measure: str, value: float) -> str:
    return say("{amount} of {product}", amount=_measured(measure, value), product=product)


def _measured(measure: str, value: float) -> str:
    if value < 100:
        return fixed(value, 0 if round(value, 1) == int(value) else 1, measure)
    return fixed(value / 1000, 2, {"mL": "L", "g": "kg"}.get(measure, measure))


def _poured_figure(crop: CropFigures) -> Figure:
    given = tuple(Input(product, round(value, 1), measure) for (product, measure), value in poured(crop).items())
    method = say("Of each feed the dose of its mix times the strength and the litres, added up.")
    return Figure("poured", len(given), "", given, method, DEFINITION, Sure.PUBLISHED)


def _mean_of(crop: CropFigures, name: str, unit: str) -> str:
    values = [v for f in crop.feeds if (v := getattr(f, name)) is not None]
    return fixed(sum(values) / len(values), 1, unit) if values else ""


def _hours(crop: CropFigures) -> str:
    hours = crop.number("photoperiod")
    return "" if hours is None else plain(hours, "h")


def _usual_light(crop: CropFigures) -> str:
    figure = crop.figure("usual-dli")
    if figure is None or figure.low is None:
        return ""
    if figure.high is None or figure.high == figure.low:
        return say("{low} or more", low=amount(figure.low, 0, "mol/m²"))
    return say("{low} to {high}", low=amount(figure.low, 0, ""), high=amount(figure.high, 0, "mol/m²"))


def _kwh(crop: CropFigures, key: str) -> str:
    return of_figure(crop.figure(key), 0) if crop.number(key) else ""


def _training(crop: CropFigures) -> str:
    done = [e.detail for e in crop.entries if isinstance(e.detail, Training)]
    leaves = sum(t.old_leaves_removed or 0 for t in done)
    shoots = sum(t.side_shoots_removed or 0 for t in done)
    if not done:
        return ""
    return joined(
        say_count("{n} time", "{n} times", len(done)),
        say_count("{n} old leaf", "{n} old leaves", leaves) if leaves else "",
        say_count("{n} side shoot", "{n} side shoots", shoots) if shoots else "",
    )


def _per_fruit(crop: CropFigures) -> str:
    return of_figure(crop.figure("minutes-per-fruit"), 1, "min")


def _work_label(which: Work) -> str:
    return say("of which {work}", work=say(which.label))


def _work_shown(which: Work) -> Shown:
    def show(crop: CropFigures) -> str:
        minutes = crop.number(f"minutes-{which}") or 0
        return work(minutes) if minutes >= 0.5 else ""

    return show


def _cost_shown(kind: CostKind) -> Shown:
    return lambda crop: _cost_of(crop, kind)


def _explained(kind: CostKind) -> str:
    """Costs that are shared or worked out need a word; a purchase explains itself."""
    return f"cost-{kind}" if kind in (CostKind.ENERGY, CostKind.NUTRIENTS, CostKind.GEAR) else ""


def _cost_of(crop: CropFigures, kind: CostKind) -> str:
    return of_money(crop, f"cost-{kind}")


def of_money(crop: CropFigures, key: str) -> str:
    """A figure of money in words."""
    value = crop.number(key)
    return "" if value is None else money(value, crop.currency)


def _per(crop: CropFigures, key: str) -> str:
    value = crop.number(key)
    return "" if value is None else money(value, crop.currency)


def _shop(crop: CropFigures, minor: int | None) -> str:
    return "" if minor is None else minor_money(minor, crop.currency)


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]
