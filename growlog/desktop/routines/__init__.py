"""The routines of the grower: what is to be done again and again."""

from growlog.desktop.routines.routines_dialog import RoutinesDialog

__all__ = ["RoutinesDialog"]
