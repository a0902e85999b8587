"""The day sheet: the right column of the window, and the large views of its photo."""

from growlog.desktop.day_sheet.compare import CompareView
from growlog.desktop.day_sheet.day_sheet import DaySheetPanel
from growlog.desktop.day_sheet.full_photo import FullPhoto

__all__ = ["CompareView", "DaySheetPanel", "FullPhoto"]
