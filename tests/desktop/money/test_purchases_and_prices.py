"""Purchases and prices at the screen: what is announced, and what is refused beside its field."""

from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from growlog.desktop.money.money_field import MoneyField
from growlog.desktop.money.purchase_form import PurchaseForm
from growlog.records.crop import Crop
from growlog.records.logbook import LogbookFacts
from growlog.records.purchase import Purchase, PurchaseSort
from tests.desktop.hands import choose, retype
from tests.desktop.money.conftest import ShowMoney
from tests.logbooks import TODAY

pytestmark = pytest.mark.slow


def opened(shown: ShowMoney) -> tuple[PurchaseForm, list[Purchase]]:
    dialog = shown()
    dialog.show_part("purchases")
    dialog.purchases.add()
    form = dialog.purchases.form
    assert form is not None
    told: list[Purchase] = []
    dialog.purchases.saved.connect(told.append)
    return form, told


def test_a_purchase_with_a_life_in_days_is_announced(priced: Crop, shown: ShowMoney) -> None:
    form, told = opened(shown)
    retype(form.name_field, "Tent")
    choose(form.sort_field, "gear")
    retype(form.price_field, "189,5")
    choose(form.life_field, "days")
    form.save()
    assert form.days_field.refusal == "A number is needed here."
    assert told == []
    retype(form.days_field, "1825")
    form.save()
    (bought,) = told
    assert (bought.name, bought.sort, bought.price_minor, bought.life_days, bought.life_crops, bought.crop_id) == (
        "Tent", PurchaseSort.GEAR, 18950, 1825, None, None,
    )  # fmt: skip


def test_a_purchase_of_tomorrow_or_without_a_price_is_refused(priced: Crop, shown: ShowMoney) -> None:
    form, told = opened(shown)
    retype(form.name_field, "Tent")
    retype(form.day_field, (TODAY + timedelta(days=1)).isoformat())
    form.save()
    assert told == []
    assert form.price_field.refusal == "A number is needed here."
    assert form.day_field.is_refused


def test_a_chosen_purchase_is_changed_or_taken_off(priced: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("purchases")
    told: list[Purchase] = []
    gone: list[Purchase] = []
    dialog.purchases.saved.connect(told.append)
    dialog.purchases.removed.connect(gone.append)
    dialog.purchases.table.selectRow(0)
    form = dialog.purchases.form
    assert form is not None
    assert (form.name_field.value(), form.price_field.minor(), form.price_field.line.text()) == ("Seed", 350, "3.50")
    retype(form.price_field, "4")
    form.save()
    QTest.mouseClick(form.remove_button, Qt.MouseButton.LeftButton)
    assert [p.price_minor for p in told] == [400]
    assert [p.name for p in gone] == ["Seed"]


def test_prices_tell_nothing_from_an_hour_that_is_worth_nothing(priced: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("prices")
    told: list[LogbookFacts] = []
    dialog.prices.saved.connect(told.append)
    retype(dialog.prices.labour_field, "0")
    dialog.prices.save()
    retype(dialog.prices.labour_field, "")
    retype(dialog.prices.water_field, "4.20")
    dialog.prices.save()
    assert [(f.labour_rate_minor_per_h, f.water_price_minor_per_m3) for f in told] == [(0, None), (None, 420)]


@pytest.mark.parametrize("typed, sentence", [
    ("euros", "A currency is three capital letters, as in ISO 4217."),
    ("JPY", "The amounts kept so far have other decimals than JPY, and would be read wrongly."),
])  # fmt: skip
def test_a_currency_that_cannot_be_is_refused(priced: Crop, shown: ShowMoney, typed: str, sentence: str) -> None:
    dialog = shown()
    told: list[LogbookFacts] = []
    dialog.prices.saved.connect(told.append)
    dialog.prices.currency_field.set_value(typed)
    dialog.prices.save()
    assert dialog.prices.currency_field.refusal == sentence
    assert told == []


@pytest.mark.parametrize("currency, text, minor", [("EUR", "1,5", 150), ("JPY", "150", 150), ("KWD", "0.125", 125)])
def test_an_amount_is_kept_in_the_smallest_coin_of_its_currency(
    qapp: object, currency: str, text: str, minor: int, tmp_path: Path
) -> None:
    # decimals by ISO 4217: EUR 2, JPY 0, KWD 3
    field = MoneyField("Price", currency)
    retype(field, text)
    assert field.minor() == minor
    assert MoneyField("Price", currency, minor).minor() == minor


@pytest.mark.parametrize(
    ("currency", "minor", "text"), [("EUR", 14900, "149.00"), ("EUR", 350, "3.50"), ("JPY", 149, "149")]
)
def test_an_amount_is_shown_as_its_currency_is_written(qapp: object, currency: str, minor: int, text: str) -> None:
    field = MoneyField("Price", currency, minor)
    assert (field.line.text(), field.minor()) == (text, minor)
