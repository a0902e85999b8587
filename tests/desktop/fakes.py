"""Stand-ins for the doors through which the desktop talks to the person and the system."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from growlog.services.paper import Paper


@dataclass
class FakeMessages:
    """Keeps what was said. `answer` is given to every question: True for yes, False for no, None for neither."""

    answer: bool | None = None
    informed: list[str] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    questions: list[str] = field(default_factory=list)
    actions: list[tuple[str, Callable[[], None] | None]] = field(default_factory=list)

    def inform(self, sentence: str, action: str = "", on_action: Callable[[], None] | None = None) -> None:
        self.informed.append(sentence)
        self.actions.append((action, on_action))

    def problem(self, sentence: str, details: str = "") -> None:
        self.problems.append(f"{sentence} {details}".strip())

    def ask(
        self,
        question: str,
        yes: str,
        on_yes: Callable[[], None],
        details: str = "",
        no: str = "",
        on_no: Callable[[], None] | None = None,
    ) -> None:
        self.questions.append(question)
        if self.answer is True:
            on_yes()
        elif self.answer is False and on_no is not None:
            on_no()

    def clear(self) -> None:
        self.informed.clear()
        self.problems.clear()


@dataclass
class FakeFileChoice:
    """Answers with the paths that were laid in, one after the other; None once they are used up."""

    answers: list[Path | None] = field(default_factory=list)
    titles: list[str] = field(default_factory=list)

    def folder(self, title: str) -> Path | None:
        return self._next(title)

    def file_to_open(self, title: str, filters: Sequence[str] = ()) -> Path | None:
        return self._next(title)

    def files_to_open(self, title: str, filters: Sequence[str] = ()) -> list[Path]:
        chosen = self._next(title)
        return [] if chosen is None else [chosen]

    def file_to_save(self, title: str, suggested: str, filters: Sequence[str] = ()) -> Path | None:
        return self._next(title)

    def _next(self, title: str) -> Path | None:
        self.titles.append(title)
        return self.answers.pop(0) if self.answers else None


@dataclass
class FakePrinting:
    """Chooses a printer at once, one with Letter paper; it takes pages, or not."""

    takes: bool = True
    painted: list[bytes] = field(default_factory=list)
    titles: list[str] = field(default_factory=list)
    paper: Paper = Paper.LETTER
    dots_per_inch: int = 72

    def choose(self, title: str, paper: Paper, on_chosen: Callable[["FakePrinting"], None]) -> None:
        self.titles.append(title)
        on_chosen(self)

    def paint(self, pages: Sequence[bytes]) -> bool:
        self.painted = list(pages)
        return self.takes
