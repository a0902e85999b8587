"""Which work a crop asks for: minutes by kind of work, beside other crops."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import EmptyState, TextLabel
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.records.display import THIN
from growlog.services.money.book import CropMoney
from growlog.services.money.labour import LabourOfCrop, Work
from growlog.words import say, say_count, show_number

_MOST_OTHERS = 4


class LabourPage(QWidget):
    """A column for each crop with labour: the chosen one first, in minutes and per fruit."""

    def __init__(self) -> None:
        super().__init__()
        sentence = say("No minutes of work were noted with this crop yet. Each entry has a field for them.")
        self.empty = EmptyState(sentence, name="emptyLabour")
        self.head_label = TextLabel("", "heading", wraps=True)
        words = say("Minutes so far and their share; under each crop's name, minutes a fruit.")
        self.way_label = TextLabel(words, "small", wraps=True)
        self.table: PlainTable | None = None
        self.note_label = TextLabel(
            say("Of work on a room or a tank each crop that stood there has an equal part."), "small", wraps=True
        )
        self.button = ExplanationButton()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(12)
        for widget in (self.empty, self.head_label, self.way_label, self.note_label, self.button):
            self._column.addWidget(widget)
        self._column.addStretch(1)

    def show_money(self, money: CropMoney | None) -> None:
        """Another crop, or the same after a change."""
        if self.table is not None:
            self.table.hide()
            self.table.deleteLater()
            self.table = None
        known = money is not None and bool(money.labour.minutes)
        self.empty.setVisible(not known)
        for widget in (self.head_label, self.way_label, self.note_label, self.button):
            widget.setVisible(known)
        if money is None or not known:
            return
        self.head_label.setText(_head(money.labour))
        self.button.show_figures(money.labour.per_fruit, money.names)
        labours = [money.labour, *money.others[:_MOST_OTHERS]]
        self.table = PlainTable(_columns(labours), say("Labour by kind of work"), "labour", 12)
        self.table.show_rows(_rows(labours))
        self._column.insertWidget(self._column.indexOf(self.note_label), self.table)


def _head(labour: LabourOfCrop) -> str:
    hours, minutes = divmod(round(labour.minutes), 60)
    words = say("{hours} h {minutes} min so far", hours=hours, minutes=minutes)
    value = labour.per_fruit.value
    if value is None:
        return f"{words}; {say('per fruit none yet')}"
    fruit = say_count("{n} fruit", "{n} fruit", labour.fruit_count)
    each = show_number(float(value), 1)
    return say("{time}; {each} min a fruit over {fruit}", time=words, each=each, fruit=fruit)


def _columns(labours: list[LabourOfCrop]) -> list[Column]:
    columns = [Column(say("Work"), width_px=210), Column(say("min"), True, 64), Column(say("Share"), True, 64)]
    for labour in labours:
        columns.append(Column(labour.name, True, tip=say("{crop}: minutes a fruit", crop=labour.name)))
    return columns


def _rows(labours: list[LabourOfCrop]) -> list[Row]:
    found = [{w.work: w for w in labour.work} for labour in labours]
    works = [w.work for w in labours[0].work]
    works += [work for work in Work if work not in works and any(work in one for one in found[1:])]
    rows = []
    for work in works:
        own = found[0].get(work)
        minutes = "" if own is None else show_number(own.minutes, 0)
        share = "" if own is None else f"{show_number(own.share_percent, 0)}{THIN}%"
        each = [_each(one[work].per_fruit) if work in one else "" for one in found]
        rows.append(Row(work.value, (say(work.label), minutes, share, *each)))
    totals = [_each(None if x.per_fruit.value is None else float(x.per_fruit.value)) for x in labours]
    return [*rows, Row("all", (say("All"), show_number(labours[0].minutes, 0), "", *totals), bold=True)]


def _each(value: float | None) -> str:
    return say("none yet") if value is None else show_number(value, 1)
