"""A counter of the tally: large buttons on either side of a number that can be typed."""

from PySide6.QtCore import Qt

from growlog.desktop.look.widgets import CountStepper
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import SHIFT_SIGN
from growlog.desktop.tally.touch import touch


def make_stepper(
    words: str, key: str, keys: FigureKeys, kind: str = "", name: str = "", note: str = ""
) -> CountStepper:
    """A counter with the key that counts on below its plus, and the shifted one below its minus."""
    stepper = CountStepper(
        words, note, kind, 9999 if kind == "pick" else 999, f"{SHIFT_SIGN}{key}", key, name=f"counter.{name}"
    )
    for button in (stepper.less_button, stepper.more_button):
        touch(button)
        button.setAutoRepeat(False)  # one touch counts one, however long a wet thumb rests
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the number between them is reached by Tab; these are for thumbs
    touch(stepper.line)
    keys.watch(stepper.line)
    return stepper
