"""The one door for words that a user reads: a gettext catalogue that the start of the program installs.

English is the source text. `say` and `say_count` are what the extraction of the catalogue looks for.
"""

import gettext

_catalogue: gettext.NullTranslations = gettext.NullTranslations()


def install(catalogue: gettext.NullTranslations) -> None:
    """Use this catalogue from now on; called once, where the program is put together."""
    global _catalogue
    _catalogue = catalogue


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
