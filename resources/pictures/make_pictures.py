"""Takes the README's pictures from the real program: `.venv/bin/python resources/pictures/make_pictures.py`."""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
SHOWN = (
    ("board", "board-two-curves", "Boxroom Gold", 64, "1440x900", "light"),
    ("board-dark", "board", "Landing Light", 124, "1440x900", "dark"),
    ("compare", "compare", "Boxroom Gold", 90, "1440x900", "light"),
    ("pick", "form-pick", "Boxroom Gold", 84, "1440x900", "light"),
    ("tally", "tally-full", "Landing Light", 128, "1440x900", "light"),
    ("mixer", "mixer-target", "Landing Light", 128, "1440x900", "light"),
    ("money", "money", "Boxroom Gold", 112, "1440x900", "light"),
    ("review", "review", "Boxroom Gold", 112, "1440x900", "light"),
)


def main() -> int:
    """Builds the sample season in a folder of its own and takes each picture."""
    with tempfile.TemporaryDirectory() as name:
        season = Path(name) / "season"
        environment = {**os.environ, "XDG_CACHE_HOME": name}
        run(environment, "demo", "--to", str(season), "--no-open")
        for file, screen, crop, day, size, theme in SHOWN:
            run(
                environment, "--as-of", "2026-03-07", "picture", str(season), "--screen", screen, "--crop", crop,
                "--day", str(day), "--size", size, "--theme", theme, "--text", "100", "--to", str(HERE / f"{file}.png"),
            )  # fmt: skip
    return 0


def run(environment: dict[str, str], *arguments: str) -> None:
    """One command of the program."""
    subprocess.run([sys.executable, "-m", "growlog", *arguments], check=True, env=environment)


if __name__ == "__main__":
    sys.exit(main())
