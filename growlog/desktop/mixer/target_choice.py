"""What the tank is held against: a published target, another mix, or the grower's own ranges."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import Button, ChoiceField, TextLabel
from growlog.desktop.mixer.own_target_dialog import OwnTargetDialog
from growlog.desktop.mixer.wording import tell
from growlog.records.problems import Problem
from growlog.services.mixer import OwnTarget, Range, TargetOffer, TargetView
from growlog.services.mixer.state import Target
from growlog.words import say

_OWN = "own"


class TargetChoice(QObject):
    """The list of targets, the line that says where the chosen one is from, and the way to own ranges."""

    target_changed = Signal()
    keep_wanted = Signal(str, object)  # dict[str, Range]
    remove_wanted = Signal(str)  # the name of a kept target

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.field = ChoiceField("", [], None, say("no target"), "mixer.target")
        self.field.editor.setAccessibleName(say("Held against"))
        self.own_button = Button(say("Own ranges…"), "link", name="ownRanges")
        self.note_label = TextLabel("", "small", wraps=True)
        self.dialog: OwnTargetDialog | None = None
        self._window = parent
        self._offers: list[TargetOffer] = []
        self._own: OwnTarget | None = None
        self._shown: TargetView | None = None
        self.field.value_changed.connect(self.target_changed)
        self.own_button.clicked.connect(self.open_own)

    def show_offers(self, offers: Sequence[TargetOffer], target: Target | None) -> None:
        """What can be chosen, and what is."""
        self._offers = list(offers)
        known = next((str(n) for n, o in enumerate(self._offers) if o.target == target), None)
        self._own = target if isinstance(target, OwnTarget) and known is None else None
        choices = [(str(n), o.label) for n, o in enumerate(self._offers)]
        if self._own is not None:
            choices.insert(0, (_OWN, self._own.name or say("grower's own")))
        self.field.set_choices(choices, known if self._own is None else _OWN)

    def target(self) -> Target | None:
        """What is chosen."""
        chosen = self.field.value()
        if chosen is None:
            return None
        return self._own if chosen == _OWN else self._offers[int(chosen)].target

    def show_view(self, view: TargetView | None, problems: Sequence[Problem]) -> None:
        """Where its figures are from, and what is wrong with it."""
        self._shown = view or self._shown
        tell(self.field, problems)
        self.note_label.setText("" if view is None else view.note)
        self.note_label.setVisible(bool(view is not None and view.note))

    def open_own(self) -> None:
        """Asks for the grower's own ranges, beginning from those that are shown."""
        chosen = self.target()
        own = chosen if isinstance(chosen, OwnTarget) else None
        ranges = own.ranges if own is not None else self._shown.ranges if self._shown is not None else {}
        name = "" if own is None else own.name
        is_kept = any(isinstance(o.target, OwnTarget) and o.label == name for o in self._offers)
        self.dialog = OwnTargetDialog(ranges, name, self._window, is_kept=is_kept)
        self.dialog.confirmed.connect(self._take_and_keep)
        self.dialog.removed.connect(self.remove_wanted)
        self.dialog.show()

    def _take_and_keep(self, name: str, ranges: dict[str, Range]) -> None:
        self.take_own(name, ranges)
        if name:
            self.keep_wanted.emit(name, ranges)

    def take_own(self, name: str, ranges: dict[str, Range]) -> None:
        """Chooses the grower's own ranges."""
        self._own = OwnTarget(ranges, name)
        self.show_offers(self._offers, self._own)
        self.target_changed.emit()
