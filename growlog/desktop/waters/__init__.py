"""Source waters and their analyses."""

from growlog.desktop.waters.waters_dialog import WatersDialog

__all__ = ["WatersDialog"]
