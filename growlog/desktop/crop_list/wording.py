"""What a card of the crop list and a line of what is due say."""

from growlog.records.display import weight
from growlog.services.crops import CropSummary
from growlog.services.due import DueHow, DueItem
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


def due_title(item: DueItem) -> str:
    """What is to be done; three dots where a form opens first."""
    opens = item.how in (DueHow.FORM, DueHow.PHOTO, DueHow.CLEARING)
    return f"{item.title}\u2026" if opens else item.title


def due_more(item: DueItem) -> str:
    """How late it is, for which crop, and what one key would write."""
    late = say_count("{n} day late", "{n} days late", item.late_days) if item.late_days else ""
    return ", ".join(part for part in (late, item.crop_name or say("the room"), item.offer) if part)


def due_spoken(item: DueItem) -> str:
    """All of it in one sentence."""
    return f"{item.title}: {due_more(item)}"


def unbroken(text: str, name: str) -> str:
    """The text with its quantities and a name kept on one line each where they fit."""
    return text.replace(name, name.replace(" ", "\u00a0")).replace("\u2009", "\u202f") if name else text
