"""What the logger dialog asks of the services, with their logbook."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from growlog.records.change import Change
from growlog.records.logger_file import LoggerFile
from growlog.services.climate.logger_plan import LoggerAnswers, LoggerPlan

Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class LoggerServices:
    """plan and answer read a file and judge it; carry_in writes it whole or not at all; files: those of a room."""

    plan: Callable[[Path, str, LoggerAnswers | None, Progress], LoggerPlan | None]
    answer: Callable[[LoggerPlan, LoggerAnswers], LoggerPlan]
    carry_in: Callable[[LoggerPlan, Progress], Change | None]
    save_refused: Callable[[LoggerPlan, Path], int]
    files: Callable[[str], Sequence[LoggerFile]]
