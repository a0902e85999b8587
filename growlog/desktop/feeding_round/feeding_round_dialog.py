"""A feeding round: what all get, then a line for each crop and tank; Enter goes down a column."""

from collections.abc import Callable, Sequence
from datetime import date
from itertools import pairwise
from typing import cast

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QCheckBox, QGridLayout, QLineEdit, QWidget

from growlog.desktop.entry_form.dialog import REPEAT_KEY
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.feeding_round.round_line import COLUMNS, FED_LATELY_DAYS, RoundLine
from growlog.desktop.look.widgets import (
    ChoiceField,
    DayField,
    DialogFrame,
    FieldRow,
    Rule,
    SectionTitle,
    TextLabel,
    TimeField,
)
from growlog.desktop.look.widgets.empty_state import EmptyState
from growlog.records.entry import Entry, Feed, Owner
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.services.feeding_round import RoundRow, Sharing, round_entries, share_out
from growlog.words import say, say_count

Check = Callable[[Entry], list[Problem]]


class FeedingRoundDialog(DialogFrame):
    """Emits the entries of the round; stays open until its caller finishes it."""

    confirmed = Signal(object)  # list[Entry]
    day_chosen = Signal(object)  # date

    def __init__(
        self, day: date, rows: Sequence[RoundRow], mixes: Sequence[Mix], given_last: str | None, check: Check,
        units: str, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        """given_last: the mix that is chosen at first."""
        super().__init__(say("Feeding round"), say("one feed for several crops"), parent, 760)
        self.setObjectName("feedingRound")
        self._check = check
        self._units = units
        self._tried = False
        self._firm = False
        self.lines = [RoundLine(row, units, self) for row in rows]
        self.day_field = DayField(say("Day"), day, latest=day, near=day, required=True, name="round_day")
        self.time_field = TimeField(say("Time"), name="round_time")
        self.mix_field = ChoiceField(
            say("Mix"), [(m.id, m.name) for m in mixes], given_last, say("no mix stated"), "round_mix"
        )
        self.water_box = QCheckBox(say("Water only"))
        self.for_all = {key: MeasureField(key, system=units, name=f"round_{key}") for key in COLUMNS[:3]}
        self.sharing_field = ChoiceField(
            say("The volume"), [(s.value, say(s.label)) for s in Sharing], Sharing.EACH.value, name="round_sharing"
        )
        self.leave_button = self.add_button(say("Cancel"), name="leave")
        self.repeat_button = self.add_button(say("As last time  {key}", key=REPEAT_KEY), name="repeat", left=True)
        self.write_button = self.add_button("", "primary", "write")
        self._lay_out()
        self._connect()
        self._tick_those_fed_lately(day)
        self._judge()

    def entries(self) -> list[Entry]:
        """The feeds as they stand, unwritten."""
        day = self.day_field.value()
        if day is None:
            return []
        return round_entries(day, self.time_field.value(), self._feeds())

    def confirm(self) -> None:
        """Emits the round if every field can be read and every question is answered."""
        self._tried = True
        self._judge()
        fit = self.day_field.check() and self.time_field.check() and all(f.check() for f in self.for_all.values())
        lines_fit = all(line.can_be_read and line.is_answered for line in self.lines)
        if fit and lines_fit and not self._firm:
            self.confirmed.emit(self.entries())

    def repeat(self) -> None:
        """Each line gets what it had last time."""
        for line in self.lines:
            line.repeat()
        self._judge()

    def show_rows(self, rows: Sequence[RoundRow]) -> None:
        """What the crops and tanks of the lines had up to another day."""
        found = {row.owner: row for row in rows}
        for line in self.lines:
            if line.row.owner in found:
                line.show_row(found[line.row.owner])

    def refuse(self, sentence: str) -> None:
        """The logbook refused it; what was typed is still here."""
        self.set_note(sentence)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter goes to the same column of the next line."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            plain = event.modifiers() in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.KeypadModifier)
            if plain and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._go_down(cast(QLineEdit, watched))
                return True
        return super().eventFilter(watched, event)

    def _lay_out(self) -> None:
        self.body.addWidget(FieldRow(self.day_field, self.time_field, self.mix_field))
        self.body.addWidget(self.water_box)
        self.body.addWidget(Rule())
        if not self.lines:
            self.body.addWidget(EmptyState(say("No crop and no tank stands on this day."), ""))
            return
        self.body.addWidget(SectionTitle(say("For all")))
        self.body.addWidget(FieldRow(*self.for_all.values(), self.sharing_field))
        self.body.addWidget(SectionTitle(say("For each; an empty field takes what stands in it in grey")))
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(0, 1)
        for column, key in enumerate(COLUMNS, 1):
            grid.addWidget(TextLabel(self._heading(key), "field-label"), 0, column)
        for number, line in enumerate(self.lines):
            line.lay_into(grid, 1 + number * 5)
            grid.setRowMinimumHeight(5 + number * 5, 10)
        self.body.addLayout(grid)
        self.body.addStretch(1)

    def _heading(self, key: str) -> str:
        drain = MeasureField("drain_l", system=self._units) if key == "drain_l" else None
        field = drain or self.for_all[key]
        unit = field.unit_label.text()
        return f"{field.label.text()}, {unit}" if unit else field.label.text()

    def _connect(self) -> None:
        self.leave_button.clicked.connect(self.reject)
        self.repeat_button.clicked.connect(self.repeat)
        self.write_button.clicked.connect(self.confirm)
        self.write_button.setDefault(False)
        self.water_box.toggled.connect(self._judge)
        self.day_field.value_changed.connect(self._day_moved)
        self.time_field.value_changed.connect(self._judge)
        for field in (*self.for_all.values(), self.mix_field, self.sharing_field):
            field.value_changed.connect(self._judge)
        self.mix_field.box.currentIndexChanged.connect(self._judge)
        self.sharing_field.box.currentIndexChanged.connect(self._judge)
        for field in (*self.for_all.values(), *(f for line in self.lines for f in line.fields.values())):
            field.line.installEventFilter(self)
        for line in self.lines:
            line.changed.connect(self._judge)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)
        QShortcut(QKeySequence(REPEAT_KEY), self).activated.connect(self.repeat)
        if self.lines:
            self._in_tab_order()

    def _in_tab_order(self) -> None:
        order: list[QWidget] = [f.line for f in self.for_all.values()]
        for line in self.lines:
            order += [line.tick, *(f.line for f in line.fields.values())]
        order.append(self.sharing_field.box)
        for before, after in pairwise(order):
            QWidget.setTabOrder(before, after)
        self.for_all["volume_l"].setFocus()

    def _tick_those_fed_lately(self, day: date) -> None:
        for line in self.lines:
            last = line.row.last_day
            lately = last is not None and (day - last).days <= FED_LATELY_DAYS
            line.tick.setChecked(lately and not line.row.fed_before)
        if not any(line.is_in for line in self.lines):
            for line in self.lines:
                line.tick.setChecked(line.row.owner.kind.value == "crop" and not line.row.fed_before)

    def _day_moved(self) -> None:
        day = self.day_field.value()
        if day is not None:
            self.day_chosen.emit(day)
        self._judge()

    def _go_down(self, editor: QLineEdit) -> None:
        above = [[f.line for f in self.for_all.values()]]
        rows = above + [[f.line for f in line.fields.values()] for line in self.lines]
        for number, row in enumerate(rows):
            if editor in row:
                below = rows[(number + 1) % len(rows)]
                below[min(row.index(editor), len(below) - 1)].setFocus()
                return

    def _feeds(self) -> list[tuple[Owner, Feed]]:
        taking = [line for line in self.lines if line.is_in]
        sharing = [line for line in taking if line.fields["volume_l"].is_empty()]
        total = self.for_all["volume_l"].value()
        parts: dict[str, float | None] = {}
        if total is not None and sharing:
            counts = [line.row.plant_count for line in sharing]
            way = Sharing(self.sharing_field.value() or Sharing.EACH)
            shares = share_out(float(total), way, counts)
            parts = {line.row.owner.id: share for line, share in zip(sharing, shares, strict=True)}
        common = self._common()
        return [(line.row.owner, line.feed(common, parts.get(line.row.owner.id))) for line in taking]

    def _common(self) -> Feed:
        water = self.water_box.isChecked()
        return Feed(
            mix_id=None if water else self.mix_field.value(),
            ec_ms_per_cm=self.for_all["ec_ms_per_cm"].value(),
            ph=self.for_all["ph"].value(),
            water_only=water,
        )

    def _judge(self) -> None:
        readable = all(line.can_be_read for line in self.lines)
        entries = self.entries() if readable else []
        found = {e.owner.id: self._check(e) for e in entries}
        self._firm = not readable or any(not p.asks for problems in found.values() for p in problems)
        for line in self.lines:
            problems = found.get(line.row.owner.id, [])
            untouched = not self._tried and all(f.is_empty() for f in line.fields.values())
            line.show_problems([p for p in problems if p.asks or not untouched or self._has_common])
            line.show_for_all(self._shown(), self._common().mix_id)
        self._show_count(len(entries))

    @property
    def _has_common(self) -> bool:
        return any(not f.is_empty() for f in self.for_all.values())

    def _shown(self) -> dict[str, str]:
        shown = {key: field.line.text() for key, field in self.for_all.items()}
        if Sharing(self.sharing_field.value() or Sharing.EACH) is not Sharing.EACH:
            shown["volume_l"] = say("its part") if shown["volume_l"] else ""
        return shown

    def _show_count(self, count: int) -> None:
        self.write_button.setText(say_count("Write {n} feed", "Write {n} feeds", count))
        self.write_button.setEnabled(count > 0)
