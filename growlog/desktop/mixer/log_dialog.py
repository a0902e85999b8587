"""Mix and log: who gets the tank, what the meters showed, and one change that writes it all."""

from collections.abc import Iterable, Sequence
from datetime import date, time

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import (
    ChoiceField,
    DayField,
    DialogFrame,
    EmptyState,
    FormGrid,
    NoteField,
    SectionTitle,
    TextLabel,
    TimeField,
    check_all,
)
from growlog.records.display import fixed, plain
from growlog.records.problems import Problem
from growlog.services.feeding_round import RoundRow, Sharing, share_out
from growlog.services.mixer import FeedTo, Mixed
from growlog.words import say, say_count


class FeedLine(QObject):
    """A crop or tank that may get its part."""

    changed = Signal()

    def __init__(self, row: RoundRow, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.row = row
        self.tick = QCheckBox(row.name)
        self.tick.setObjectName(f"log.{row.name}")
        self.about = TextLabel(row.about, "small", wraps=True)
        self.volume = MeasureField("volume_l", system=units, name=f"log.{row.name}.volume")
        self.volume.set_label("")
        self.volume.editor.setAccessibleName(say("Volume for {name}", name=row.name))
        self.tick.toggled.connect(self._told)
        self.volume.value_changed.connect(self._typed)

    def lay_into(self, grid: QGridLayout, row: int) -> None:
        """Takes a row of the grid."""
        grid.addWidget(self.tick, row, 0)
        grid.addWidget(self.about, row, 1)
        grid.addWidget(self.volume, row, 2, Qt.AlignmentFlag.AlignTop)

    def feed(self) -> FeedTo:
        """Its part; an empty field takes its share of what the others leave."""
        return FeedTo(self.row.owner, self.volume.value())

    def _typed(self) -> None:
        if not self.volume.is_empty():
            self.tick.setChecked(True)
        self.changed.emit()

    def _told(self) -> None:
        self.changed.emit()


class LogDialog(DialogFrame):
    """Emits the feeds, what was measured, and the day; stays open until its caller finishes it."""

    confirmed = Signal(object, object, object)  # list[FeedTo], Mixed, date

    def __init__(
        self,
        day: date,
        tank_l: float,
        rows: Sequence[RoundRow],
        chosen: Sequence[str],
        expected: str,
        units: str = "metric",
        parent: QWidget | None = None,
    ) -> None:
        """chosen: ids of those that are ticked at first; expected: what the meter should read, in words."""
        super().__init__(say("Mix and log feed"), fixed(tank_l, 1, "L"), parent, 600)
        self.setObjectName("mixAndLogDialog")
        self._tank_l = tank_l
        self.day_field = DayField(say("Day"), day, latest=day, near=day, required=True, name="log_day")
        self.time_field = TimeField(say("Time"), name="log_time")
        self.sharing_field = ChoiceField(
            say("The volume"), [(s.value, say(s.label)) for s in (Sharing.BY_PLANTS, Sharing.EQUALLY)],
            Sharing.BY_PLANTS.value, name="log_sharing",
        )  # fmt: skip
        self.lines = [FeedLine(row, units, self) for row in rows]
        self.ec_field = MeasureField("ec_ms_per_cm", say("EC after mixing"), units, "log_ec")
        self.ph_field = MeasureField("ph", say("pH after mixing"), units, "log_ph")
        self.minutes_field = MeasureField("labour_minutes", say("Labour"), units, "log_minutes")
        self.note_field = NoteField(say("Note"), lines=2, name="log_note")
        self.share_label = TextLabel("", "small", wraps=True)
        self.expected_label = TextLabel(expected, "small", wraps=True)
        self.expected_label.setVisible(bool(expected))
        self.message = TextLabel("", tone="problem", wraps=True)
        self.leave_button = self.add_button(say("Cancel"), name="leave")
        self.write_button = self.add_button("", "primary", "write")
        self.write_button.setDefault(False)
        self._fill()
        self._connect()
        for line in self.lines:
            line.tick.setChecked(line.row.owner.id in chosen)
        self._judge()
        self.ec_field.setFocus()

    def feeds(self) -> list[FeedTo]:
        """Who gets how much."""
        taking = [line for line in self.lines if line.tick.isChecked()]
        given = {line.row.owner.id: line.volume.value() for line in taking}
        sharing = [line for line in taking if given[line.row.owner.id] is None]
        left = max(0.0, self._tank_l - sum(v for v in given.values() if v is not None))
        way = Sharing(self.sharing_field.value() or Sharing.BY_PLANTS)
        if sharing:
            parts = share_out(left, way, [line.row.plant_count for line in sharing])
            given |= {line.row.owner.id: part for line, part in zip(sharing, parts, strict=True)}
        return [FeedTo(line.row.owner, given[line.row.owner.id]) for line in taking]

    def mixed(self) -> Mixed:
        """What was measured, and what belongs to the entries."""
        at: time | None = self.time_field.value()
        minutes = self.minutes_field.value()
        return Mixed(
            self.ec_field.value(), self.ph_field.value(), at, None if minutes is None else int(minutes),
            self.note_field.value(),
        )  # fmt: skip

    def confirm(self) -> None:
        """Emits all of it where every field can be read."""
        fields = [self.day_field, self.time_field, self.ec_field, self.ph_field, self.minutes_field, self.note_field]
        day = self.day_field.value()
        if not check_all([*fields, *(line.volume for line in self.lines)]) or day is None:
            return
        if not self.feeds():
            self._say(say("Choose the crops or the tank that get it."))
            return
        self.confirmed.emit(self.feeds(), self.mixed(), day)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What was refused, beside its field where there is one."""
        fields = {"ec_ms_per_cm": self.ec_field, "ph": self.ph_field, "labour_minutes": self.minutes_field}
        left = []
        for problem in problems:
            field = fields.get(problem.field)
            if field is None:
                left.append(problem.sentence)
            else:
                field.show_problem(problem.sentence)
        self._say(" ".join(left))

    def _fill(self) -> None:
        times = FormGrid(3, 165)
        times.add(self.day_field, self.time_field, self.sharing_field)
        self.body.addWidget(times)
        self.body.addWidget(SectionTitle(say("Who gets it")))
        if not self.lines:
            self.body.addWidget(EmptyState(say("No crop and no tank stands on this day."), ""))
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(1, 1)
        for number, line in enumerate(self.lines):
            line.lay_into(grid, number)
        self.body.addLayout(grid)
        self.body.addWidget(self.share_label)
        self.body.addWidget(SectionTitle(say("Measured after mixing")))
        measured = FormGrid(3)
        measured.add(self.ec_field, self.ph_field, self.minutes_field)
        self.body.addWidget(self.expected_label)
        self.body.addWidget(measured)
        self.body.addWidget(self.note_field)
        self.body.addWidget(self.message)
        self.body.addStretch(1)
        self.message.hide()

    def _connect(self) -> None:
        self.leave_button.clicked.connect(self.reject)
        self.write_button.clicked.connect(self.confirm)
        self.sharing_field.value_changed.connect(self._judge)
        for line in self.lines:
            line.changed.connect(self._judge)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _judge(self) -> None:
        self._say("")
        feeds = self.feeds()
        count = len(feeds)
        self.write_button.setText(say_count("Write {n} feed", "Write {n} feeds", count) + "  Ctrl \u23ce")
        self.write_button.setEnabled(count > 0)
        shares = {f.owner.id: f.volume_l for f in feeds}
        for line in self.lines:
            share = shares.get(line.row.owner.id)
            line.volume.line.setPlaceholderText("" if share is None else plain(round(share, 2), "L"))
        given = sum(f.volume_l or 0.0 for f in feeds)
        self.share_label.setText(
            say("{given} of {tank} given; an empty field takes its share.", given=fixed(given, 1, "L"),
                tank=fixed(self._tank_l, 1, "L"))
        )  # fmt: skip

    def _say(self, sentence: str) -> None:
        self.message.setText(sentence)
        self.message.setVisible(bool(sentence))
