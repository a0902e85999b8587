"""The sizes of paper that printers hold."""

from enum import StrEnum


class Paper(StrEnum):
    """As ISO 216 and ANSI have them."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def typeset_name(self) -> str:
        """What the typesetter calls it."""
        return "a4" if self is Paper.A4 else "us-letter"
