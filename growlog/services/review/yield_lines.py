"""What the crop gave: the short table, and production in full."""

from growlog.calculations.explained_figure import COMMON_PRACTICE, DEFINITION, Figure, Input, Sure
from growlog.calculations.plant_age import day_at
from growlog.calculations.yield_facts import EARLY_DAYS
from growlog.records.display import fixed
from growlog.records.entry.pick import CullCause
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.lines import LineOf
from growlog.services.review.wording import amount, days, grams, joined
from growlog.words import say, say_count, show_number


def gave_lines() -> list[LineOf]:
    """The short table of the first page."""
    return [
        LineOf("early", say("Early yield, first two weeks"), _early, _early_figure),
        LineOf("best-week", say("Best week"), _best_week, _peak_figure, beside=_peak_amount),
        LineOf("culled", say("Culled besides"), _culled, beside=_culled_count),
        LineOf("mean-fruit", say("Mean fruit"), _mean),
        LineOf("per-m2", say("Per m² of floor"), _per_m2, _per_m2_figure),
        LineOf("taste-keeping", say("Taste; keeping"), _taste_and_keeping),
    ]


def production_lines() -> list[LineOf]:
    """Production in full."""
    return [
        LineOf("fruit", say("Marketable fruit"), _fruit),
        LineOf("weight", say("Their weight"), _weight, _weight_figure),
        LineOf("marketable", say("Marketable of all picked"), _marketable),
        LineOf("culls", say("Culled, by cause"), _culls),
        LineOf("sessions", say("Picking days"), _sessions),
        LineOf("per-week", say("A week, from first to last pick"), _per_week),
        LineOf("trend", say("Fruit weight, change a week"), _trend),
        LineOf("per-plant", say("A plant"), _per_plant),
        LineOf("per-hour", say("An hour of work"), lambda c: _ratio(c.ratios.g_per_labour_hour)),
        LineOf("per-litre", say("A litre of feed"), lambda c: _ratio(c.ratios.g_per_litre_feed)),
    ]


def fruit_words(count: int) -> str:
    """So many fruit."""
    return say_count("{n} fruit", "{n} fruit", count)


def _early(crop: CropFigures) -> str:
    facts = crop.facts
    if not facts.early_count and not facts.early_g:
        return ""
    shown = grams(facts.early_g) or fruit_words(facts.early_count)
    return shown if facts.early_is_over else say("{amount} so far", amount=shown)


def _early_figure(crop: CropFigures) -> Figure:
    method = say("Marketable yield of the first 14 days of picking, the day of the first pick included.")
    given = (Input("fruit", crop.facts.early_count), Input("days", EARLY_DAYS, "d"))
    return Figure("early-yield", crop.facts.early_g, "g", given, method, COMMON_PRACTICE, Sure.COMMON_PRACTICE)


def _best_week(crop: CropFigures) -> str:
    if crop.peak is None:
        return ""
    first = crop.peak.start_age
    span = say("days {first} to {last}", first=first, last=first + 6)
    return joined(span, grams(crop.peak.weight_g) or fruit_words(crop.peak.fruit_count))


def _peak_amount(crop: CropFigures) -> str:
    return "" if crop.peak is None else grams(crop.peak.weight_g) or fruit_words(crop.peak.fruit_count)


def _peak_figure(crop: CropFigures) -> Figure | None:
    if crop.peak is None:
        return None
    day = day_at(crop.crop.day_zero, crop.peak.start_age)
    method = say("The seven days with most marketable fruit, of equal ones with most weight, then the earliest.")
    given = (Input("fruit", crop.peak.fruit_count), Input("first day", day.isoformat(), "", day))
    return Figure("peak-week", crop.peak.weight_g, "g", given, method, DEFINITION, Sure.PUBLISHED)


def _culled(crop: CropFigures) -> str:
    if not crop.facts.fruit_count and not crop.facts.culled_count:
        return ""
    share = 100 - (crop.facts.marketable_percent or 0)
    if not crop.facts.culled_count:
        return say("none")
    percent = fixed(share, 0, "%")
    return say("{fruit}, {percent} by count", fruit=fruit_words(crop.facts.culled_count), percent=percent)


def _culled_count(crop: CropFigures) -> str:
    any_picked = crop.facts.fruit_count or crop.facts.culled_count
    return show_number(crop.facts.culled_count, 0) if any_picked else ""


def _mean(crop: CropFigures) -> str:
    return grams(crop.facts.mean_fruit_g)


def _per_m2(crop: CropFigures) -> str:
    g = crop.ratios.g_per_m2
    return "" if g is None else amount(g / 1000, 1, "kg")


def _per_m2_figure(crop: CropFigures) -> Figure | None:
    if crop.ratios.g_per_m2 is None or crop.floor_m2 is None:
        return None
    method = say("The weight of the marketable fruit over the crop's part of the floor of its room.")
    given = (Input("weight", round(crop.facts.weight_g, 1), "g"), Input("floor", round(crop.floor_m2, 3), "m²"))
    return Figure("weight-per-m2", crop.ratios.g_per_m2, "g/m²", given, method, DEFINITION, Sure.PUBLISHED)


def _taste_and_keeping(crop: CropFigures) -> str:
    return "; ".join(t for t in (crop.crop.taste.strip(), crop.crop.keeping.strip()) if t)


def _fruit(crop: CropFigures) -> str:
    return show_number(crop.facts.fruit_count, 0) if crop.picks else ""


def _weight(crop: CropFigures) -> str:
    shown = grams(crop.facts.weight_g)
    return say("{amount}, {part} of it estimated", amount=shown, part=grams(crop.facts.estimated_g)) if (
        shown and crop.facts.estimated_g
    ) else shown  # fmt: skip


def _weight_figure(crop: CropFigures) -> Figure | None:
    """Only an estimate needs a word."""
    return crop.figure("yield-weight") if crop.facts.estimated_g else None


def _marketable(crop: CropFigures) -> str:
    return amount(crop.facts.marketable_percent, 0, "%")


def _culls(crop: CropFigures) -> str:
    causes = crop.facts.culls
    return ", ".join(f"{causes[c.value]} {say(c.label)}" for c in CullCause if causes.get(c.value))


def _sessions(crop: CropFigures) -> str:
    facts = crop.facts
    if not facts.sessions:
        return ""
    if facts.longest_gap_days is None:
        return show_number(facts.sessions, 0)
    return say("{n}, at most {gap} apart", n=facts.sessions, gap=days(facts.longest_gap_days))


def _per_week(crop: CropFigures) -> str:
    facts = crop.facts
    if facts.fruit_per_week is None:
        return ""
    return joined(say("{n} fruit", n=show_number(facts.fruit_per_week, 1)), grams(facts.g_per_week))


def _trend(crop: CropFigures) -> str:
    trend = crop.facts.trend
    if trend is None:
        return ""
    if not trend.is_clear:
        return say("no clear change")
    sign = "+" if trend.g_per_week > 0 else "−"
    return f"{sign}{amount(abs(trend.g_per_week), 1, 'g')}"


def _per_plant(crop: CropFigures) -> str:
    if crop.ratios.fruit_per_plant is None or not crop.picks:
        return ""
    fruit = say("{n} fruit", n=show_number(crop.ratios.fruit_per_plant, 0))
    return joined(fruit, grams(crop.ratios.g_per_plant))


def _ratio(value_g: float | None) -> str:
    return grams(value_g)
