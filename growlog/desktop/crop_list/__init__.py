"""The crop list at the left of the window."""

from growlog.desktop.crop_list.crop_list import CropList

__all__ = ["CropList"]
