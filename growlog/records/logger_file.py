"""Files of an air logger that were read in; their samples are rows of a table of their own."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.problems import Problem
from growlog.words import say


@dataclass(frozen=True)
class LoggerFile:
    """A logger file of a room, known by its SHA-256. first_at, last_at: UTC."""

    id: str
    room_id: str
    name: str
    sha256: str
    sample_count: int
    first_at: datetime
    last_at: datetime
    added_at: datetime
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        if self.last_at < self.first_at:
            return [Problem("last_at", say("It ends before it begins."))]
        return []
