"""Asks for another day or crop for a photo."""

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets.choice_field import ChoiceField
from growlog.desktop.look.widgets.day_field import DayField
from growlog.desktop.look.widgets.dialog_frame import DialogFrame
from growlog.desktop.look.widgets.form_grid import FormGrid, check_all
from growlog.services.crops import CropSummary
from growlog.words import say


class MovePhotoDialog(DialogFrame):
    """A day and a crop; `moved` carries the use, the crop and the day."""

    moved = Signal(str, str, object)

    def __init__(
        self, use_id: str, day: date, crops: list[CropSummary], crop_id: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(say("Move the photo"), say("The original stays as it is."), parent, width_px=420)
        self._use_id = use_id
        self.day = DayField(say("Day"), day, near=day, required=True, name="day")
        self.crop = ChoiceField(say("Crop"), [(c.crop.id, c.crop.name) for c in crops], crop_id, name="crop")
        grid = FormGrid(columns=2)
        grid.add(self.day)
        grid.add(self.crop)
        self.body.addWidget(grid)
        self.put_away = self.add_button(say("Put away"), name="put_away")
        self.confirm = self.add_button(say("Move"), "primary", name="confirm")
        self.put_away.clicked.connect(self.close)
        self.confirm.clicked.connect(self._confirmed)

    def _confirmed(self) -> None:
        day, crop_id = self.day.value(), self.crop.value()
        if check_all([self.day, self.crop]) and day is not None and crop_id is not None:
            self.moved.emit(self._use_id, crop_id, day)
