"""What a letter does while the weight field is empty: one table, and a plain refusal for all other letters."""

from collections.abc import Callable

from growlog.desktop.tally.check_section import CheckSection
from growlog.desktop.tally.keys import (
    COUNTER_KEYS,
    CULL,
    DAY,
    FRUIT_CHECK,
    KEY_OF,
    MINUTES,
    NOTE,
    SHARE,
    STOPWATCH,
    UNWEIGHED,
    YES,
    cause_keys,
)
from growlog.desktop.tally.minutes_section import MinutesSection
from growlog.desktop.tally.pick_section import PickSection
from growlog.desktop.tally.questions_panel import QuestionsPanel
from growlog.desktop.tally.tally_model import TallyModel
from growlog.records.limits import limit
from growlog.words import say


class Letters:
    """Takes letters from the weight field and has the right thing done."""

    def __init__(
        self,
        model: TallyModel,
        pick: PickSection,
        check: CheckSection,
        minutes: MinutesSection,
        questions: QuestionsPanel,
        go_to_note: Callable[[], None],
        go_to_day: Callable[[], None],
    ) -> None:
        self._model = model
        self._pick = pick
        self._questions = questions
        self._causes = cause_keys()
        self._taking_back = False
        self._table: dict[str, Callable[[], None]] = {
            NOTE: go_to_note,
            DAY: go_to_day,
            FRUIT_CHECK: check.open_first,
            STOPWATCH: self._stopwatch,
            MINUTES: minutes.go_to_minutes,
            SHARE: model.share_equally,
            YES: questions.answer_first,
        }

    def take(self, letter: str, shift: bool) -> None:
        """One letter in capitals; shift takes a count back."""
        if self._pick.culls_open:
            self._take_cause(letter, shift)
        elif letter in COUNTER_KEYS:
            self._count(letter, -1 if shift else 1)
        elif letter == UNWEIGHED:
            self._model.count_unweighed(-1 if shift else 1)
        elif letter == CULL:
            self._taking_back = shift
            self._pick.open_culls(True)
            self._model.said.emit(self._which_cause(), False)
        elif letter in self._table:
            self._table[letter]()
        else:
            self._model.refuse(self._no_meaning(letter))

    def _stopwatch(self) -> None:
        self._model.start_or_stop()
        if self._model.watch_is_doubtful:
            self._questions.go_to_watch()

    def _count(self, letter: str, by: int) -> None:
        counter, row = COUNTER_KEYS[letter], self._model.row
        if row is None or counter not in row.counters:
            what = say(limit(counter).label)
            name = "" if row is None else row.name
            self._model.refuse(say("{letter} counts {what}, which does not fit {crop}.", letter=letter,
                                   what=what[:1].lower() + what[1:], crop=name))  # fmt: skip
        else:
            self._model.count(counter, by)

    def _take_cause(self, letter: str, shift: bool) -> None:
        if letter not in self._causes:
            self._model.refuse(
                say("{letter} is no cause. {causes} Esc leaves it.", letter=letter, causes=self._which_cause())
            )
            return
        self._pick.open_culls(False)
        self._model.cull(self._causes[letter], -1 if shift or self._taking_back else 1)

    def _which_cause(self) -> str:
        causes = ", ".join(f"{letter} {say(cause.label)}" for letter, cause in self._causes.items())
        return say("Which cause? {causes}.", causes=causes)

    def _no_meaning(self, letter: str) -> str:
        row = self._model.row
        counted = [] if row is None else [KEY_OF[name] for name in row.counters]
        known = ", ".join([UNWEIGHED, CULL, *counted, *self._table])
        return say("{letter} has no meaning here. Keys: {keys}.", letter=letter, keys=known)
