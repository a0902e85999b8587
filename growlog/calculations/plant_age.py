"""Plant age: whole civil days since day 0."""

from datetime import date, timedelta

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.words import say


def age_on(day_zero: date, day: date) -> int:
    """Plant age in days on a civil date; day_zero itself is 0, days before it are negative."""
    return (day - day_zero).days


def day_at(day_zero: date, age_days: int) -> date:
    """The civil date of a plant age."""
    return day_zero + timedelta(days=age_days)


def packet_age(packet_days: int, counts_from: date | None, day_zero: date) -> int | None:
    """The plant age at which the packet promises the first pick.

    packet_days: 1 to 400, counted from the civil date counts_from (sowing, emergence or transplanting, as the
    packet means it); None where that day has not come or was not noted.
    """
    return None if counts_from is None else age_on(day_zero, counts_from) + packet_days


def explain_plant_age(day_zero: date, day: date) -> Figure:
    """The plant age on a civil date, with its explanation. No range: days before day_zero are negative."""
    given = (Input("sown", day_zero.isoformat(), "", day_zero), Input("day", day.isoformat(), "", day))
    method = say("Whole civil days since sowing; the day of sowing is day 0.")
    return Figure("plant-age", age_on(day_zero, day), "d", given, method, DEFINITION, Sure.PUBLISHED, as_of=day)
