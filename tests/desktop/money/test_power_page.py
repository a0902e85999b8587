"""Tariffs and the meter at the screen: overlapping bands and gaps are said while one types."""

from datetime import time

import pytest

from growlog.desktop.money.money_dialog import MoneyDialog
from growlog.desktop.money.tariff_form import TariffForm
from growlog.records.crop import Crop
from growlog.records.problems import Problem
from growlog.records.tariff import Tariff, TariffBand
from tests.desktop.hands import retype
from tests.desktop.money.conftest import ShowMoney

pytestmark = pytest.mark.slow


def opened(shown: ShowMoney) -> tuple[MoneyDialog, TariffForm, list[Tariff]]:
    dialog = shown()
    dialog.show_part("power")
    dialog.power.add()
    assert dialog.power.form is not None
    told: list[Tariff] = []
    dialog.power.saved.connect(told.append)
    retype(dialog.power.form.name_field, "Day and night")
    return dialog, dialog.power.form, told


def test_bands_that_overlap_or_leave_a_gap_are_said_and_not_saved(priced: Crop, shown: ShowMoney) -> None:
    _dialog, form, told = opened(shown)
    first = form.rows[0]
    retype(first.from_field, "06:00")
    retype(first.until_field, "22:00")
    retype(first.price_field, "0.34")
    assert "leave a gap" in form.bands_label.text()
    second = form.add_band()
    assert (second.band().from_at, second.band().until_at) == (time(22), time(6))
    assert form.bands_label.isHidden()
    retype(second.price_field, "0.21")
    retype(second.from_field, "21:00")
    assert "overlap" in form.bands_label.text()
    form.save()
    assert told == []
    retype(second.from_field, "22:00")
    form.save()
    assert told[0].bands == (TariffBand(time(6), time(22), "0.34"), TariffBand(time(22), time(6), "0.21"))


def test_a_band_without_a_price_is_refused(priced: Crop, shown: ShowMoney) -> None:
    _dialog, form, told = opened(shown)
    form.save()
    assert form.rows[0].price_field.refusal == "A number is needed here."
    assert told == []


def test_two_tariffs_from_one_day_are_refused_beside_the_day(priced: Crop, shown: ShowMoney) -> None:
    _dialog, form, _ = opened(shown)
    sentence = "Tariff begins on 15 November 2025 too, and two tariffs cannot hold at once."
    form.show_problems([Problem("from_day", sentence)])
    assert form.day_field.refusal == sentence


def test_a_price_that_was_not_touched_stays_as_it_was_written(priced: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("power")
    dialog.power.table.selectRow(0)
    form = dialog.power.form
    assert form is not None
    told: list[Tariff] = []
    dialog.power.saved.connect(told.append)
    retype(form.name_field, "One price")
    form.save()
    assert told[0].bands == (TariffBand(time(0), time(0), "0.50"),)


def test_the_meter_stands_against_the_estimate(priced: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("power")
    (row,) = dialog.power.meter_table.rows()
    # ten days of 1 kWh by programme and lamp, 12 kWh by the meter
    assert [cell.replace("\u2009", " ") for cell in row.cells[2:]] == [
        "12.0 kWh", "10.0 kWh", "−2.0 kWh, −16.7 %",
    ]  # fmt: skip
