"""What a card of the crop list says."""

from growlog.records.display import weight
from growlog.services.crops import CropSummary
from growlog.words import say, say_count


def age_line(summary: CropSummary) -> str:
    """The species and the plant age of today, or how many days it stood."""
    values = {"species": summary.cultivar.species, "n": summary.age_days}
    if summary.crop.growing:
        return say("{species}, day {n}", **values)
    days = say_count("{n} day", "{n} days", summary.age_days)
    return say("{species}, {days}", species=summary.cultivar.species, days=days)


def yield_line(summary: CropSummary) -> str:
    """The yield so far; without one the first flower; without that, that there is no fruit yet."""
    total = summary.total
    if total.fruit_count:
        fruit = say_count("{n} fruit", "{n} fruit", total.fruit_count)
        if not total.weight_g:
            return say("{fruit}, not weighed", fruit=fruit)
        heavy = weight(total.weight_g)
        if total.estimated_g or total.unknown_count:
            heavy = say("about {weight}", weight=heavy)
        return f"{fruit}, {heavy}"
    if summary.first_flower_age is not None:
        return say("first flower day {n}", n=summary.first_flower_age)
    return say("no fruit yet") if summary.crop.growing else say("no fruit")


def spoken(summary: CropSummary) -> str:
    """All of a card in one sentence for a screen reader."""
    return f"{summary.crop.name}: {age_line(summary)}; {yield_line(summary)}"
