"""The dialog around the form of a crop."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from growlog.desktop.crop_form.crop_form import CropForm
from growlog.desktop.crop_form.past_banner import PastBanner
from growlog.desktop.look.widgets import Banner, DialogFrame
from growlog.records.crop import Crop, Placement
from growlog.records.cultivar import Cultivar
from growlog.records.problems import Problem
from growlog.services.crops import new_crop
from growlog.services.rooms import RoomView
from growlog.words import say


class CropDialog(DialogFrame):
    """For a new crop, or to correct one. It stays open until its caller accepts it or shows problems."""

    confirmed = Signal(object, object, object)
    cultivar_typed = Signal(str, str)  # species and cultivar of a new crop

    def __init__(
        self,
        today: date,
        rooms: Sequence[RoomView] = (),
        present: tuple[Crop, Cultivar] | None = None,
        placement: Placement | None = None,
        parent: QWidget | None = None,
        currency: str = "",
    ) -> None:
        title = say("New crop") if present is None else say("Correct {name}", name=present[0].name)
        super().__init__(title, say("Only a name, the kind of plant and its first day are needed."), parent, 760)
        self.setObjectName("cropDialog")
        crop, cultivar = present or new_crop("", "", today)
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.form = CropForm(crop, cultivar, today, rooms, placement, currency)
        self.past = PastBanner()
        self._asked: tuple[str, str] = ("", "")
        self.body.addWidget(self.banner)
        self.body.addWidget(self.past)
        self.body.addWidget(self.form)
        self.leave_button = self.add_button(say("Leave as it was"), name="leave")
        words = say("Add the crop") if present is None else say("Save")
        self.confirm_button = self.add_button(f"{words}  Ctrl \u23ce", "primary", "confirm")
        self.confirm_button.setDefault(False)
        self.leave_button.clicked.connect(self.reject)
        self.confirm_button.clicked.connect(self.confirm)
        self.form.changed.connect(self.banner.hide)
        if present is None:
            self.form.changed.connect(self._ask_past)
            self.form.cultivar_field.value_changed.connect(self._ask_past)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)
        self.form.name_field.setFocus()

    def confirm(self) -> None:
        """Emits the records if all fields can be taken; else goes to the first that cannot."""
        if self.form.check():
            self.confirmed.emit(*self.form.records())

    def _ask_past(self) -> None:
        """Asks what was decided of the cultivar before, once it is another than at the last key."""
        _, cultivar, _ = self.form.records()
        if (cultivar.species, cultivar.name) != self._asked:
            self._asked = (cultivar.species, cultivar.name)
            self.cultivar_typed.emit(*self._asked)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What the logbook refused: beside its field where there is one, else above the form."""
        known = self.form.fields()
        elsewhere = []
        for problem in problems:
            if problem.field in known:
                self.form.show_problems([problem])
                known[problem.field].setFocus()
            else:
                elsewhere.append(problem.sentence)
        self.banner.setVisible(bool(elsewhere))
        if elsewhere:
            self.banner.show_message(" ".join(elsewhere), "problem")
