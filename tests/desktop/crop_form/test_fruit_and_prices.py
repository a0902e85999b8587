"""What the fruit is like and what a shop asks for it, on the form of a crop."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.crop_form.crop_form import CropForm
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar, FloweringHabit
from tests.desktop.hands import retype

TODAY = date(2026, 3, 7)
GOLD = Crop("gold", "Boxroom Gold", "c", sown_on=date(2025, 11, 15))
CULTIVAR = Cultivar("c", "pattypan", "Gold", FloweringHabit.SEPARATE)


def shown(qtbot: QtBot, crop: Crop = GOLD, currency: str = "EUR") -> CropForm:
    form = CropForm(crop, CULTIVAR, TODAY, currency=currency)
    qtbot.addWidget(form)
    form.show()
    return form


def test_shop_prices_and_words_on_the_fruit_become_the_crop(qtbot: QtBot) -> None:
    form = shown(qtbot)
    QTest.mouseClick(form.more_button, Qt.MouseButton.LeftButton)
    retype(form.shop_prices["shop_price_minor_per_kg"], "4,5")
    retype(form.fruit_words["taste"], "nutty")
    crop, _, _ = form.records()
    assert (crop.shop_price_minor_per_kg, crop.shop_price_minor_per_fruit, crop.taste) == (450, None, "nutty")
    assert form.check()


def test_what_is_kept_opens_unfolded_and_stays(qtbot: QtBot) -> None:
    kept = Crop(
        "gold", "Boxroom Gold", "c", sown_on=date(2025, 11, 15), shop_price_minor_per_fruit=60, keeping="a week"
    )
    form = shown(qtbot, kept)
    assert form.more.isVisible()
    assert form.shop_prices["shop_price_minor_per_fruit"].line.text() == "0.60"
    assert form.records()[0] == kept


@pytest.mark.parametrize("text", ["x", "4.555", "-1"])
def test_a_price_that_is_none_is_refused_beside_its_field(qtbot: QtBot, text: str) -> None:
    form = shown(qtbot)
    retype(form.shop_prices["shop_price_minor_per_kg"], text)
    assert not form.check()
    assert form.shop_prices["shop_price_minor_per_kg"].is_refused
    assert form.more.isVisible()
