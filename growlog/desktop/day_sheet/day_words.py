"""How the day sheet and the views of its photo name a day."""

from datetime import date

from growlog.desktop.locale_forms import day_in_form
from growlog.words import say


def weekday_and_day(day: date) -> str:
    """A day with its weekday, without the year: the age beside it says which year is meant."""
    return weekday_forms(day)[0]


def weekday_forms(day: date) -> tuple[str, ...]:
    """The same in shorter and shorter forms, in the locale's order and with its marks."""
    return tuple(day_in_form(day, skeleton) for skeleton in ("MMMMEEEEd", "MMMEd", "MMMd"))


def day_and_month(day: date) -> str:
    """A day without its weekday."""
    return day_in_form(day, "MMMMd")


def age_words(age: int) -> str:
    """A plant age as a title."""
    return say("Day {age}", age=age)


def age_and_day(age: int, day: date) -> str:
    """A plant age and its day of the calendar."""
    return say("Day {age}, {day}", age=age, day=day_and_month(day))


def lost_sentence() -> str:
    """What stands in the place of a picture that is gone."""
    return say("This picture cannot be shown: its file is missing from the logbook's photo folder, or damaged.")
