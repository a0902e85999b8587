"""The shelf: products as their labels state them, and what is left in each bottle."""

from growlog.desktop.shelf.shelf_dialog import ShelfDialog

__all__ = ["ShelfDialog"]
