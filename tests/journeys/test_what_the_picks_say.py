"""From the menu of the real window: what the picks say, keep or clear, side by side, and the bands on the board."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from growlog.services.crops import add_crop, clear_crop, new_crop
from growlog.services.entries import add_entries
from tests.journeys.conftest import Person
from tests.logbooks import SOWN, entry_on
from tests.services.yield_view.seasons import SEASON, at, pick

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def with_a_season(make: Callable[..., Person]) -> Person:
    """A person on day 77 of a crop with picks, and a finished one before it."""
    someone = make(at(77))
    someone.new_logbook()
    desk = someone.window.desk
    assert desk is not None
    for name, sown in (("Attic Gold", SOWN - timedelta(days=90)), ("Boxroom Gold", SOWN)):
        crop, cultivar = new_crop(name, "pattypan", sown, packet_days=58)
        crop = replace(crop, shop_price_minor_per_kg=900)
        assert desk.write(add_crop, crop, cultivar) is not None
        entries = [entry_on(crop, sown + timedelta(age), pick(fruit, grams)) for age, fruit, grams in SEASON]
        assert desk.write(add_entries, entries) is not None
        if name == "Attic Gold":
            assert desk.write(clear_crop, crop.id, sown + timedelta(days=84)) is not None
    desk.selection.choose_crop(next(c.crop.id for c in desk.crops if c.crop.name == "Boxroom Gold"))
    return someone


def test_the_grower_asks_whether_the_plant_is_worth_its_place(person: Callable[..., Person], tmp_path: Path) -> None:
    someone = with_a_season(person)
    window, qtbot = someone.window, someone.qtbot
    assert window.page is not None
    assert window.opened is not None
    yields, chart = window.opened.yields, window.page.board.surface.chart
    qtbot.waitUntil(lambda: chart.ahead is not None, timeout=30_000)
    assert "fruit by 14 February 2026." in chart.strip.label.text()

    window.actions_table.by_name["yield_view"].trigger()
    said = yields.dialog
    assert said is not None
    qtbot.waitUntil(lambda: not said.waiting.isVisible(), timeout=30_000)
    assert "more by 28 February 2026" in said.forecast.head.text()
    said.close()

    window.actions_table.by_name["keep_or_clear"].trigger()
    keep = yields.keep_dialog
    assert keep is not None
    qtbot.waitUntil(lambda: keep.view is not None, timeout=30_000)
    assert "your cleared crops (1)" in keep.sentences.text()
    keep.close()

    window.actions_table.by_name["side_by_side"].trigger()
    beside = yields.beside_dialog
    assert beside is not None
    qtbot.waitUntil(lambda: len(beside.crops) == 2, timeout=30_000)
    someone.files.answers.append(tmp_path / "table.csv")
    beside.save_button.click()
    assert "Attic Gold" in (tmp_path / "table.csv").read_text(encoding="utf-8").splitlines()[0]
    beside.close()

    someone.files.answers.append(tmp_path / "yield.png")
    chart.export_menu.action("png").trigger()
    assert (tmp_path / "yield.png").stat().st_size > 10_000


def test_the_switch_of_what_is_to_come_stays_as_it_was_left(person: Callable[..., Person]) -> None:
    someone = with_a_season(person)
    assert someone.window.page is not None
    someone.window.page.board.surface.chart.strip.button.click()
    someone.close()
    someone.start()
    someone.opening.open(someone.home / "room")
    assert someone.window.page is not None
    assert not someone.window.page.board.surface.chart.strip.is_on
