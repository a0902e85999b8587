"""Loads what fits curves, on the window's thread.

A first import on another thread beside a running event loop has crashed the interpreter, and at the start of the
program it would hold the window up; so it is loaded once the board shows.
"""

from importlib import import_module

_FITTED_WITH = ("numpy", "scipy.optimize", "scipy.special")


def load_curve_tools() -> None:
    """Imports them; costs nothing the second time."""
    for name in _FITTED_WITH:
        import_module(name)
