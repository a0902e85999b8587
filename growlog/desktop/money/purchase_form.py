"""The form of a purchase: what, when, what it cost, who bears it and how long it serves."""

from collections.abc import Iterable
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut

from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    DayField,
    Field,
    FlowLayout,
    FormGrid,
    NoteField,
    TextField,
    TextLabel,
    limited_number_field,
)
from growlog.desktop.money.money_field import MoneyField
from growlog.records.problems import Problem
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.services.money.book import MoneyBook
from growlog.words import say

USED_UP, DAYS, CROPS = "used-up", "days", "crops"


class PurchaseForm(Card):
    """Emits what is to be written; it is put away by its page once that was done."""

    saved = Signal(object)
    removed = Signal(object)
    left = Signal()

    def __init__(self, purchase: Purchase, is_new: bool, book: MoneyBook) -> None:
        super().__init__()
        self.setObjectName("purchaseForm")
        self._before, self._is_new = purchase, is_new
        self.name_field = TextField(say("What was bought"), purchase.name, required=True, name="name")
        sorts = [(sort.value, say(sort.label)) for sort in PurchaseSort]
        self.sort_field = ChoiceField(say("For"), sorts, purchase.sort, name="sort")
        self.day_field = DayField(
            say("Day"), purchase.day, latest=book.today, near=book.today, required=True, name="day"
        )
        price = None if is_new else purchase.price_minor
        self.price_field = MoneyField(say("Price"), book.facts.currency, price, "price_minor", required=True)
        crops = [(crop.id, crop.name) for crop in book.crops]
        shared = say("all crops that stand")
        self.crop_field = ChoiceField(say("Borne by"), crops, purchase.crop_id, shared, "crop_id")
        lives = [(USED_UP, say("is used up")), (DAYS, say("so many days")), (CROPS, say("so many crops"))]
        self.life_field = ChoiceField(say("It serves"), lives, _life_of(purchase), name="life")
        self.days_field = limited_number_field("life_days")
        self.days_field.set_value(purchase.life_days)
        self.crops_field = limited_number_field("life_crops")
        self.crops_field.set_value(purchase.life_crops)
        self.note_field = NoteField(say("Note"), purchase.note, lines=2, name="note")
        self.way_label = TextLabel("", "small", wraps=True)
        self.save_button = Button(f"{say('Save the purchase')}  Ctrl \u23ce", "primary", name="savePurchase")
        self.leave_button = Button(say("Leave it"), name="leavePurchase")
        self.remove_button = Button(say("Remove the purchase"), "link", "bin", "removePurchase")
        self._place()
        self._connect()
        self._show_life()

    @property
    def purchase_id(self) -> str:
        """Which purchase it is."""
        return self._before.id

    def purchase(self) -> Purchase:
        """What stands in the fields."""
        life = self.life_field.value()
        days, crops = self.days_field.value(), self.crops_field.value()
        return replace(
            self._before,
            name=self.name_field.value(),
            sort=PurchaseSort(self.sort_field.value() or PurchaseSort.OTHER),
            day=self.day_field.value() or self._before.day,
            price_minor=self.price_field.minor() or 0,
            crop_id=self.crop_field.value(),
            life_days=int(days) if life == DAYS and days is not None else None,
            life_crops=int(crops) if life == CROPS and crops is not None else None,
            note=self.note_field.value(),
        )

    def save(self) -> None:
        """Emits the purchase, or goes to the first field that is refused."""
        for field in self._fields():
            field.check()
        for field, life in ((self.days_field, DAYS), (self.crops_field, CROPS)):
            if self.life_field.value() == life and field.value() is None and not field.is_refused:
                field.show_problem(say("A number is needed here."))
        refused = [field for field in self._fields() if field.is_refused and not field.isHidden()]
        if refused:
            refused[0].setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self.saved.emit(self.purchase())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields."""
        by_name = {field.objectName(): field for field in self._fields()}
        for problem in problems:
            by_name.get(problem.field, self.name_field).show_problem(problem.sentence)

    def _fields(self) -> list[Field]:
        return [*self.grid.fields(), self.note_field]

    def _place(self) -> None:
        self.grid = FormGrid(4, 150)
        self.grid.add(self.name_field, span=2)
        self.grid.add(self.sort_field, self.day_field, self.price_field, self.crop_field, self.life_field)
        self.grid.add(self.days_field, self.crops_field)
        self.body.addWidget(self.grid)
        self.body.addWidget(self.way_label)
        self.body.addWidget(self.note_field)
        buttons = FlowLayout()
        buttons.addWidget(self.remove_button)
        buttons.add_gap()
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.save_button)
        self.remove_button.setVisible(not self._is_new)
        self.body.addLayout(buttons)

    def _connect(self) -> None:
        self.life_field.value_changed.connect(self._show_life)
        self.crop_field.value_changed.connect(self._show_life)
        self.save_button.clicked.connect(self.save)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            around = Qt.ShortcutContext.WidgetWithChildrenShortcut
            QShortcut(QKeySequence(keys), self, context=around).activated.connect(self.save)
        self.leave_button.clicked.connect(self.left)
        self.remove_button.clicked.connect(self._remove)

    def _show_life(self) -> None:
        life = self.life_field.value()
        self.days_field.setVisible(life == DAYS)
        self.crops_field.setVisible(life == CROPS)
        self.way_label.setText(_way(life or USED_UP, alone=self.crop_field.value() is not None))

    def _remove(self) -> None:
        self.removed.emit(self._before)


def _life_of(purchase: Purchase) -> str:
    if purchase.life_days is not None:
        return DAYS
    return USED_UP if purchase.life_crops is None else CROPS


def _way(life: str, *, alone: bool) -> str:
    if life == DAYS:
        return say("Each day of its life costs an equal part, shared by the crops that stand on it.")
    if life == CROPS:
        return say("One crop after the other bears an equal part on its first day.")
    if alone:
        return say("This crop bears all of it.")
    return say("The crops that stand on that day bear equal parts.")
