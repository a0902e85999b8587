"""The tally in hand: its state, the crops it may be about, and every step that keys and buttons take."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, time
from functools import partial

from PySide6.QtCore import QObject, Signal

from growlog.desktop.entry_form.display_units import METRIC
from growlog.desktop.tally.typed_weight import read_weight, weight_text
from growlog.records.entry import CullCause
from growlog.records.limits import limit
from growlog.records.problems import Problem
from growlog.services.tally import CannotTally, CropTally, Stopwatch, Tally, TallyCrop, TallyProblem, check_tally
from growlog.words import say

ReadCrops = Callable[[date, list[str]], list[TallyCrop]]


class TallyModel(QObject):
    """Widgets ask it for steps and show what it then holds. It says in a sentence what each step did or why not."""

    changed = Signal()
    said = Signal(str, bool)  # the sentence, and whether it refuses

    def __init__(
        self,
        tally: Tally,
        read_crops: ReadCrops,
        now: Callable[[], datetime],
        today: date,
        system: str = METRIC,
        parent: QObject | None = None,
    ) -> None:
        """now: the moment with the local time zone. today: the civil date that counts as today. system: for weights."""
        super().__init__(parent)
        self._today = today
        self._opened_on = now().date()
        self._checked: tuple[Tally, list[TallyCrop], list[TallyProblem]] | None = None
        self.now = now
        self.system = system
        self._read_crops = read_crops
        self._answered: set[TallyProblem] = set()
        self._refused: list[TallyProblem] = []
        self.crops: list[TallyCrop] = []
        self.tally = tally
        self.take(tally)

    def take(self, tally: Tally) -> None:
        """Another tally from now on, such as one that was not finished."""
        self.tally = tally
        self._answered = set()
        self.refresh()

    def refresh(self) -> None:
        """Reads the crops again, because the day or the logbook changed."""
        touched = [c.crop_id for c in self.tally.crops]
        self.crops = list(self._read_crops(self.tally.day, touched))
        self._refused = []
        known = [row.crop_id for row in self.crops]
        if self.tally.chosen not in known:
            self.tally = replace(self.tally, chosen=known[0] if known else "")
        self.changed.emit()

    @property
    def row(self) -> TallyCrop | None:
        """The chosen crop, None where none grows."""
        return next((row for row in self.crops if row.crop_id == self.tally.chosen), None)

    @property
    def crop(self) -> CropTally:
        """What was done at the chosen crop."""
        return self.tally.of(self.tally.chosen)

    def name_of(self, crop_id: str) -> str:
        """A crop's name."""
        return next((row.name for row in self.crops if row.crop_id == crop_id), "")

    def problems(self, crop_id: str) -> list[TallyProblem]:
        """What stands against a crop's tally and what is asked and not yet answered; refusals first."""
        found = self._found()
        refused = [p for p in self._refused if p not in found]
        return [
            p
            for p in sorted([*refused, *found], key=lambda p: p.asks)
            if p.crop_id == crop_id and p not in self._answered
        ]

    def _found(self) -> list[TallyProblem]:
        """Asked for by every row after every key, so it is worked out once a state."""
        if self._checked is None or self._checked[0] is not self.tally or self._checked[1] is not self.crops:
            self._checked = (self.tally, self.crops, check_tally(self.tally, self.crops))
        return self._checked[2]

    def first_open(self) -> TallyProblem | None:
        """The first problem or open question of any crop, None if it may be written."""
        order = [c.crop_id for c in self.tally.crops]
        return next((p for crop_id in order for p in self.problems(crop_id)), None)

    def answer(self, question: TallyProblem) -> None:
        """The grower says that it is right."""
        self._answered.add(question)
        self._say(say("Taken as right."))
        self.changed.emit()

    def show_refused(self, problems: list[Problem]) -> None:
        """What the logbook said against it when it was to be written."""
        self._refused = [p for p in problems if isinstance(p, TallyProblem)]
        self.said.emit(" ".join(p.sentence for p in problems), True)
        self.changed.emit()

    def choose(self, crop_id: str) -> None:
        """Another crop in hand. Figures that still stand in the weight field hold it back."""
        if crop_id == self.tally.chosen:
            return
        if self.tally.typed:
            self.refuse(self._half_typed())
            return
        self._set(replace(self.tally, chosen=crop_id))
        self._say(self.name_of(crop_id))

    def choose_place(self, place: int) -> None:
        """The crop at a place in the rail."""
        if 0 <= place < len(self.crops):
            self.choose(self.crops[place].crop_id)
        else:
            self.refuse(say("There is no crop on this key."))

    def choose_next(self, by: int) -> None:
        """The crop after or before the chosen one."""
        places = [row.crop_id for row in self.crops]
        if places:
            self.choose(places[(places.index(self.tally.chosen) + by) % len(places)])

    def type_weight(self, text: str) -> None:
        """What stands in the weight field, not yet entered: it is kept, too."""
        self._set(replace(self.tally, typed=text))

    def enter_weight(self) -> bool:
        """Takes the typed weight as one more fruit; False where it is refused and still stands."""
        if not self.tally.typed:
            self.refuse(say("Type a weight first. W counts a fruit without weighing it."))
            return False
        try:
            weight_g = read_weight(self.tally.typed, self.system)
            after = self.crop.picked(weight_g)
        except CannotTally as problem:
            self.refuse(str(problem))
            return False
        if self._no_crop():
            return False
        self._set(replace(self.tally, typed="").with_crop(after))
        self._say(say("{weight}: fruit {n}.", weight=weight_text(weight_g, self.system), n=len(after.fruit)))
        return True

    def letter_after_figures(self, letter: str) -> None:
        """A letter while a weight stands in the field: refused, and the figures stay."""
        sentence = say("{letter} was not taken: {half}", letter=letter, half=self._half_typed())
        self.refuse(sentence)

    def strike(self, place: int) -> None:
        """Strikes one fruit."""
        fruit = self.crop.fruit[place]
        self._put(self.crop.struck(place))
        self._say(say("Struck: {what}.", what=self.fruit_text(fruit)))

    def strike_last(self) -> None:
        """Strikes the last fruit."""
        fruit = self.crop.fruit
        self._try(self.crop.struck_last, say("Struck: {what}.", what=self.fruit_text(fruit[-1])) if fruit else "")

    def count_unweighed(self, by: int = 1) -> None:
        """One more or one fewer fruit that is not weighed."""
        self.set_unweighed(self.crop.unweighed_count + by)

    def set_unweighed(self, count: int) -> None:
        """So many fruit that were not weighed."""
        crop = self.crop
        if count != crop.unweighed_count:
            self._try(partial(crop.with_unweighed, count), say("Not weighed: {n}.", n=count))

    def cull(self, cause: CullCause, by: int = 1) -> None:
        """One cull more or less of a cause."""
        crop = self.crop
        words = say("Culled, {cause}: {n}.", cause=say(cause.label), n=crop.cull_count(cause) + by)
        self._try(partial(crop.culled, cause, by), words)

    def count(self, counter: str, by: int) -> None:
        """One more or one fewer of a counter."""
        self.set_count(counter, getattr(self.crop, counter) + by)

    def set_count(self, counter: str, to: int) -> None:
        """A counter at a count; the first pollination takes the time of now with it."""
        crop = self.crop
        if to == getattr(crop, counter):
            return
        # Of another day, also one that midnight made another, the clock's time says nothing.
        is_now = self.tally.day == self._today and self.now().date() == self._opened_on
        at = self.now().time().replace(second=0, microsecond=0) if is_now else None
        words = say("{what}: {n}.", what=say(limit(counter).label), n=to)
        self._try(partial(crop.counted, counter, to, at), words)

    def set_pollination_time(self, at: time | None) -> None:
        """The pollination's own time, as the grower writes it."""
        if at != self.crop.pollinated_at:
            self._put(self.crop.with_time(at))

    def set_check(self, name: str, count: int | None) -> None:
        """A count of the fruit check."""
        crop = self.crop
        self._try(partial(crop.checked, name, count), "")

    def set_note(self, note: str) -> None:
        """The note for the chosen crop."""
        self._put(replace(self.crop, note=note))

    def set_minutes(self, minutes: int | None) -> None:
        """Minutes for the chosen crop."""
        crop = self.crop
        self._try(partial(crop.with_minutes, minutes), "")

    def set_session_minutes(self, minutes: int | None) -> None:
        """Minutes of the whole session as the grower says."""
        try:
            self._set(self.tally.with_minutes_typed(minutes))
        except CannotTally as problem:
            self.refuse(str(problem))

    def share_equally(self) -> None:
        """Shares the minutes over the crops that were worked at."""
        try:
            after = self.tally.shared_equally(self.now())
        except CannotTally as problem:
            self.refuse(str(problem))
            return
        self._set(after)
        self._say(say("The minutes are shared in equal parts."))

    @property
    def watch_is_doubtful(self) -> bool:
        """Whether the stopwatch was probably left on."""
        return self.tally.stopwatch.is_doubtful(self.now())

    def start_or_stop(self) -> None:
        """Starts the stopwatch, or stops it; one that was probably left on waits for the grower's word."""
        watch = self.tally.stopwatch
        if not watch.running:
            self.set_watch(watch.started(self.now()), say("The stopwatch runs."))
        elif not self.watch_is_doubtful:
            self.set_watch(watch.stopped(self.now()), say("The stopwatch is stopped."))
        else:
            self.refuse(say("Was the stopwatch left on? Say so at its question."))
            self.changed.emit()

    def keep_long_run(self) -> None:
        """The grower says that the long time is right."""
        self.set_watch(self.tally.stopwatch.stopped(self.now()), say("The whole time is taken."))

    def drop_long_run(self) -> None:
        """The grower says that it was left on."""
        self.set_watch(self.tally.stopwatch.without_present_run(), say("That time is left out. Type the minutes."))

    def set_watch(self, watch: Stopwatch, words: str) -> None:
        """The stopwatch's next state."""
        self._set(replace(self.tally, stopwatch=watch))
        self._say(words)

    def set_day(self, day: date) -> None:
        """The day that the entries get."""
        if day != self.tally.day:
            self.tally = self.tally.with_day(day)
            self.refresh()

    def fruit_text(self, weight_g: float | None) -> str:
        """A fruit in words: its weight, or that it was not weighed."""
        return say("not weighed") if weight_g is None else weight_text(weight_g, self.system)

    def refuse(self, sentence: str) -> None:
        """Says why a step is not taken."""
        self.said.emit(sentence, True)

    def _half_typed(self) -> str:
        return say("{typed} stands in the weight field. Enter adds it, Backspace empties it.", typed=self.tally.typed)

    def _try(self, step: Callable[[], CropTally], words: str) -> None:
        try:
            after = step()
        except CannotTally as problem:
            self.refuse(str(problem))
            self.changed.emit()  # a field that ran ahead shows the count that stands
            return
        self._put(after)
        if words:
            self._say(words)

    def _put(self, crop: CropTally) -> None:
        if not self._no_crop():
            self._set(self.tally.with_crop(crop))

    def _no_crop(self) -> bool:
        if self.row is None:
            self.refuse(say("No crop grows on this day. Choose another day."))
        return self.row is None

    def _set(self, tally: Tally) -> None:
        if tally != self.tally:
            self.tally = tally
            self.changed.emit()

    def _say(self, words: str) -> None:
        self.said.emit(words, False)
