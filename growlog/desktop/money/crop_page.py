"""What the chosen crop costs: so far, per fruit, kg and day, over plant age and by kind."""

from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.charts import ChartMenu
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.explanation.figure_words import value_text
from growlog.desktop.look.widgets import Banner, Card, EmptyState, FormGrid, SectionTitle, TextLabel
from growlog.desktop.money.cost_chart import CostChart
from growlog.desktop.money.kinds import kind_brush
from growlog.desktop.money.wording import amount_text, money_text
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.records.display import THIN
from growlog.records.money import decimals_of
from growlog.services.money.book import CropMoney
from growlog.services.money.lines import CostKind
from growlog.words import say, show_number

_TILES = ("cost-per-fruit", "cost-per-kg", "cost-per-day", "kwh-per-kg", "minutes-per-fruit")


class CropPage(QWidget):
    """Nothing stated yet shows what to do first."""

    purchase_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        sentence = say("Nothing is known of what this crop costs. Say what you paid, or what electricity costs.")
        self.empty = EmptyState(sentence, say("Add a purchase…"), name="emptyMoney")
        self.total_label = TextLabel("", "figure")
        self.total_button = ExplanationButton()
        self.tiles = {key: _Tile() for key in _TILES}
        self.chart = CostChart()
        self.chart_menu = ChartMenu(self.chart.data)
        columns = [Column(say("Kind")), Column(say("Cost"), True, 104), Column(say("Share"), True, 64)]
        self.table = PlainTable(columns, say("Cost by kind"), "kinds", 10)
        self.kinds_button = ExplanationButton()
        self.notes = Banner("", "asks", can_close=False)
        self.full = QWidget()
        self._place()
        self.empty.chosen.connect(self.purchase_wanted)

    def show_money(self, money: CropMoney | None) -> None:
        """Another crop, or the same after a change."""
        known = money is not None and bool(money.costs.lines)
        self.empty.setVisible(not known)
        self.full.setVisible(known)
        if money is None or not known:
            self.notes.hide()
            return
        costs = money.costs
        self.total_label.setText(say("{cost} so far", cost=money_text(costs.total_minor, costs.currency)))
        self.total_button.show_figures(money.figures["cost"], money.names)
        for key, tile in self.tiles.items():
            tile.show_figure(money.figures[key], money, _shop_words(key, money))
        self.chart.show_costs(costs, money.crop.name)
        self.table.show_rows(_kind_rows(money))
        explained = [money.figures[f"cost-{kind}"] for kind in CostKind if kind in costs.by_kind]
        self.kinds_button.show_figures(explained, money.names)
        self.notes.show_message("\n".join(costs.notes), "asks")
        self.notes.setVisible(bool(costs.notes))

    def _place(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(self.empty, 1)
        column.addWidget(self.full, 1)
        inner = QVBoxLayout(self.full)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(12)
        head = QHBoxLayout()
        head.addWidget(self.total_label)
        head.addWidget(self.total_button)
        head.addStretch(1)
        head.addWidget(self.chart_menu)
        tiles = FormGrid(5, 184)  # narrower ones would cut "How this is worked out" off
        tiles.add(*self.tiles.values())
        both = FormGrid(2, 400)
        right = QWidget()
        right_column = QVBoxLayout(right)
        right_column.setContentsMargins(0, 0, 0, 0)
        right_column.setSpacing(8)
        right_column.addWidget(SectionTitle(say("By kind")))
        right_column.addWidget(self.table)
        right_column.addWidget(self.kinds_button)
        both.add(self.chart, right)
        inner.addLayout(head)
        inner.addWidget(tiles)
        inner.addWidget(both)
        inner.addWidget(self.notes)
        inner.addStretch(1)


class _Tile(Card):
    """One figure with its name, what a shop asks beside it, and how it is worked out."""

    def __init__(self) -> None:
        super().__init__(margin_px=12)
        self.body.setSpacing(4)
        self.name_label = TextLabel("", "field-label", wraps=True)
        self.value_label = TextLabel("", "figure")
        self.shop_label = TextLabel("", "small", "mute", wraps=True)
        self.button = ExplanationButton()
        for widget in (self.name_label, self.value_label, self.shop_label, self.button):
            self.body.addWidget(widget)

    def show_figure(self, figure: Figure, money: CropMoney, shop: str) -> None:
        self.name_label.setText(_names()[figure.key])
        self.value_label.setText(figure_text(figure, money.costs.currency))
        self.shop_label.setText(shop)
        self.shop_label.setVisible(bool(shop))
        self.button.show_figures(figure, money.names)


def figure_text(figure: Figure, currency: str) -> str:
    """A figure's value for a tile: money to a tenth of the smallest coin, "none yet" where there is none."""
    value = figure.value
    if isinstance(value, Decimal) and currency and figure.unit.startswith(currency):
        small = abs(value) < 1
        return amount_text(value, currency, decimals_of(currency) + (1 if small else 0))
    unit = figure.unit.split("/")[0]
    if isinstance(value, (float, Decimal)):
        return f"{show_number(float(value), 1)}{THIN}{unit}" if unit else show_number(float(value), 2)
    return value_text(value, unit)


def _names() -> dict[str, str]:
    return {
        "cost-per-fruit": say("A fruit"),
        "cost-per-kg": say("A kg of fruit"),
        "cost-per-day": say("A day"),
        "kwh-per-kg": say("Electricity for a kg"),
        "minutes-per-fruit": say("Labour for a fruit"),
    }


def _shop_words(key: str, money: CropMoney) -> str:
    per, currency = money.costs.per, money.costs.currency
    minor = {"cost-per-fruit": per.shop_per_fruit_minor, "cost-per-kg": per.shop_per_kg_minor}.get(key)
    if key not in ("cost-per-fruit", "cost-per-kg"):
        return ""
    if minor is None:
        return say("shop price not stated")
    return say("a shop asks {price}", price=money_text(minor, currency))


def _kind_rows(money: CropMoney) -> list[Row]:
    costs = money.costs
    rows = []
    for kind in reversed([k for k in CostKind if costs.by_kind.get(k)]):  # as they lie on each other in the chart
        minor = costs.by_kind[kind]
        share = show_number(100 * minor / costs.total_minor, 0) + f"{THIN}%" if costs.total_minor else ""
        cells = (say(kind.label), money_text(minor, costs.currency), share)
        rows.append(Row(kind.value, cells, kind_brush(kind), tip=say(money.figures[f"cost-{kind}"].method)))
    total = (say("All"), money_text(costs.total_minor, costs.currency), "")
    return [*rows, Row("total", total, bold=True)]
