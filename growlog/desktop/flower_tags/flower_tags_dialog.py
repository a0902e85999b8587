"""Tagged flowers: what became of each that hangs, and how long those that were picked took."""

from collections.abc import Iterable
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import DayField, DialogFrame, FieldRow, Rule, SectionTitle, SegmentSwitch, TextLabel
from growlog.desktop.look.widgets.empty_state import EmptyState
from growlog.records.display import plain, weight
from growlog.records.problems import Problem
from growlog.services.flower_tags import TagBook, TagFate, TagOutcome, TagStory
from growlog.words import say, say_count, show_day_of_year

_SHOWN_PAST = 30


class TagLine:
    """A flower that hangs: its number, its age, and a switch for what became of it."""

    def __init__(self, story: TagStory, day: date, units: str) -> None:
        self.story = story
        self.title = TextLabel(say("Tag {tag}", tag=story.tag), role="strong")
        self.about = TextLabel(self._about(day), "small", tone="mute")
        fates = [TagFate.YOUNG, TagFate.SET, TagFate.DROPPED, TagFate.PICKED]
        now = story.fate
        words = [(f.value, say("as before") if f is now else say(f.label)) for f in fates if f in (now, *fates[1:])]
        self.switch = SegmentSwitch(words, now.value, say("What became of tag {tag}", tag=story.tag))
        self.switch.setObjectName(f"tag.{story.tag}")
        self.weight_field = MeasureField("weight_g", system=units, name=f"tag.{story.tag}.weight")
        self.weight_field.set_label("")
        self.weight_field.editor.setAccessibleName(say("Weight of the fruit with tag {tag}", tag=story.tag))
        self.weight_field.setVisible(False)
        self.switch.value_changed.connect(self._chosen)

    def outcome(self) -> TagOutcome | None:
        """What is new about it, None where nothing is."""
        fate = TagFate(self.switch.value())
        if fate is self.story.fate:
            return None
        weight_g = self.weight_field.value() if fate is TagFate.PICKED else None
        return TagOutcome(self.story.tag, fate, None if weight_g is None else float(weight_g))

    def _chosen(self, fate: str) -> None:
        self.weight_field.setVisible(fate == TagFate.PICKED.value)
        if fate == TagFate.PICKED.value:
            self.weight_field.setFocus(Qt.FocusReason.OtherFocusReason)

    def _about(self, day: date) -> str:
        age = (day - self.story.pollinated_on).days
        days = say_count("{n} day ago", "{n} days ago", age)
        came = show_day_of_year(self.story.pollinated_on)
        if self.story.fate is TagFate.SET:
            return say("pollinated {day}, {days}; set", day=came, days=days)
        return say("pollinated {day}, {days}", day=came, days=days)


class FlowerTagsDialog(DialogFrame):
    """Stays open until its caller accepts it."""

    confirmed = Signal(object, object)  # date, list[TagOutcome]
    pollination_wanted = Signal()

    def __init__(self, book: TagBook, day: date, units: str, parent: QWidget | None = None) -> None:
        super().__init__(say("Tagged flowers"), book.crop.name, parent, 640)
        self.setObjectName("flowerTags")
        self._book = book
        self.day_field = DayField(say("Seen on"), day, latest=day, near=day, required=True, name="tags_day")
        self.lines = [TagLine(story, day, units) for story in book.hanging]
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.write_button = self.add_button(say("Write"), "primary", "write")
        self.empty = EmptyState(
            say("No tagged flower hangs. Give tag numbers when you write a pollination."), say("Pollination…")
        )
        self._lay_out()
        self.leave_button.clicked.connect(self.reject)
        self.write_button.clicked.connect(self.confirm)
        self.empty.chosen.connect(self._want_pollination)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def confirm(self) -> None:
        """Emits what is new, if everything can be read."""
        day = self.day_field.value() if self.day_field.check() else None
        outcomes = [o for o in (line.outcome() for line in self.lines) if o is not None]
        if day is not None and all(line.weight_field.check() for line in self.lines):
            self.confirmed.emit(day, outcomes)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Why the logbook refused it; what was chosen stays."""
        self.set_note(" ".join(problem.sentence for problem in problems))

    def _lay_out(self) -> None:
        if self.lines:
            self.body.addWidget(FieldRow(self.day_field))
            self.body.addLayout(self._grid())
        else:
            self.body.addWidget(self.empty)
        self.empty.setVisible(not self.lines)
        self.write_button.setVisible(bool(self.lines))
        ended = [s for s in self._book.stories if s not in self._book.hanging]
        if ended:
            self.body.addWidget(Rule())
            self.body.addWidget(SectionTitle(say("Followed to their end")))
            self.body.addWidget(TextLabel(self._summary(ended), wraps=True))
            self.body.addWidget(TextLabel(_told(ended), "small", wraps=True))
        if self._book.loose:
            numbers = ", ".join(self._book.loose)
            words = say("Seen, but never hung in a pollination: {tags}.", tags=numbers)
            self.body.addWidget(TextLabel(words, "message", wraps=True))
        self.body.addStretch(1)

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(2, 1)
        for number, line in enumerate(self.lines):
            grid.addWidget(line.title, number * 3, 0)
            grid.addWidget(line.switch, number * 3, 1)
            grid.addWidget(line.weight_field, number * 3, 2)
            grid.addWidget(line.about, number * 3 + 1, 0, 1, 3)
            grid.setRowMinimumHeight(number * 3 + 2, 8)
        return grid

    def _summary(self, ended: list[TagStory]) -> str:
        picked = sum(s.fate is TagFate.PICKED for s in ended)
        words = say("{picked} of {n} followed flowers came to a pick.", n=len(ended), picked=picked)
        days = self._book.median_days_to_pick
        if days is None:
            return words
        return words + " " + say("From pollination to pick: {days} days (median).", days=plain(days, ""))

    def _want_pollination(self) -> None:
        self.pollination_wanted.emit()


def _told(ended: list[TagStory]) -> str:
    lines = []
    for story in ended[:_SHOWN_PAST]:
        start = show_day_of_year(story.pollinated_on)
        if story.days_to_pick is None:
            lines.append(say("{tag}: pollinated {day}, {fate}", tag=story.tag, day=start, fate=say(story.fate.label)))
            continue
        days = say_count("picked after {n} day", "picked after {n} days", story.days_to_pick)
        heavy = "" if story.weight_g is None else f", {weight(story.weight_g)}"
        lines.append(say("{tag}: pollinated {day}, {days}{heavy}", tag=story.tag, day=start, days=days, heavy=heavy))
    return "\n".join(lines)
