"""Forms for a crop: a new one, a corrected one, and its clearing."""

from growlog.desktop.crop_form.clear_dialog import ClearDialog
from growlog.desktop.crop_form.crop_dialog import CropDialog
from growlog.desktop.crop_form.crop_form import CropForm

__all__ = ["ClearDialog", "CropDialog", "CropForm"]
