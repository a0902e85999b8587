"""An acid as it is bought: how strong it is, and its density."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.look.widgets import Button, Card, FormGrid, NumberField, TextLabel, check_all
from growlog.desktop.mixer.order_card import CautionLine
from growlog.services.shelf import ReadyProduct, acid_solution
from growlog.words import say


class AcidForm(Card):
    """Emits the solution as a product; its label can still be changed."""

    confirmed = Signal(object)  # ShelfProduct
    left = Signal()

    def __init__(self, ready: ReadyProduct) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("acidForm")
        self._ready = ready
        self.percent_field = NumberField(say("Strength by weight"), "%", 0.1, 100, decimals=2, name="acid_percent",
                                         required=True)  # fmt: skip
        self.density_field = NumberField(say("Density"), "g/mL", 0.9, 2, decimals=4, name="acid_density", required=True)
        self.leave_button = Button(say("Cancel"), name="leaveForm")
        self.write_button = Button(say("Go on to the label"), "primary", name="writeForm")
        grid = FormGrid(2)
        grid.add(self.percent_field, self.density_field)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.write_button)
        self.body.addWidget(TextLabel(ready.product.name.partition(" (")[0], "heading"))
        self.body.addWidget(
            TextLabel(say("Both stand on the bottle or its safety data sheet."), "", "mute", wraps=True)
        )
        self.body.addWidget(grid)
        self.body.addWidget(CautionLine(say("Acid into water, never the reverse; never with bleach.")))
        self.body.addLayout(buttons)
        self.leave_button.clicked.connect(self.left)
        self.write_button.clicked.connect(self.confirm)

    def begin(self) -> None:
        """Puts the cursor into the first field."""
        self.percent_field.setFocus()

    def confirm(self) -> None:
        """Emits it where both can be read."""
        percent, density = self.percent_field.value(), self.density_field.value()
        if check_all([self.percent_field, self.density_field]) and percent is not None and density is not None:
            self.confirmed.emit(acid_solution(self._ready, float(percent), float(density)))
