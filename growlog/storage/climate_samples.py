"""What air loggers recorded, and the days made of it: many rows, written in batches and read as a stream."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import asdict, fields
from datetime import date, datetime
from itertools import islice

from sqlalchemy import delete, insert, select
from sqlalchemy.orm import Session

from growlog.records.climate_day import ClimateDay, ClimateSample
from growlog.storage.tables.read_files import ClimateDayRow, LoggerFileRow, LoggerSampleRow

_BATCH = 2000
_DAY_FIELDS = [f.name for f in fields(ClimateDay)]


class ClimateSamples:
    """The samples and days of a unit of work. Nothing here commits, and no history is kept of it: a logger file is a
    record with a history, its samples are what the file says."""

    def __init__(self, session: Session, must_be_writable: Callable[[], None]) -> None:
        self._session = session
        self._must_be_writable = must_be_writable

    def insert(self, file_id: str, room_id: str, samples: Iterable[ClimateSample]) -> int:
        """Writes the samples of a file whose record is there already, and says how many they were.

        sqlalchemy.exc.IntegrityError where one moment stands twice in the file.
        """
        self._must_be_writable()
        count, left = 0, iter(samples)
        while batch := list(islice(left, _BATCH)):
            rows = [{"file_id": file_id, "room_id": room_id, **vars(s)} for s in batch]
            self._session.execute(insert(LoggerSampleRow), rows)
            count += len(batch)
        return count

    def samples(
        self,
        room_id: str,
        from_utc: datetime | None = None,
        to_utc: datetime | None = None,
        *,
        file_id: str | None = None,
    ) -> Iterator[ClimateSample]:
        """A room's samples from one moment until before another, in the order of time; no bound where None. Of one file
        alone where it is named.

        Files in the bin are left out. Where two files overlap, both tell, the file read in first before the other.
        """
        sample, file = LoggerSampleRow.__table__.c, LoggerFileRow.__table__.c
        query = (
            select(sample.at_utc, sample.air_temperature_c, sample.relative_humidity_percent)
            .join(LoggerFileRow, file.id == sample.file_id)
            .where(sample.room_id == room_id, file.removed_at.is_(None))
            .order_by(sample.at_utc, file.added_at, file.id)
        )
        if file_id is not None:
            query = query.where(sample.file_id == file_id)
        if from_utc is not None:
            query = query.where(sample.at_utc >= from_utc)
        if to_utc is not None:
            query = query.where(sample.at_utc < to_utc)
        for row in self._session.execute(query.execution_options(yield_per=_BATCH)):
            yield ClimateSample(*row)

    def of_file(self, file_id: str) -> Iterator[ClimateSample]:
        """The samples of one file, in the bin or not, in the order of time."""
        sample = LoggerSampleRow.__table__.c
        query = select(sample.at_utc, sample.air_temperature_c, sample.relative_humidity_percent)
        query = query.where(sample.file_id == file_id).order_by(sample.at_utc)
        for row in self._session.execute(query.execution_options(yield_per=_BATCH)):
            yield ClimateSample(*row)

    def write_days(self, room_id: str, days: Iterable[ClimateDay]) -> None:
        """Writes days over those of the same dates."""
        self._must_be_writable()
        rows = [{"room_id": room_id, **asdict(day)} for day in days]
        if rows:
            self._session.execute(insert(ClimateDayRow).prefix_with("OR REPLACE"), rows)

    def forget_days(self, room_id: str, from_day: date | None = None, until_day: date | None = None) -> None:
        """Takes the days of a room away, both bounds among them, to be made again; all where no bound is named."""
        self._must_be_writable()
        query = delete(ClimateDayRow).where(ClimateDayRow.room_id == room_id)
        if from_day is not None:
            query = query.where(ClimateDayRow.day >= from_day)
        if until_day is not None:
            query = query.where(ClimateDayRow.day <= until_day)
        self._session.execute(query)

    def days(self, room_id: str, from_day: date | None = None, until_day: date | None = None) -> list[ClimateDay]:
        """The days of a room, both bounds among them, in order; no bound where None."""
        day = ClimateDayRow.__table__.c
        query = select(*(day[name] for name in _DAY_FIELDS)).where(day.room_id == room_id).order_by(day.day)
        if from_day is not None:
            query = query.where(day.day >= from_day)
        if until_day is not None:
            query = query.where(day.day <= until_day)
        return [ClimateDay(**row) for row in self._session.execute(query).mappings()]
