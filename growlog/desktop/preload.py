"""Imports that other threads would otherwise be the first to make.

Qt's Python binding hooks into every import; a first import on another thread beside a running event loop has
crashed the interpreter. So what the readers of photos start up with is imported before the window shows.
"""

from contextlib import suppress
from importlib import import_module

_STARTED_BY_READERS = (
    "multiprocessing.spawn",
    "multiprocessing.reduction",
    "multiprocessing.resource_tracker",
    "multiprocessing.popen_spawn_posix",
    "multiprocessing.popen_spawn_win32",
    "babel.dates",
    "babel.numbers",
)


def preload() -> None:
    """Imports them; what this system does not have is left out."""
    for name in _STARTED_BY_READERS:
        with suppress(ImportError):
            import_module(name)
