"""Opening the sample season, against a process that only imports the same libraries and shows an empty window."""

import subprocess
import sys
from pathlib import Path
from time import perf_counter

EMPTY = """
import sys
import numpy, pyqtgraph, sqlalchemy.orm
from PySide6.QtWidgets import QApplication, QMainWindow
app = QApplication(sys.argv)
window = QMainWindow()
window.resize(1440, 900)
window.show()
window.grab()
"""

SAMPLE = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from growlog.desktop.look.theme import apply_theme
from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.services.logbooks import clock_as_of, open_log
from growlog.services.sample import sample_last_day
app = QApplication(sys.argv)
apply_theme(app, "light", 100)
window = MainWindow(Settings(Path(sys.argv[3])))
clock = clock_as_of(sample_last_day(Path(sys.argv[4])))
window.resize(1440, 900)
window.show_logbook(open_log(Path(sys.argv[1]), clock, Path(sys.argv[2])))
window.show()
window.grab()
window.close()
"""


def seconds(code: str, *arguments: str) -> float:
    """The wall time of one process."""
    start = perf_counter()
    subprocess.run([sys.executable, "-c", code, *arguments], check=True, capture_output=True)
    return perf_counter() - start


def ratio(logbook: Path, cache: Path, sample: Path, rounds: int) -> float:
    """The best of each, run in turn so that a noisy minute meets both."""
    settings = str(cache / "benchmark.ini")
    pairs = [(seconds(SAMPLE, str(logbook), str(cache), settings, str(sample)), seconds(EMPTY)) for _ in range(rounds)]
    return min(p[0] for p in pairs) / min(p[1] for p in pairs)
