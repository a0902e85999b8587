"""Days, numbers and weights in the words of the board, in the locale's form."""

from datetime import date

from babel.numbers import format_decimal

from growlog.desktop.locale_forms import babel_locale, day_in_form
from growlog.records.crop import StartedFrom
from growlog.records.cultivar import FloweringHabit
from growlog.records.display import weight
from growlog.services.board import Board
from growlog.words import mark, say, say_count

THIN = "\u2009"
_HABITS = {
    FloweringHabit.SEPARATE: mark("pollinated by hand"),
    FloweringHabit.PERFECT: mark("pollinated by shaking"),
    FloweringHabit.SETS_ALONE: mark("sets without pollination"),
    FloweringHabit.NEEDS_ANOTHER: mark("needs another plant"),
}


def number(value: float, decimals: int = 0) -> str:
    """A number with a fixed count of decimals."""
    pattern = "#,##0." + "0" * decimals if decimals else "#,##0"
    return str(format_decimal(value, pattern, locale=babel_locale()))


def short_number(value: float, most_decimals: int = 1) -> str:
    """A number without needless zeros."""
    pattern = "#,##0." + "#" * most_decimals
    return str(format_decimal(value, pattern, locale=babel_locale()))


def day_and_month(day: date) -> str:
    """Such as 15 November."""
    return day_in_form(day, "MMMMd")


def short_day(day: date) -> str:
    """Such as 15 Nov."""
    return day_in_form(day, "MMMd")


def month(day: date) -> str:
    """Such as Nov, in January with the year."""
    return day_in_form(day, "yMMM" if day.month == 1 else "MMM")


def weekday_and_day(day: date) -> str:
    """Such as Sunday 18 January."""
    return day_in_form(day, "MMMMEEEEd")


def fruit(count: int, grams: float | None, estimated: bool = False) -> str:
    """How many fruit, how heavy."""
    counted = say_count("{n} fruit", "{n} fruit", count)
    if grams is None:
        return counted
    if estimated:
        return say("{fruit}, about {weight}", fruit=counted, weight=weight(grams))
    return say("{fruit}, {weight}", fruit=counted, weight=weight(grams))


def description(board: Board) -> str:
    """The line beside the crop's name: what it is, in what it stands, its dates."""
    crop, cultivar = board.crop, board.cultivar
    what = ", ".join(p for p in (cultivar.species, say(_HABITS[cultivar.habit]), crop.medium) if p)
    start = day_and_month(board.day_zero)
    seed = crop.started_from is StartedFrom.SEED
    dates = [say("sown {day}", day=start) if seed else say("transplanted {day}", day=start)]
    if crop.cleared_on is not None:
        dates.append(say("cleared {day}", day=day_and_month(crop.cleared_on)))
    return "; ".join((what, ", ".join(dates)))


def against_packet(first_pick_age: int, packet_age: int | None) -> str:
    """The first pick's day, and how it stands against the packet."""
    if packet_age is None:
        return say("day {age}", age=first_pick_age)
    late = first_pick_age - packet_age
    if late == 0:
        return say("day {age}, as on the packet", age=first_pick_age)
    if late < 0:
        return say("day {age}, {days} early", age=first_pick_age, days=-late)
    return say("day {age}, {days} late", age=first_pick_age, days=late)
