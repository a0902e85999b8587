"""The same tasks in a spreadsheet and a file manager, written out as the list of what an adept does there.

The sheet has the columns date, crop, kind, count, weight, note, is open, and the cursor stands in the first free row.
Ctrl+; writes today's date, Ctrl+D fills from the cell above, a word is completed after two letters, and Tab goes on
to the next column; Enter after Tabs goes to the first column of the next row. Thinking is counted by the same rule as
in the program (see the model).
"""

from tests.effort.keystroke_model import Effort


def harvest() -> Effort:
    """12 weighed fruit of two digits, 5 females pollinated, 2 culls of different causes, of one crop."""
    done = Effort()
    _first_row(done, kind_keys=2)
    _value(done, 1)  # count 1
    done.key()  # Tab
    _value(done, 2)  # the first weight
    done.key()  # Enter: back in the first column
    done.think()
    done.key(4)  # right to the weights
    for _ in range(11):
        _value(done, 2)
        done.key()  # Enter: the next row of the column
    done.think()
    done.drag()  # date to count of all twelve rows
    done.key(2)  # Ctrl+D
    done.think()
    done.button()  # the next free row
    _row_like_above(done)
    done.think()
    done.key(2 + 1)  # "po", Tab
    _value(done, 1)  # 5
    done.key()  # Enter
    for _ in range(2):
        _row_like_above(done)
        done.think()
        done.key(2 + 1)  # "cu", Tab
        _value(done, 1)  # 1
        done.key(2)  # Tab, Tab to the note
        done.think()
        done.key(2 + 1)  # the cause, Enter
    _save(done)
    return done


def morning_feed() -> Effort:
    """The feed of three crops with volume, EC and pH: one mix, so EC and pH are filled down, volumes are corrected."""
    done = Effort()
    _first_row(done, kind_keys=2)
    done.key(2)  # count and weight stay empty
    for text in ("1.2 L ", "EC 1.9 ", "pH 5.9"):
        _value(done, len(text) + sum(letter.isupper() for letter in text))
    done.key()  # Enter
    for _ in range(2):
        done.think()
        done.key(2 + 1)  # date from above, Tab
        done.think()
        done.key(2 + 1)  # another crop, Tab
        done.key(2 + 1)  # kind from above, Tab
        done.key(2)  # count and weight stay empty
        done.key(2)  # the note from above
        done.think()
        done.key(1 + 1 + 3 + 3)  # F2, Home, three struck, three typed
        done.key()  # Enter
    _save(done)
    return done


def five_photos() -> Effort:
    """Five photos of one day, two of them of another crop: a folder per crop, and each file named by its day."""
    done = Effort()
    for chosen in (3, 2):
        done.think()
        for place in range(chosen):
            done.button(1 if place == 0 else 2)  # Ctrl held for all but the first
        done.drag()  # into the crop's folder
    for in_folder in (3, 2):
        done.think()
        done.button(2)  # opens the folder
        done.button(1)  # its first new file
        for place in range(in_folder):
            done.key(1)  # F2
            done.think()
            done.key(len("2026-03-07") + (2 if place else 0))  # a second of a day is told apart by _2
            done.key(1)  # Enter
            done.key(1 if place < in_folder - 1 else 0)  # down
    return done


def _first_row(done: Effort, kind_keys: int) -> None:
    done.think()
    done.key(2 + 1)  # Ctrl+;, Tab
    done.think()
    done.key(2 + 1)  # the crop, completed, Tab
    done.think()
    done.key(kind_keys + 1)


def _row_like_above(done: Effort) -> None:
    done.think()
    done.key(2 + 1 + 2 + 1)  # Ctrl+D, Tab for the date and for the crop


def _value(done: Effort, keys: int) -> None:
    done.think()
    done.key(keys)


def _save(done: Effort) -> None:
    done.key(2)  # Ctrl+S, the end of all, without a thought of its own
