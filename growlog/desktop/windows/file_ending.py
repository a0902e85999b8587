"""A file's name with the ending that its content has."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from growlog.desktop.messages import Messages
from growlog.words import say


def write_with_ending(path: Path, ending: str, messages: Messages, write: Callable[[Path], None]) -> None:
    """Calls write with the chosen file, its ending added where it has none.

    The system's dialog asked about the name that was typed; where the longer name is taken, it is asked here.
    """
    if path.suffix.casefold() == ending:
        write(path)
        return
    longer = path.with_name(f"{path.name}{ending}")
    if longer.exists():
        messages.ask(say("{file} is there already.", file=longer.name), say("Write over it"), partial(write, longer))
    else:
        write(longer)
