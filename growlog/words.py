"""The one door for words, days and numbers that a user reads: a gettext catalogue and a locale.

English is the source text. `say`, `say_count` and `mark` are what the extraction of the catalogue looks for.
"""

import gettext
from datetime import date
from functools import lru_cache

_catalogue: gettext.NullTranslations = gettext.NullTranslations()
_units = "metric"
_locale = "en_GB"  # day before month, as the wall calendars of most countries have it


def install(catalogue: gettext.NullTranslations, locale: str = "") -> None:
    """Use this catalogue and locale from now on; called once, where the program is put together."""
    global _catalogue, _locale
    _catalogue = catalogue
    if _is_known(locale):
        _locale = locale


def show_units(system: str) -> None:
    """Which units sentences speak in from now on: "metric" or "us". What is kept stays metric."""
    global _units
    if system not in ("metric", "us"):
        raise ValueError(f"units {system!r} are neither metric nor us")
    _units = system


def units() -> str:
    """The units in force."""
    return _units


def locale_name() -> str:
    """The locale in force, such as en_GB."""
    return _locale


def say(text: str, **values: object) -> str:
    """The sentence in the user's language, with the named values put in."""
    translated = _catalogue.gettext(text)
    return translated.format(**values) if values else translated


def say_count(one: str, many: str, n: int, **values: object) -> str:
    """The sentence in the right plural form for n, which is put in as {n}."""
    return _catalogue.ngettext(one, many, n).format(n=n, **values)


def mark(text: str) -> str:
    """Marks a text for the catalogue where it is defined, to be translated where it is shown."""
    return text


def show_day(day: date) -> str:
    """A civil date in the locale's long form, for sentences: 18 January 2026."""
    # Imported here: the workers that read photos need words, but no dates of the screen.
    from babel.dates import format_date

    return str(format_date(day, "long", locale=_locale))


def show_day_of_year(day: date) -> str:
    """A civil date without its year, where the year is known: 18 January."""
    from babel.dates import format_skeleton

    return str(format_skeleton("MMMMd", day, locale=_locale))


def show_weekday(day: date) -> str:
    """The name of a day of the week in the locale's language: Sunday."""
    from babel.dates import format_date

    return str(format_date(day, "EEEE", locale=_locale))


def show_number(value: float, decimals: int) -> str:
    """A number with so many decimals, in the locale's form, without grouping; below zero with a minus sign."""
    return _formatted(value, decimals, _locale)


@lru_cache(4096)  # the day line asks for the same few figures again and again
def _formatted(value: float, decimals: int, locale: str) -> str:
    from babel.numbers import format_decimal

    pattern = "0." + "0" * decimals if decimals else "0"
    written = str(format_decimal(round(value, decimals) or 0, pattern, locale=locale))
    return written.replace("-", "\u2212")  # a minus sign, as wide as a plus


def _is_known(locale: str) -> bool:
    from babel import Locale, UnknownLocaleError

    try:
        return bool(locale) and Locale.parse(locale) is not None
    except (ValueError, UnknownLocaleError):
        return False
