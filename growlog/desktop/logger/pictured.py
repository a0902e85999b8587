"""Files of a logger for pictures of the dialog: a clean one, and one that leaves much open."""

from datetime import date, datetime, time, timedelta
from pathlib import Path

_CLEAN = "Time,Temperature (°C),Humidity (%RH)"
_TROUBLED = "Date,Temp,RH"


def written_logger_file(folder: Path, first: date, troubled: bool) -> Path:
    """A week of readings every ten minutes; troubled: without units, as parts of one, with rows that cannot be."""
    path = folder / ("attic logger.csv" if troubled else "logger.csv")
    start = datetime.combine(first.replace(day=2), time())
    rows = [(start + timedelta(minutes=10 * n), n) for n in range(1000)]
    line = _troubled_line if troubled else _clean_line
    head = _TROUBLED if troubled else _CLEAN
    path.write_text("\n".join([head, *(line(at, n) for at, n in rows)]) + "\n", encoding="utf-8")
    return path


def _clean_line(at: datetime, n: int) -> str:
    return f"{at:%Y-%m-%d %H:%M},{20 + n % 144 / 30:.1f},{62 - n % 144 / 9:.0f}"


def _troubled_line(at: datetime, n: int) -> str:
    temperature = "err" if n % 97 == 5 else "212.0" if n % 211 == 9 else f"{68 + n % 144 / 20:.1f}"
    return f"{at.day:02d}/{at.month:02d}/{at.year} {at:%H:%M},{temperature},{0.62 - n % 144 / 900:.2f}"
