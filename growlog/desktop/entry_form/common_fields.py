"""The fields that every entry has: day, time, whose it is, labour and note."""

from datetime import date, time

from PySide6.QtWidgets import QSizePolicy

from growlog.desktop.entry_form.field_makers import Cell
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import ChoiceField, DayField, FormGrid, NoteField, TimeField
from growlog.records.entry import Entry, Owner, OwnerKind
from growlog.services.entries import Belongs
from growlog.words import say


class CommonFields:
    """Two grids, one above and one below what the kind asks for."""

    def __init__(self, entry: Entry, owners: list[Belongs]) -> None:
        is_note = entry.kind == "note"
        self.day = DayField(say("Day"), entry.day, near=entry.day, required=True, name="day")
        self.at = TimeField(say("Time"), entry.at, name="at")
        self.whose = ChoiceField(say("Whose"), _choices(entry, owners), _key(entry.owner), name="owner")
        self.labour = MeasureField("labour_minutes", name="labour_minutes")
        self.note = NoteField(say("Note"), entry.note, 4 if is_note else 2, name="note")
        self.labour.set_value(entry.labour_minutes)
        self.cells = [
            Cell(name, field)
            for name, field in (
                ("day", self.day),
                ("at", self.at),
                ("owner", self.whose),
                ("labour_minutes", self.labour),
                ("note", self.note),
            )
        ]
        self.above = wrapping_grid()
        self.above.add(*self.cells[:3])
        self.below = wrapping_grid()
        if is_note:
            self.below.add(self.cells[4], span=3)
            self.below.add(self.cells[3])
        else:
            self.below.add(self.cells[3])
            self.below.add(self.cells[4], span=2)

    def chosen_owner(self) -> Owner:
        """Whose entry it is."""
        kind, _, owner_id = (self.whose.value() or "").partition(":")
        return Owner(OwnerKind(kind), owner_id)

    def chosen_day(self) -> date | None:
        """The day, None where none can be read."""
        return self.day.value()

    def chosen_time(self) -> time | None:
        """The time of day."""
        return self.at.value()

    def minutes(self) -> int | None:
        """Labour in whole minutes."""
        value = self.labour.value()
        return None if value is None else int(value)


def wrapping_grid() -> FormGrid:
    """Three columns whose rows grow with sentences that wrap."""
    grid = FormGrid(3, 132)
    grid.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
    return grid


def _choices(entry: Entry, owners: list[Belongs]) -> list[tuple[str, str]]:
    found = [(_key(belongs.owner), belongs.name) for belongs in owners]
    if _key(entry.owner) not in dict(found):
        found.insert(0, (_key(entry.owner), say("as it was written")))
    return found


def _key(owner: Owner) -> str:
    return f"{owner.kind.value}:{owner.id}"
