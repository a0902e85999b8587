"""The list behind the intake tray: rows come in, are changed, judged, left out and taken in. It knows no Qt."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path

from growlog.services.photo_intake import IntakeItem, Outcome, shifted, with_crop, with_day


@dataclass(frozen=True)
class TrayRow:
    """One file: as it stands now, as it was read, and whether the grower leaves it out."""

    item: IntakeItem
    as_read: IntakeItem
    left_out: bool = False

    @property
    def is_picture(self) -> bool:
        """Whether there is anything to change about it."""
        return self.item.picture is not None

    @property
    def goes_in(self) -> bool:
        """Whether confirming writes it."""
        return not self.left_out and self.item.goes_in


@dataclass(frozen=True)
class TrayCounts:
    """How many files will have which fate; questioned ones are among those that go in."""

    going_in: int
    questioned: int
    already_there: int
    waiting: int
    left_out: int
    refused: int


class Tray:
    """Rows in the order in which they were read.

    What becomes of a row depends on the others (the same picture twice), so any change makes all judgements
    stale; `is_settled` says that the last judgement holds.
    """

    def __init__(self) -> None:
        self.rows: list[TrayRow] = []
        self._version = 0
        self._judged_version = 0

    @property
    def is_settled(self) -> bool:
        """Whether nothing has changed since the last judgement."""
        return self._version == self._judged_version

    @property
    def version(self) -> int:
        """Goes up by one with every change."""
        return self._version

    def fresh(self, items: Iterable[IntakeItem]) -> list[IntakeItem]:
        """Those of the items whose file is not in the tray yet."""
        seen: set[Path] = {row.item.path for row in self.rows}
        found = []
        for item in items:
            if item.path not in seen:
                seen.add(item.path)
                found.append(item)
        return found

    def add(self, items: Sequence[IntakeItem]) -> None:
        """Appends files; see `fresh`."""
        self.rows += [TrayRow(item, item) for item in items]
        self._touch()

    def set_day(self, places: Iterable[int], day: date) -> None:
        """Gives pictures a typed day."""
        self._change(places, lambda row: replace(row, item=with_day(row.item, day)))

    def set_crop(self, places: Iterable[int], crop_id: str) -> None:
        """Puts pictures on a crop."""
        self._change(places, lambda row: replace(row, item=with_crop(row.item, crop_id)))

    def shift(self, places: Iterable[int], by: timedelta) -> None:
        """Puts a wrong camera clock right."""
        self._change(places, lambda row: replace(row, item=shifted(row.item, by)))

    def leave_out(self, places: Iterable[int], left_out: bool = True) -> None:
        """Leaves pictures out, or takes them back into the tray."""
        self._change(places, lambda row: replace(row, left_out=left_out))

    def put_as_read(self, places: Iterable[int]) -> None:
        """Takes back all changes to the day; the crop stays."""
        self._change(places, _with_read_day)

    def would_leave_out(self, places: Iterable[int]) -> bool:
        """Whether leaving out is the change that these rows want: one of them is still in."""
        return any(not self.rows[p].left_out for p in self.pictures_among(places))

    def pictures_among(self, places: Iterable[int]) -> list[int]:
        """The places of rows that can be changed at all."""
        return [p for p in places if self.rows[p].is_picture and self.rows[p].item.outcome is not Outcome.REFUSED]

    def to_judge(self) -> list[TrayRow]:
        """The rows whose fate depends on the logbook; what was left out does not make another one a duplicate."""
        return [row for row in self.rows if row.is_picture and not row.left_out]

    def take_judgement(self, version: int, sent: Sequence[TrayRow], judged: Sequence[IntakeItem]) -> None:
        """Puts the judged items into those of the sent rows that have not changed since."""
        found = {id(row): item for row, item in zip(sent, judged, strict=True)}
        self.rows = [_with_item(row, found.get(id(row))) for row in self.rows]
        self._judged_version = version

    def going_in(self) -> list[TrayRow]:
        """What confirming writes."""
        return [row for row in self.rows if row.goes_in]

    def take_result(self, sent: Sequence[TrayRow], results: Sequence[IntakeItem], written: int) -> int:
        """Takes out the rows that were written; a file that was refused on the way stays with its sentence.

        Files are copied in order, so that of those not refused the first `written` are in the logbook.
        Returns how many were refused.
        """
        gone: set[int] = set()
        refused: dict[int, IntakeItem] = {}
        for row, item in zip(sent, results, strict=True):
            if item.outcome is Outcome.REFUSED:
                refused[id(row)] = item
            elif len(gone) < written:
                gone.add(id(row))
        kept = [row for row in self.rows if id(row) not in gone]
        self.rows = [replace(r, item=refused[id(r)]) if id(r) in refused else r for r in kept]
        self._touch()
        return len(refused)

    def counts(self) -> TrayCounts:
        """How many rows will have which fate."""
        fates = Counter(row.item.outcome for row in self.rows if not row.left_out)
        return TrayCounts(
            going_in=fates[Outcome.NEW] + fates[Outcome.QUESTIONED],
            questioned=fates[Outcome.QUESTIONED],
            already_there=fates[Outcome.DUPLICATE],
            waiting=fates[Outcome.WAITING],
            left_out=sum(row.left_out for row in self.rows),
            refused=fates[Outcome.REFUSED],
        )

    def _change(self, places: Iterable[int], change: Callable[[TrayRow], TrayRow]) -> None:
        able = self.pictures_among(places)
        changed = [(place, change(self.rows[place])) for place in able]  # all of them, or none if one cannot be
        for place, row in changed:
            self.rows[place] = row
        self._touch()

    def _touch(self) -> None:
        self._version += 1


def _with_item(row: TrayRow, item: IntakeItem | None) -> TrayRow:
    return row if item is None or item == row.item else replace(row, item=item)


def _with_read_day(row: TrayRow) -> TrayRow:
    read = row.as_read
    return replace(row, item=replace(row.item, day=read.day, at=read.at, source=read.source), left_out=False)
