"""What a crop costs on the screen: sums that agree with each other, and "none yet" where there is none."""

from dataclasses import replace

import pytest

from growlog.desktop.money.cost_chart import stacked
from growlog.desktop.plain_table import PlainTable
from growlog.records.crop import Crop
from growlog.records.entry import Pollination
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.money.book import money_book
from growlog.services.money.lines import CostKind
from growlog.services.money.purchases import new_purchase, save_purchase
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.money.conftest import ShowMoney, day
from tests.logbooks import write

pytestmark = pytest.mark.slow


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def cells(table: PlainTable) -> dict[str, list[str]]:
    return {row.key: [plain(cell) for cell in row.cells] for row in table.rows()}


def test_cost_by_kind_adds_up_to_what_is_said_above(priced: Crop, shown: ShowMoney) -> None:
    page = shown().crop_page
    # 100 W for 10 h at 0.50 a kWh on 113 days; 40 minutes at 12.00 an hour; seed 3.50
    found = cells(page.table)
    assert {key: row[1] for key, row in found.items()} == {
        "labour": "8.00 EUR", "seed": "3.50 EUR", "energy": "56.50 EUR", "total": "68.00 EUR",
    }  # fmt: skip
    assert plain(page.total_label.text()) == "68.00 EUR so far"


@pytest.mark.parametrize("key, value", [
    ("cost-per-fruit", "6.80 EUR"), ("cost-per-kg", "68.00 EUR"), ("kwh-per-kg", "113.0 kWh"),
    ("minutes-per-fruit", "4.0 min"),
])  # fmt: skip
def test_what_a_fruit_and_a_kg_take_stands_with_its_explanation(
    priced: Crop, shown: ShowMoney, key: str, value: str
) -> None:
    dialog = shown()
    tile = dialog.crop_page.tiles[key]
    assert plain(tile.value_label.text()) == value
    tile.button.explain()
    opened = tile.button.dialog
    assert opened is not None
    assert opened.panel.figure is not None
    assert opened.panel.figure.key == key
    opened.close()


def test_the_shop_price_stands_beside_where_it_is_stated(log: OpenLogbook, priced: Crop, shown: ShowMoney) -> None:
    tile = shown().crop_page.tiles["cost-per-kg"]
    assert tile.shop_label.text() == "shop price not stated"
    _, cultivar = crop_and_cultivar(log, priced.id)
    change_crop(log, replace(priced, shop_price_minor_per_kg=450), cultivar)
    tile = shown().crop_page.tiles["cost-per-kg"]
    assert plain(tile.shop_label.text()) == "a shop asks 4.50 EUR"


def test_before_the_first_fruit_a_fruit_costs_none_yet(log: OpenLogbook, crop: Crop, shown: ShowMoney) -> None:
    save_purchase(log, replace(new_purchase(day(0), crop.id), name="Seed", price_minor=350))
    dialog = shown()
    for key in ("cost-per-fruit", "cost-per-kg", "kwh-per-kg", "minutes-per-fruit"):
        assert dialog.crop_page.tiles[key].value_label.text() == "none yet"
    assert plain(dialog.crop_page.tiles["cost-per-day"].value_label.text()) != "none yet"


def test_a_crop_of_which_nothing_is_stated_asks_for_a_purchase(crop: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    assert dialog.crop_page.empty.isVisible()
    dialog.crop_page.empty.button.click()
    assert dialog.switch.value() == "purchases"
    assert dialog.purchases.form is not None


def test_what_is_not_counted_is_said(log: OpenLogbook, crop: Crop, shown: ShowMoney) -> None:
    save_purchase(log, replace(new_purchase(day(0), crop.id), name="Seed", price_minor=350))
    write(log, crop, day(10), Pollination(2), labour_minutes=5)
    dialog = shown()
    assert "What an hour of labour is worth is not stated" in dialog.crop_page.notes.sentence
    assert dialog.crop_page.notes.isVisible()


def test_the_chart_ends_at_the_sum_of_each_kind(log: OpenLogbook, priced: Crop, shown: ShowMoney) -> None:
    money = money_book(log, priced.id).money
    assert money is not None
    first, last, stacks = stacked(money.costs)
    assert (first, last) == (0, 112)
    assert {kind: round(values[-1] * 100) for kind, values in stacks.items()} == dict(money.costs.by_kind)
    assert list(stacks) == [CostKind.ENERGY, CostKind.SEED, CostKind.LABOUR]
    dialog = shown()
    axes = dialog.crop_page.chart.plot.getPlotItem()
    assert axes.getAxis("left").labelText == "cost so far, EUR"
    assert axes.getAxis("bottom").labelText == "plant age, days"


def test_labour_is_told_by_kind_of_work(priced: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("labour")
    assert dialog.labour_page.table is not None
    found = cells(dialog.labour_page.table)
    assert found["pollination"] == ["hand pollination", "30", "75 %", "3.0"]
    assert found["picking"] == ["picking", "10", "25 %", "1.0"]
    assert found["all"] == ["All", "40", "", "4.0"]
    assert "4.0 min a fruit over 10 fruit" in dialog.labour_page.head_label.text()


def test_without_any_minutes_labour_says_where_they_are_noted(crop: Crop, shown: ShowMoney) -> None:
    dialog = shown()
    dialog.show_part("labour")
    assert dialog.labour_page.empty.isVisible()


def test_the_chart_can_be_saved_as_values_that_add_up_to_the_total(priced: Crop, shown: ShowMoney) -> None:
    data = shown().crop_page.chart.data()
    assert data is not None
    assert data.y_title == "cost so far, EUR"
    assert data.bands[-1].high[-1] == pytest.approx(68.00)
    assert [band.low[-1] for band in data.bands[1:]] == pytest.approx([band.high[-1] for band in data.bands[:-1]])
