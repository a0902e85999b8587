"""A cell that cannot be read: the reason, for the list of rows that stay out."""


class NotRead(Exception):
    """str() is a plain sentence."""


# What people write into a cell to say that there is nothing.
NOTHING = frozenset(("", "-", "–", "—", "n/a", "na", "none", "nil", "null", "./.", "."))


def says_nothing(cell: object) -> bool:
    """Whether a cell states nothing."""
    return cell is None or (isinstance(cell, str) and cell.casefold() in NOTHING)
