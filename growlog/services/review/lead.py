"""The first paragraph: what came of it and what it took, in sentences."""

from collections.abc import Iterator

from growlog.calculations.yield_curve import first_pick_age
from growlog.records.display import fixed
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.wording import days, grams, money, work
from growlog.words import say, say_count, show_day_of_year


def lead_of(crop: CropFigures, *, with_money: bool) -> tuple[str, ...]:
    """The sentences; what is not known is left out."""
    return tuple(s for s in (_what_came(crop), *_how(crop), _what_it_took(crop, with_money=with_money)) if s)


def about_line(crop: CropFigures) -> str:
    """Below the name: what it is, how it was grown, from when until when."""
    record = crop.crop
    first = show_day_of_year(record.day_zero)
    until = None if record.cleared_on is None else show_day_of_year(record.cleared_on)
    span = say("since {first}", first=first) if until is None else say("{first} to {last}", first=first, last=until)
    return "; ".join(t for t in (_kind(crop), _grown_in(crop), span) if t)


def first_pick(crop: CropFigures) -> int | None:
    """The plant age of the first pick, as stated or picked."""
    stated = crop.crop.first_pick_on
    return crop.age_of(stated) if stated is not None else first_pick_age(crop.picks)


def _kind(crop: CropFigures) -> str:
    species, name = crop.cultivar.species.strip(), crop.cultivar.name.strip()
    shown = species[:1].upper() + species[1:]
    return say("{species}, cultivar {name}", species=shown, name=name) if (
        name and name.casefold() != crop.crop.name.strip().casefold()
    ) else shown  # fmt: skip


def _grown_in(crop: CropFigures) -> str:
    record = crop.crop
    size = fixed(record.container_l, 0 if record.container_l == int(record.container_l) else 1, "L") if (
        record.container_l
    ) else ""  # fmt: skip
    plants = say_count("{n} plant", "{n} plants", len(crop.plants)) if crop.plants else ""
    medium = " ".join(t for t in (say("{size} of", size=size) if size and record.medium else size, record.medium) if t)
    place = say("{plants} in {place}", plants=plants, place=medium) if plants and medium else plants or medium
    return ", ".join(t for t in (place, record.system.strip()) if t)


def _what_came(crop: CropFigures) -> str:
    facts = crop.facts
    age = days(crop.age)
    if not crop.age and not facts.fruit_count and not facts.culled_count:
        return say("It has just begun.")
    if not facts.fruit_count:
        what = say("nothing was picked") if not facts.culled_count else say("all that was picked was culled")
        return say("In {days} {what}.", days=age, what=what)
    fruit = say_count("{n} fruit", "{n} fruit", facts.fruit_count)
    weight = grams(facts.weight_g)
    if weight and facts.estimated_g:
        weight = say("about {weight}", weight=weight)
    what = f"{fruit}, {weight}" if weight else fruit
    return say("{what}, in {days}.", what=what, days=age)


def _how(crop: CropFigures) -> Iterator[str]:
    first = first_pick(crop)
    if first is not None:
        yield _first_sentence(first, crop.packet_age)
    elif crop.packet_age is not None and crop.crop.growing and crop.age < crop.packet_age:
        yield say("The packet says day {age}.", age=crop.packet_age)
    picked = crop.facts.fruit_count + crop.facts.culled_count
    if crop.flowers_pollinated and picked:
        yield say("{picked} fruit were picked, culls counted, of {flowers} flowers pollinated.", picked=picked,
                  flowers=crop.flowers_pollinated)  # fmt: skip


def _first_sentence(first: int, packet: int | None) -> str:
    if packet is None:
        return say("The first was picked on day {age}.", age=first)
    if first == packet:
        return say("The first was picked on day {age}, the day that the packet said.", age=first)
    if first < packet:
        return say("The first was picked on day {age}, {days} before the packet said.", age=first,
                   days=days(packet - first))  # fmt: skip
    return say("The first was picked on day {age}, {days} after the packet said.", age=first,
               days=days(first - packet))  # fmt: skip


def _what_it_took(crop: CropFigures, *, with_money: bool) -> str:
    parts = []
    if crop.costs.energy.kwh:
        parts.append(fixed(crop.costs.energy.kwh, 0, "kWh"))
    if crop.labour.minutes:
        parts.append(say("{span} of work", span=work(crop.labour.minutes)))
    cost = crop.number("cost") if with_money else None
    if cost is not None:
        parts.append(say("{money} in all", money=money(cost, crop.currency)))
    if not parts:
        return ""
    taken = say("{first} and {last}", first=", ".join(parts[:-1]), last=parts[-1]) if len(parts) > 1 else parts[0]
    each = crop.number("cost-per-fruit") if with_money else None
    if each is not None:
        return say("It took {taken}: {each} a fruit.", taken=taken, each=money(each, crop.currency))
    return say("It took {taken}.", taken=taken)
