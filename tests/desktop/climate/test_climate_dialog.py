"""The climate at the screen: days, humid nights above a chosen humidity, and degree days by a chosen way."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.calculations.degree_days import DegreeDayMethod
from growlog.desktop.climate.climate_dialog import ClimateDialog
from growlog.records.crop import Crop
from growlog.records.entry import Reading
from growlog.services.climate.book import DegreeDayWay, climate_book
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.hands import choose, retype
from tests.logbooks import SOWN, logbook, plant_crop, write

pytestmark = pytest.mark.slow

BASE_C = (45 - 32) / 1.8  # 45 °F for squash: Maynard and Hochmuth (1997) Knott's handbook, from memory


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    """A crop of which two readings were taken on each of two days."""
    planted = plant_crop(log)
    for age in (0, 1):
        write(log, planted, SOWN + timedelta(days=age), Reading(18.0, 70))
        write(log, planted, SOWN + timedelta(days=age), Reading(26.0, 50))
    return planted


@pytest.fixture
def dialog(qtbot: QtBot) -> ClimateDialog:
    made = ClimateDialog([("gold", "Boxroom Gold"), ("violet", "Porch Violet")], "gold", 80)
    qtbot.addWidget(made)
    made.show()
    return made


def test_days_are_listed_with_the_latest_first(log: OpenLogbook, crop: Crop, dialog: ClimateDialog) -> None:
    dialog.show_book(climate_book(log, crop.id, 80))
    rows = [row.cells for row in dialog.table.rows()]
    assert [row[1] for row in rows] == ["1", "0"]
    assert rows[0][2:5] == ("18.0", "22.0", "26.0")
    assert rows[0][-1] == "from readings"


def test_degree_days_begin_with_the_base_known_for_the_species(
    log: OpenLogbook, crop: Crop, dialog: ClimateDialog
) -> None:
    dialog.show_book(climate_book(log, crop.id, 80))
    # simple average: two days of (18 + 26) / 2 less the base
    assert dialog.sum_label.text().startswith(f"{2 * (22 - BASE_C):.0f}")
    assert "Knott's handbook" in dialog.days_label.text()
    assert "111 days are missing" in dialog.days_label.text()
    dialog.button.explain()
    assert dialog.button.dialog is not None
    dialog.button.dialog.close()


def test_another_way_is_asked_for_once_typing_has_ended(qtbot: QtBot, dialog: ClimateDialog) -> None:
    with qtbot.waitSignal(dialog.wanted) as heard:
        choose(dialog.method_field, DegreeDayMethod.SINGLE_SINE.value)
        retype(dialog.base_field, "10")
        retype(dialog.ceiling_field, "30")
    assert heard.args == ["gold", 80.0, DegreeDayWay(DegreeDayMethod.SINGLE_SINE, 10.0, 30.0)]


@pytest.mark.parametrize("way, sentence", [
    (DegreeDayWay(DegreeDayMethod.MAXIMUM_MIRRORED, 10.0), "This method needs a ceiling."),
    (DegreeDayWay(DegreeDayMethod.SIMPLE_AVERAGE, 10.0, 30.0), "This method knows no ceiling: leave it empty."),
    (DegreeDayWay(DegreeDayMethod.SINGLE_SINE, 30.0, 10.0), "The base must lie below the ceiling."),
])  # fmt: skip
def test_a_way_that_does_not_fit_is_said_beside_the_ceiling(
    log: OpenLogbook, crop: Crop, dialog: ClimateDialog, way: DegreeDayWay, sentence: str
) -> None:
    dialog.show_book(climate_book(log, crop.id, 80, way))
    assert dialog.ceiling_field.refusal == sentence
    assert dialog.sum_label.text() == "none yet"


def test_the_humidity_watched_is_asked_with(qtbot: QtBot, dialog: ClimateDialog) -> None:
    with qtbot.waitSignal(dialog.wanted) as heard:
        retype(dialog.humid_field, "75")
    assert heard.args == ["gold", 75.0, None]
    with qtbot.assertNotEmitted(dialog.wanted, wait=400):
        retype(dialog.humid_field, "140")
    assert "At most 100" in dialog.humid_field.refusal


def test_nothing_known_leads_to_the_logger(qtbot: QtBot, log: OpenLogbook, dialog: ClimateDialog) -> None:
    bare = plant_crop(log, "Porch Violet", species="aubergine")
    dialog.show_book(climate_book(log, bare.id, 80))
    assert dialog.empty.isVisible()
    with qtbot.waitSignal(dialog.logger_wanted):
        dialog.empty.button.click()
