"""Days in the form of the locale that Qt's fields follow, through Babel."""

from datetime import date
from functools import cache

from babel import Locale, UnknownLocaleError
from babel.dates import format_skeleton
from PySide6.QtCore import QLocale


def babel_locale() -> Locale:
    """The locale in force; where the system states none, or one that Babel lacks, day before month."""
    return _parsed(QLocale().name())


@cache
def _parsed(name: str) -> Locale:
    try:
        return Locale.parse("en_GB" if name == "C" else name)
    except (UnknownLocaleError, ValueError):
        return Locale.parse("en_GB")


def day_in_form(day: date, skeleton: str) -> str:
    """A day with the parts that a CLDR skeleton names, such as MMMMEEEEd, in the locale's order and marks."""
    return str(format_skeleton(skeleton, day, locale=babel_locale()))
