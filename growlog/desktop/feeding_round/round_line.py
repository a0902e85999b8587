"""One line of a feeding round: a crop or a tank, what it gets, and what it was given last."""

from collections.abc import Iterable
from dataclasses import replace

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import TextLabel
from growlog.records.display import fixed, plain
from growlog.records.entry import Feed
from growlog.records.problems import Problem
from growlog.services.feeding_round import RoundRow
from growlog.words import say, show_day_of_year

COLUMNS = ("volume_l", "ec_ms_per_cm", "ph", "drain_l")
FED_LATELY_DAYS = 4
_NAME_PX = 170  # a longer name is cut, so that the fields beside it stay in sight


class RoundLine(QObject):
    """The widgets of a line, laid into the grid of the dialog; what is typed in a field takes the line in."""

    changed = Signal()

    def __init__(self, row: RoundRow, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.row = row
        self.tick = QCheckBox(_cut(row.name))
        self.tick.setToolTip(row.name)
        self.tick.setAccessibleName(row.name)
        self.tick.setObjectName(f"round.{row.name}")
        self.about = TextLabel(self._about(), "small", tone="mute", wraps=True)
        self.fields = {key: self._field(key, units) for key in COLUMNS}
        self.message = TextLabel("", "message", wraps=True)
        self.answer_box = QCheckBox(say("Yes, it is right"))
        self.answer_box.setObjectName(f"round.{row.name}.answer")
        self._asked = ""
        self.message.hide()
        self.answer_box.hide()
        self.tick.toggled.connect(self._told)
        self.answer_box.toggled.connect(self._told)

    def lay_into(self, grid: QGridLayout, at: int) -> None:
        """Takes four rows of the grid: the line, what was given last, what is wrong, and the answer."""
        grid.addWidget(self.tick, at, 0)
        for column, key in enumerate(COLUMNS, 1):
            grid.addWidget(self.fields[key], at, column, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.about, at + 1, 0, 1, len(COLUMNS) + 1)
        grid.addWidget(self.message, at + 2, 0, 1, len(COLUMNS) + 1)
        grid.addWidget(self.answer_box, at + 3, 0, 1, len(COLUMNS) + 1)

    @property
    def is_in(self) -> bool:
        """Whether it is fed in this round."""
        return self.tick.isChecked()

    @property
    def is_answered(self) -> bool:
        """Whether nothing is asked about it, or the answer is yes."""
        return not self.is_in or not self._asked or self.answer_box.isChecked()

    @property
    def can_be_read(self) -> bool:
        """Whether each field holds a number or nothing."""
        return all(field.check() for field in self.fields.values())

    def show_row(self, row: RoundRow) -> None:
        """The same crop or tank on another day; what was typed stays."""
        self.row = row
        self.about.setText(self._about())

    def show_for_all(self, shown: dict[str, str], mix_id: str | None = None) -> None:
        """What an empty field takes from the line above all, and where that is empty from its plan for this mix."""
        for key, field in self.fields.items():
            planned = self._planned_volume_l(mix_id) if key == "volume_l" else None
            field.line.setPlaceholderText(shown.get(key, "") or field.text_of(planned))

    def feed(self, for_all: Feed, volume_l: float | None) -> Feed:
        """What it gets: its own figures, and where it has none those for all, and the volume of its plan where there is
        neither. volume_l: its part of what is for all."""
        own = {key: field.value() for key, field in self.fields.items()}
        planned = self.row.planned
        as_planned = planned is not None and for_all.mix_id is not None and planned.mix.id == for_all.mix_id
        planned_l = self._planned_volume_l(for_all.mix_id)
        return replace(
            for_all,
            strength_percent=planned.strength_percent if planned is not None and as_planned else None,
            volume_l=next((v for v in (own["volume_l"], volume_l, planned_l) if v is not None), None),
            ec_ms_per_cm=own["ec_ms_per_cm"] if own["ec_ms_per_cm"] is not None else for_all.ec_ms_per_cm,
            ph=own["ph"] if own["ph"] is not None else for_all.ph,
            drain_l=own["drain_l"],
        )

    def repeat(self) -> None:
        """Fills in what it was given last time; a drain is measured anew. One fed already has to be ticked for it."""
        if self.row.last is None or (self.row.fed_before and not self.is_in):
            return
        for key in ("volume_l", "ec_ms_per_cm", "ph"):
            self.fields[key].set_value(getattr(self.row.last, key))
        self.tick.setChecked(True)
        self.changed.emit()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What stands against it, or is asked about it."""
        found = list(problems) if self.is_in else []
        firm = " ".join(p.sentence for p in found if not p.asks)
        asked = "" if firm else " ".join(p.sentence for p in found if p.asks)
        if asked != self._asked:
            self.answer_box.blockSignals(True)
            self.answer_box.setChecked(False)
            self.answer_box.blockSignals(False)
        self._asked = asked
        self.message.setText(firm or asked)
        self.message.setProperty("tone", "problem" if firm else "")
        self.message.setVisible(bool(firm or asked))
        self.answer_box.setVisible(bool(asked))

    def _planned_volume_l(self, mix_id: str | None) -> float | None:
        planned = self.row.planned
        return planned.volume_l if planned is not None and mix_id is not None and planned.mix.id == mix_id else None

    def _field(self, key: str, units: str) -> MeasureField:
        field = MeasureField(key, system=units, name=f"round.{self.row.name}.{key}")
        spoken = f"{self.row.name}, {field.label.text()} {field.unit_label.text()}".strip()
        field.set_label("")  # both stand once, above the column
        field.set_unit("")
        field.editor.setAccessibleName(spoken)
        field.value_changed.connect(self._typed)
        return field

    def _typed(self) -> None:
        if any(not field.is_empty() for field in self.fields.values()):
            self.tick.setChecked(True)
        self.changed.emit()

    def _told(self) -> None:
        self.changed.emit()

    def _about(self) -> str:
        again = say("fed on this day already") if self.row.fed_before else ""
        return "\n".join(part for part in (self._about_last(), self._about_plan(), again) if part)

    def _about_plan(self) -> str:
        planned = self.row.planned
        if planned is None:
            return ""
        volume = "" if planned.volume_l is None else fixed(planned.volume_l, 1, "L")
        strength = plain(planned.strength_percent, "%")
        words = say("plan: {mix} at {strength}", mix=planned.mix.name, strength=strength)
        return ", ".join(part for part in (words, volume) if part)

    def _about_last(self) -> str:
        last, day = self.row.last, self.row.last_day
        if last is None or day is None:
            return say("{about}, not fed yet", about=self.row.about)
        given = ", ".join(t for t in (last.summary(), last.second_line()) if t)
        return say("{about}; {day}: {given}", about=self.row.about, day=show_day_of_year(day), given=given)


def _cut(name: str) -> str:
    look = current()
    shown = QFontMetrics(look.font(13)).elidedText(name, Qt.TextElideMode.ElideRight, look.px(_NAME_PX))
    return shown.replace("&", "&&")  # else it would mark a key
