"""Opens the crop review and what hangs on it: its photos, the decision, the what-if."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.desk import Desk
from growlog.desktop.messages import Messages
from growlog.desktop.review.choose_photos_dialog import ChoosePhotosDialog
from growlog.desktop.review.decision_dialog import DecisionDialog
from growlog.desktop.review.quality_fields import KEYS
from growlog.desktop.review.review_dialog import ReviewDialog
from growlog.desktop.windows.chart_saving import ChartSaving
from growlog.desktop.windows.placing import open_beside
from growlog.desktop.windows.what_if_windows import WhatIfWindows
from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.decision import Decision, Verdict
from growlog.records.problems import Problem
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.decisions import correct_decision, decide, decisions_of, new_decision, remove_decision
from growlog.services.open_logbook import LogbookProblem
from growlog.services.review.model import CropReview
from growlog.services.review.review import review_of
from growlog.services.review.story import choose_photos, forget_choice, story_choices
from growlog.words import say


class ReviewWindows(QObject):
    """One review at a time; it follows what is written and what is undone."""

    share_wanted = Signal(str)  # crop
    print_wanted = Signal(str)
    time_lapse_wanted = Signal(str)

    def __init__(self, desk: Desk, window: QWidget, messages: Messages, charts: ChartSaving) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._messages = messages
        self._charts = charts
        self._crop_id = ""
        self._reading: Task | None = None
        self.dialog: ReviewDialog | None = None
        self.decision: DecisionDialog | None = None
        self.photos: ChoosePhotosDialog | None = None
        self.what_if = WhatIfWindows(desk, window)
        desk.written.connect(self._read_again)

    def open(self, crop_id: str = "") -> None:
        """Opens the review of a crop, of the chosen one if none is named."""
        self._crop_id = crop_id or self._desk.selection.crop_id or ""
        crop = self._crop()
        if crop is None:
            return
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.close()
        self.dialog = dialog = ReviewDialog(crop.name, self._desk.pictures, self._desk.log.writable, self._window)
        dialog.day_wanted.connect(self._show_day)
        dialog.photos_wanted.connect(self.open_photos)
        dialog.chart_shown.connect(self._charts.follow)
        dialog.decide_wanted.connect(self._decide_shown)
        dialog.correct_wanted.connect(self._correct)
        dialog.remove_wanted.connect(self._remove)
        dialog.what_if_wanted.connect(self._what_if_shown)
        dialog.quality_saved.connect(self._save_quality)
        dialog.share_wanted.connect(self._share)
        dialog.print_wanted.connect(self._print)
        dialog.time_lapse_wanted.connect(self._time_lapse)
        dialog.read_again.connect(self._read)
        open_beside(dialog, self._window)
        self._read()

    def decide(self, crop_id: str = "") -> None:
        """Asks whether a crop, the chosen one if none is named, is grown again."""
        chosen = crop_id or self._desk.selection.crop_id or ""
        work = (new_decision, self._desk.log, chosen, Verdict.REGROW, "")
        self._desk.runner.run(*work, on_done=self._ask_decision, on_failed=self._say_failed, lane=Lane.DATABASE)

    def open_photos(self) -> None:
        """Opens the choice of the review's photos."""
        if self.dialog is None or self.dialog.review is None:
            return
        choices = story_choices(self._desk.log, self._crop_id)
        shown = {photo.use_id for photo in self.dialog.review.photos}
        self.photos = ChoosePhotosDialog(choices, shown, self._desk.pictures, self.dialog)
        self.photos.chosen.connect(self._write_photos)
        self.photos.automatic_wanted.connect(self._forget_photos)
        open_beside(self.photos, self._window)

    def _crop(self) -> Crop | None:
        return next((c.crop for c in self._desk.crops if c.crop.id == self._crop_id), None)

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _read_again(self, _change: object) -> None:
        if self._is_open:
            self._read()

    def _read(self) -> None:
        if self._reading is not None and isValid(self._reading):
            self._reading.cancel()
        work = (review_of, self._desk.log, self._crop_id)
        self._reading = self._desk.runner.run(*work, on_done=self._show, on_failed=self._failed, lane=Lane.DATABASE)

    def _show(self, review: CropReview) -> None:
        crop = self._crop()
        if self._is_open and self.dialog is not None and crop is not None and review.crop_id == crop.id:
            self.dialog.show_review(review, {key: getattr(crop, key) for key in KEYS})

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        if self._is_open and self.dialog is not None:
            self.dialog.say_problem(str(error))

    def _show_day(self, day: date) -> None:
        if self._desk.selection.crop_id != self._crop_id:
            self._desk.selection.choose_crop(self._crop_id)
        self._desk.choose_age(self._desk.age_of(day))

    def _decide_shown(self) -> None:
        self.decide(self._crop_id)

    def _what_if_shown(self) -> None:
        self.what_if.open(self._crop_id)

    def _share(self) -> None:
        self.share_wanted.emit(self._crop_id)

    def _print(self) -> None:
        self.print_wanted.emit(self._crop_id)

    def _time_lapse(self) -> None:
        self.time_lapse_wanted.emit(self._crop_id)

    def _ask_decision(self, decision: Decision) -> None:
        self._open_decision(decision, is_new=True)
        if self.decision is not None:
            self.decision.confirmed.connect(self._write_new)

    def _say_failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        self._messages.problem(str(error))

    def _correct(self, decision_id: str) -> None:
        found = next((d for d in decisions_of(self._desk.log, self._crop_id) if d.id == decision_id), None)
        if found is not None:
            self._open_decision(found, is_new=False)
            if self.decision is not None:
                self.decision.confirmed.connect(self._write_corrected)

    def _remove(self, decision_id: str) -> None:
        change = self._desk.write(remove_decision, decision_id)
        if change is not None:
            self._messages.inform(say("The decision was removed."), say("Undo"), self._desk.undo)

    def _open_decision(self, decision: Decision, *, is_new: bool) -> None:
        if self.decision is not None and isValid(self.decision):
            self.decision.close()
        name = next((c.crop.name for c in self._desk.crops if c.crop.id == decision.crop_id), "")
        self.decision = DecisionDialog(name, decision, is_new=is_new, parent=self._window)
        open_beside(self.decision, self._window)

    def _write_new(self, decision: Decision) -> None:
        made = (decision.crop_id, decision.verdict, decision.reasons, decision.changes)
        if self.decision is not None:
            self._said(self._desk.write(decide, *made, on_problems=self.decision.show_problems))

    def _write_corrected(self, decision: Decision) -> None:
        if self.decision is not None:
            self._said(self._desk.write(correct_decision, decision, on_problems=self.decision.show_problems))

    def _said(self, change: Change | None) -> None:
        if change is not None and self.decision is not None:
            self.decision.close()
            self.decision = None
            self._messages.inform(say("Written: {what}.", what=change.title), say("Undo"), self._desk.undo)

    def _write_photos(self, use_ids: list[str]) -> None:
        written = self._desk.write(choose_photos, self._crop_id, use_ids, on_problems=self._refuse_photos)
        if written is not None and self.photos is not None:
            self.photos.close()

    def _refuse_photos(self, problems: Iterable[Problem]) -> None:
        if self.photos is not None:
            self.photos.say_problem(" ".join(p.sentence for p in problems))

    def _forget_photos(self) -> None:
        change = forget_choice(self._desk.log, self._crop_id)
        if change is not None:
            self._desk.take(change)
        if self.photos is not None:
            self.photos.close()

    def _save_quality(self, words: dict[str, str]) -> None:
        crop, cultivar = crop_and_cultivar(self._desk.log, self._crop_id)
        change = self._desk.write(change_crop, _with_words(crop, words), cultivar)
        if change is not None:
            self._messages.inform(say("Written: {what}.", what=change.title), say("Undo"), self._desk.undo)


def _with_words(crop: Crop, words: dict[str, str]) -> Crop:
    return replace(crop, taste=words["taste"], fruit_shape=words["fruit_shape"], keeping=words["keeping"])
