"""The single keys of the tally, as one table. They act while the weight field is empty.

A number before a letter does not multiply it. "5 P" would be five pollinated to one grower and a weight of 5 g whose
Enter was forgotten to the next, and at the scale the second slip is the common one. So figures in the weight field
are always a weight, a letter after them is refused and they stay; larger counts are typed into the counter itself.
"""

from growlog.records.entry import CullCause

COUNTER_KEYS = {
    "P": "females_pollinated",
    "M": "males_open",
    "V": "trusses_vibrated",
    "L": "old_leaves_removed",
    "S": "side_shoots_removed",
}
KEY_OF = {counter: key for key, counter in COUNTER_KEYS.items()}

UNWEIGHED = "W"
CULL = "C"
NOTE = "N"
FRUIT_CHECK = "F"
STOPWATCH = "T"
MINUTES = "I"
SHARE = "E"
DAY = "D"
YES = "Y"

SHIFT_SIGN = "\u21e7"
FIRST_CROP_KEY, LAST_CROP_KEY = 2, 12  # F1 is help everywhere


def crop_key(place: int) -> str:
    """The function key of a crop by its place in the rail, "" for the rest, which Page Up and Page Down reach."""
    number = FIRST_CROP_KEY + place
    return f"F{number}" if number <= LAST_CROP_KEY else ""


def cause_keys() -> dict[str, CullCause]:
    """One letter for each cause: its first one, or the first that no other cause has."""
    found: dict[str, CullCause] = {}
    for cause in CullCause:
        letter = next(one for one in cause.value.upper() if one.isalpha() and one not in found)
        found[letter] = cause
    return found
