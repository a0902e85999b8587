"""What it cost: a crop's money, purchases, prices, electricity and labour behind one switch."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import Banner, ChoiceField, FlowLayout, SegmentSwitch, TextLabel
from growlog.desktop.money.crop_page import CropPage
from growlog.desktop.money.labour_page import LabourPage
from growlog.desktop.money.power_page import PowerPage
from growlog.desktop.money.prices_page import PricesPage
from growlog.desktop.money.purchases_page import PurchasesPage
from growlog.desktop.tall_dialog import TallDialog
from growlog.services.money.book import MoneyBook
from growlog.words import say

CROP, PURCHASES, PRICES, POWER, LABOUR = "crop", "purchases", "prices", "power", "labour"


class MoneyDialog(TallDialog):
    """Shows a book once it was read; announces what is to be written and stays open."""

    crop_wanted = Signal(str)

    def __init__(self, writable: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(say("What it cost"), "", parent, 1040)
        self.setObjectName("money")
        self.book: MoneyBook | None = None
        self.crop_field = ChoiceField(say("Crop"), [], name="crop", beside=True)
        words = {
            CROP: say("This crop"), LABOUR: say("Labour"), PURCHASES: say("Purchases"), POWER: say("Electricity"),
            PRICES: say("Prices"),
        }  # fmt: skip
        self.switch = SegmentSwitch(list(words.items()), CROP, say("Part of the money"), wraps=True)
        self.banner = Banner()
        self.waiting_label = TextLabel(say("Adding up…"), "subtitle")
        self.crop_page, self.labour_page = CropPage(), LabourPage()
        self.purchases, self.prices, self.power = PurchasesPage(), PricesPage(), PowerPage()
        self.pages: dict[str, QWidget] = {
            CROP: self.crop_page, LABOUR: self.labour_page, PURCHASES: self.purchases, POWER: self.power,
            PRICES: self.prices,
        }  # fmt: skip
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self._fill_body()
        self._connect()
        for page in (self.purchases, self.prices, self.power):
            page.setEnabled(writable)
        self._show_part(CROP)

    def show_book(self, book: MoneyBook) -> None:
        """All parts anew; what is being typed stays."""
        self.book = book
        chosen = None if book.money is None else book.money.crop.id
        self.crop_field.set_choices([(crop.id, crop.name) for crop in book.crops], chosen)
        self.crop_page.show_money(book.money)
        self.labour_page.show_money(book.money)
        self.purchases.show_book(book)
        self.prices.show_book(book)
        self.power.show_book(book)
        self._show_part(self.switch.value())

    def say_problem(self, sentence: str) -> None:
        """Something that stands beside no field."""
        self.banner.show_message(sentence, "problem")
        self.banner.show()

    def show_part(self, key: str) -> None:
        """One of the parts behind the switch."""
        self.switch.set_value(key)

    def _fill_body(self) -> None:
        row = FlowLayout()
        row.addWidget(self.switch)
        row.add_gap()
        row.addWidget(self.crop_field)
        self.banner.hide()
        self.body.addLayout(row)
        self.body.addWidget(self.banner)
        self.body.addWidget(self.waiting_label, 0, Qt.AlignmentFlag.AlignLeft)
        for page in self.pages.values():
            self.body.addWidget(page, 1)

    def _connect(self) -> None:
        self.switch.value_changed.connect(self._show_part)
        self.crop_field.value_changed.connect(self._crop_chosen)
        self.crop_page.purchase_wanted.connect(self._add_purchase)
        self.close_button.clicked.connect(self.close)
        self.purchases.form_opened.connect(self.bring_into_view)
        self.power.form_opened.connect(self.bring_into_view)
        self.banner.closed.connect(self.banner.hide)

    def _show_part(self, key: str) -> None:
        self.waiting_label.setVisible(self.book is None)
        self.crop_field.setVisible(key in (CROP, LABOUR))
        for name, page in self.pages.items():
            page.setVisible(name == key and self.book is not None)

    def _crop_chosen(self) -> None:
        self.crop_wanted.emit(self.crop_field.value() or "")

    def _add_purchase(self) -> None:
        self.show_part(PURCHASES)
        self.purchases.add()
