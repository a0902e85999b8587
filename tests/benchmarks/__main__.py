"""Prints the ratios: `python -m tests.benchmarks`. Each is measured within this run, on this machine."""

import os
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def main() -> None:
    """Builds the sample season in a folder of its own and measures."""
    from growlog.services.logbooks import clock_as_of
    from growlog.services.sample import build_sample
    from tests.benchmarks import curve_fits, day_line, intake, logger_import, opening

    sample = Path(__file__).parents[2] / "sample_season"
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        season, cache = folder / "season", folder / "cache"
        build_sample(sample, season, clock_as_of())
        _make_previews(season, cache, sample)
        print(f"opening the sample season / empty window       {opening.ratio(season, cache, sample, 5):6.2f}")
        print(f"intake of 60 photos / plain loop               {intake.ratio(folder, 60, 3):6.2f}")
        print(f"logger file of 100 000 rows / plain loop       {logger_import.ratio(folder, 100_000, 2):6.2f}")
        print(f"step of the day line / read and paint preview  {day_line.ratio(season, cache, sample, 5):6.2f}")
        print(f"fits of 300 crops / one plain curve each       {curve_fits.ratio(3):6.2f}")


def _make_previews(season: Path, cache: Path, sample: Path) -> None:
    from growlog.services.logbooks import clock_as_of, open_log
    from growlog.services.sample import sample_last_day

    log = open_log(season, clock_as_of(sample_last_day(sample)), cache)
    list(log.readers.survey(sorted((season / "photos").rglob("*.jpg"))))
    log.close()


if __name__ == "__main__":
    main()
