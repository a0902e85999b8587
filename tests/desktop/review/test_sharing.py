"""The review, the logbook and the film as files: what is asked, what is said, and what never stays half-written."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QObject

from growlog.desktop.review.export_dialog import ExportDialog
from growlog.desktop.review.share_dialog import HTML, PDF, ShareDialog
from growlog.desktop.windows.shared_work import SharedWork
from growlog.services.review.model import ReviewOptions
from tests.desktop.review.at_the_desk import Desktop

pytestmark = pytest.mark.slow


def opened(desktop: Desktop) -> ShareDialog:
    assert desktop.window.opened is not None
    desktop.window.actions_table.by_name["share_review"].trigger()
    assert desktop.window.opened.sharing.share is not None
    return desktop.window.opened.sharing.share


def test_places_are_left_out_unless_asked_for(desktop: Desktop) -> None:
    dialog = opened(desktop)
    assert dialog.options() == ReviewOptions(money=True, notes=True, places=False)
    dialog.money_box.click()
    dialog.places_box.click()
    assert dialog.options() == ReviewOptions(money=False, notes=True, places=True)


def test_the_paper_is_asked_for_where_it_matters(desktop: Desktop) -> None:
    dialog = opened(desktop)
    assert dialog.form.value() == HTML
    assert not dialog.paper_field.isVisible()
    dialog.form.set_value(PDF)
    assert dialog.paper_field.isVisible()


def test_the_page_is_written_with_its_ending_and_can_be_shown(desktop: Desktop, tmp_path: Path) -> None:
    dialog = opened(desktop)
    desktop.files.answers = [tmp_path / "gold"]
    dialog.save_button.click()
    assert not dialog.save_button.isEnabled()
    desktop.wait()
    text = (tmp_path / "gold.html").read_text(encoding="utf-8")
    assert "Boxroom Gold" in text
    assert desktop.messages.informed[-1].startswith("The review is in gold.html.")
    assert "3 photos" in desktop.messages.informed[-1]  # whose files are missing
    assert desktop.messages.actions[-1][0] == "Show it"
    assert not dialog.isVisible()


def test_a_file_that_is_there_is_asked_about_where_the_system_could_not(desktop: Desktop, tmp_path: Path) -> None:
    there = tmp_path / "gold.html"
    there.write_text("mine")
    desktop.files.answers, desktop.messages.answer = [tmp_path / "gold"], False
    opened(desktop).save_button.click()
    desktop.wait()
    assert desktop.messages.questions == ["gold.html is there already."]
    assert there.read_text() == "mine"


def test_a_place_that_takes_no_file_is_told_in_the_dialog(desktop: Desktop, tmp_path: Path) -> None:
    dialog = opened(desktop)
    desktop.files.answers = [tmp_path / "not there" / "gold.html"]
    dialog.save_button.click()
    desktop.wait()
    assert dialog.isVisible()
    assert dialog.banner.tone == "problem"
    assert dialog.save_button.isEnabled()


def exported(desktop: Desktop, folder: Path, *, complete: bool = False) -> ExportDialog:
    desktop.window.actions_table.by_name["export"].trigger()
    sharing = desktop.window.opened.sharing
    assert sharing is not None
    assert sharing.export is not None
    assert not sharing.export.complete_button.isChecked()
    sharing.export.complete_button.setChecked(complete)
    desktop.files.answers = [folder]
    sharing.export.save_button.click()
    desktop.wait()
    return sharing.export


def test_the_logbook_is_exported_into_a_folder(without_photos: Desktop, tmp_path: Path) -> None:
    dialog = exported(without_photos, tmp_path / "open", complete=True)
    assert not dialog.isVisible()
    assert (tmp_path / "open" / "datapackage.json").is_file()
    assert without_photos.messages.informed == ["The logbook is in open."]


def test_an_export_that_would_lack_an_original_is_refused_in_the_dialog(desktop: Desktop, tmp_path: Path) -> None:
    dialog = exported(desktop, tmp_path / "open")
    assert dialog.banner.isVisible()
    assert not (tmp_path / "open").exists()


def test_a_film_without_files_says_why_there_is_none(desktop: Desktop) -> None:
    desktop.window.actions_table.by_name["time_lapse"].trigger()
    desktop.wait()
    assert desktop.window.opened is not None
    dialog = desktop.window.opened.sharing.time_lapse.dialog
    assert dialog is not None
    assert dialog.banner.sentence == "Boxroom Gold has no photos of these days."
    dialog.first_field.set_value(50)
    dialog.last_field.set_value(40)
    dialog.confirm()
    assert dialog.last_field.refusal == "It ends before it begins."


class Told(QObject):
    """A dialog that keeps what it is told."""

    def __init__(self) -> None:
        super().__init__()
        self.said: list[object] = []

    def start(self) -> None:
        self.said.append("start")

    def show_progress(self, progress: tuple[int, int]) -> None:
        self.said.append(progress)

    def end(self, problem: str = "") -> None:
        self.said.append(f"end {problem}".strip())


def test_work_tells_how_far_it_is_and_stops_when_asked(desktop: Desktop) -> None:
    told, done = Told(), list[object]()
    work = SharedWork(desktop.window.runner, told)
    work.run(told, counted, 3, on_done=done.append)
    desktop.wait()
    assert told.said == ["start", (1, 3), (2, 3), (3, 3), "end"]
    assert done == ["counted"]
    work.run(told, counted, 3, on_done=done.append)
    work.stop()
    desktop.wait()
    assert told.said[-1] == "end"
    assert done == ["counted"]


def counted(
    count: int, on_progress: Callable[[int, int], None], cancelled: Callable[[], bool]
) -> str | None:  # fmt: skip
    for number in range(1, count + 1):
        if cancelled():
            return None
        on_progress(number, count)
    return "counted"
