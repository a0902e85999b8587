"""The dialog on a real logbook with two crops, and files of old notes beside it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.old_notes.old_notes_dialog import OldNotesDialog
from growlog.desktop.old_notes.work import OldNotesServices
from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.services.old_notes.carrying import carry_in, save_refused
from growlog.services.old_notes.column_use import proposed_map
from growlog.services.old_notes.old_table import read_old_notes
from growlog.services.old_notes.planning import plan_entries
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.fakes import FakeFileChoice
from tests.logbooks import logbook, plant_crop
from tests.sharing.old_notes.written_tables import write_text


@dataclass
class Desk:
    """All that a test of the dialog touches."""

    dialog: OldNotesDialog
    log: OpenLogbook
    gold: Crop
    folder: Path
    choice: FakeFileChoice
    wait: Callable[[], None]
    changes: list[Change] = field(default_factory=list)

    def read(self, text: str, name: str = "notes.csv") -> None:
        """Reads a text as a file and waits until its rows are shown."""
        self.dialog.read(write_text(self.folder / name, text))
        self.wait()

    def shown(self, column: int) -> list[str]:
        """What a column of the preview says."""
        model = self.dialog.preview.model
        return [str(model.index(row, column).data()) for row in range(model.rowCount())]


@pytest.fixture
def runner(qapp: object) -> Iterator[TaskRunner]:
    made = TaskRunner()
    yield made
    assert made.close()


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def desk(qtbot: QtBot, runner: TaskRunner, log: OpenLogbook, tmp_path: Path) -> Iterator[Desk]:
    """A shown dialog whose rows belong to Boxroom Gold."""
    gold = plant_crop(log)
    other = plant_crop(log, "Porch Violet", species="aubergine")
    choice = FakeFileChoice()
    services = OldNotesServices(
        read_old_notes, partial(proposed_map, log), partial(plan_entries, log), partial(carry_in, log), save_refused
    )
    dialog = OldNotesDialog(runner, services, [gold, other], gold.id, choice)
    qtbot.addWidget(dialog)
    dialog.show()

    def wait() -> None:
        qtbot.waitUntil(lambda: dialog.is_at_rest, timeout=20000)

    made = Desk(dialog, log, gold, tmp_path, choice, wait)
    dialog.carried_in.connect(made.changes.append)
    yield made
    dialog.close()
