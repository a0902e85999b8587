"""The answer of a what-if: what is changed, the four parts of the partial budget, and where it breaks even."""

from decimal import Decimal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import Card, Rule, SectionTitle, TextLabel
from growlog.desktop.money.wording import amount_text
from growlog.services.what_if import WhatIfAnswer
from growlog.services.what_if.answer import signed_percent
from growlog.words import say

_COST_THEN = 1  # its place among the last lines
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop


class WhatIfAnswerView(QWidget):
    """Built anew for each answer."""

    def __init__(self, answer: WhatIfAnswer) -> None:
        super().__init__()
        self.setObjectName("whatIfAnswer")
        self.answer = answer
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        self.headline = TextLabel(_sentence_case(answer.headline), "figure", wraps=True)
        column.addWidget(self.headline)
        column.addWidget(self._changes())
        column.addWidget(self._budget())
        column.addWidget(self._ends())
        for sentence in answer.sentences:
            column.addWidget(TextLabel(sentence, "", "mute", wraps=True))
        self.explain_button = ExplanationButton(answer.figures, names())
        column.addWidget(self.explain_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)

    def texts(self) -> list[str]:
        """All that is said."""
        return [label.text() for label in self.findChildren(TextLabel)]

    def _changes(self) -> QWidget:
        part, grid = _table()
        grid.addWidget(SectionTitle(say("What is changed")), 0, 0)
        for title, column in ((say("now"), 1), (say("then"), 2)):
            grid.addWidget(TextLabel(title, "small"), 0, column, _RIGHT)
        for row, change in enumerate(self.answer.changes, 1):
            grid.addWidget(TextLabel(change.label, wraps=True), row, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(TextLabel(change.now, "", "mute", wraps=True), row, 1, _RIGHT)
            grid.addWidget(TextLabel(change.then, "strong", wraps=True), row, 2, _RIGHT)
        return part

    def _budget(self) -> Card:
        """Gains above, losses below, each with its sum; what the change brings at the end."""
        card = Card()
        part, grid = _table()
        parts = dict(zip(("added_returns", "reduced_costs", "added_costs", "reduced_returns"), self.answer.parts,
                         strict=True))  # fmt: skip
        budget = self.answer.budget
        self._side(grid, ("added_returns", "reduced_costs"), parts, say("Gains"), budget.gains)
        self._side(grid, ("added_costs", "reduced_returns"), parts, say("Losses"), budget.losses)
        row = grid.rowCount()
        grid.addWidget(TextLabel(say("What the change brings a crop"), "heading", wraps=True), row, 0)
        self.net_label = TextLabel(self._net(), "figure" if self.answer.net is not None else "", wraps=True)
        grid.addWidget(self.net_label, row, 1, _RIGHT)
        card.body.addWidget(part)
        return card

    def _side(
        self, grid: QGridLayout, keys: tuple[str, str], parts: dict[str, tuple[str, tuple[tuple[str, str], ...]]],
        title: str, total: Decimal,
    ) -> None:  # fmt: skip
        for key in keys:
            words, lines = parts[key]
            grid.addWidget(SectionTitle(words), grid.rowCount(), 0, 1, 2)
            for label, amount in lines or ((self._none(key), ""),):
                row = grid.rowCount()
                grid.addWidget(TextLabel(label, "", "" if lines else "mute", wraps=True), row, 0)
                grid.addWidget(TextLabel(amount), row, 1, _RIGHT)
        row = grid.rowCount()
        grid.addWidget(TextLabel(title, "strong"), row, 0)
        grid.addWidget(TextLabel(self._money(total), "strong"), row, 1, _RIGHT)
        grid.addWidget(Rule(), grid.rowCount(), 0, 1, 2)

    def _none(self, key: str) -> str:
        open_ = self.answer.needs_yield_change and key in ("added_returns", "reduced_returns")
        return say("open: the yield change is not given") if open_ else say("none")

    def _net(self) -> str:
        answer = self.answer
        if answer.net is not None:
            return self._money(answer.net)
        return say("open, see below") if answer.needs_yield_change else say("open: the yield has no price")

    def _ends(self) -> QWidget:
        part, grid = _table()
        for row, (label, text) in enumerate(self._end_lines()):
            grid.addWidget(TextLabel(label, "", "" if text else "mute", wraps=True), row, 0)
            value = TextLabel(text, "strong") if text else TextLabel(self._missing(row), "", "mute")
            grid.addWidget(value, row, 1, _RIGHT)
        return part

    def _missing(self, row: int) -> str:
        return say("open") if row == _COST_THEN and self.answer.needs_yield_change else say("none")

    def _end_lines(self) -> list[tuple[str, str]]:
        answer = self.answer
        return [
            (say("A fruit costs now"), self._money(answer.cost_per_fruit_now)),
            (say("A fruit costs then"), self._money(answer.cost_per_fruit_then)),
            (say("Change of the costs of a crop"), self._money(answer.cost_change)),
            (say("Yield change at which it pays, by the shop's price"), _percent(answer.break_even_yield_percent)),
            (say("Yield change at which a fruit costs as much as now"), _percent(answer.same_cost_yield_percent)),
            (say("Shop price of a fruit at which it pays"), self._money(answer.break_even_price)),
        ]

    def _money(self, amount: Decimal | None) -> str:
        if amount is None:
            return ""
        text = amount_text(abs(amount), self.answer.currency)
        return f"\u2212{text}" if amount < 0 else text


def names() -> dict[str, str]:
    """What the figures of an answer are called."""
    return {
        "partial-budget": say("What the change brings a crop"),
        "break-even-yield-change": say("Yield change at which it pays"),
        "break-even-price": say("Shop price at which it pays"),
        "cost-per-fruit-then": say("A fruit costs then"),
    }


def _table() -> tuple[QWidget, QGridLayout]:
    part = QWidget()
    grid = QGridLayout(part)
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(5)
    grid.setColumnStretch(0, 1)
    return part, grid


def _percent(value: Decimal | None) -> str:
    if value is None:
        return ""
    return say("at any yield") if value <= -100 else signed_percent(value)


def _sentence_case(text: str) -> str:
    return text[:1].upper() + text[1:]
