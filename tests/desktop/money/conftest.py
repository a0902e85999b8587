"""A logbook with money in it, and the dialog that shows it."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, time, timedelta
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.money.money_dialog import MoneyDialog
from growlog.records.crop import Crop
from growlog.records.entry import LightChange, MeterReading, OwnerKind, Pick, Pollination
from growlog.records.purchase import PurchaseSort
from growlog.records.room import Lamp
from growlog.services.energy.tariffs import new_tariff, save_tariff
from growlog.services.money.book import money_book
from growlog.services.money.prices import prices_of, save_prices
from growlog.services.money.purchases import new_purchase, save_purchase
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import save_thing
from tests.logbooks import SOWN, furnish, logbook, plant_crop, write, write_for


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    """A crop that fills its room, with nothing paid yet."""
    return plant_crop(log)


def day(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def priced(log: OpenLogbook, crop: Crop) -> Crop:
    """The crop after it was lit, pollinated and picked, with prices for all of it."""
    room, _ = furnish(log, crop, share=1.0)
    save_thing(log, Lamp(new_id(), room.id, "Panel", 1, wall_w=100))
    write_for(log, OwnerKind.ROOM, room.id, day(0), LightChange(10, time(6, 0)))
    save_prices(log, replace(prices_of(log), currency="EUR", labour_rate_minor_per_h=1200))
    save_tariff(log, new_tariff(day(0), "0.50"))
    seed = replace(new_purchase(day(0), crop.id), name="Seed", sort=PurchaseSort.SEED, price_minor=350)
    save_purchase(log, seed)
    write(log, crop, day(40), Pollination(4), labour_minutes=30)
    write(log, crop, day(50), Pick(10, 1000.0), labour_minutes=10)
    write_for(log, OwnerKind.ROOM, room.id, day(1), MeterReading(100.0))
    write_for(log, OwnerKind.ROOM, room.id, day(11), MeterReading(112.0))
    return crop


ShowMoney = Callable[[], MoneyDialog]


@pytest.fixture
def shown(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> ShowMoney:
    """Opens the dialog with the crop's money as the logbook stands."""

    kept: list[MoneyDialog] = []

    def show() -> MoneyDialog:
        kept.append(dialog := MoneyDialog())
        qtbot.addWidget(dialog)
        dialog.show()
        dialog.show_book(money_book(log, crop.id))
        return dialog

    return show
