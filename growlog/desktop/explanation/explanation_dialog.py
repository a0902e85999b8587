"""The dialog behind "How this is worked out", and the button that opens it."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.explanation.explanation_panel import ExplanationPanel
from growlog.desktop.look.widgets import Button, ChoiceField, DialogFrame
from growlog.words import say


class ExplanationDialog(DialogFrame):
    """Shows one figure, or one of several to choose from; it holds nothing up and goes with its window."""

    def __init__(
        self, figures: Sequence[Figure], names: Mapping[str, str] | None = None, parent: QWidget | None = None
    ) -> None:
        """names: what each figure is called, by its key; the key itself where there is no name."""
        super().__init__(say("How this is worked out"), "", parent, 520)
        self.setObjectName("explanation")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._figures = list(figures)
        called = names or {}
        choices = [(str(i), called.get(f.key, f.key)) for i, f in enumerate(self._figures)]
        self.choice = ChoiceField(say("Figure"), choices, "0", name="explainedFigure")
        self.choice.setVisible(len(self._figures) > 1)
        self.panel = ExplanationPanel(self._figures[0])
        if len(self._figures) == 1 and self._figures[0].key in called:
            self.set_title(say("How this is worked out"), called[self._figures[0].key])
        self.body.addWidget(self.choice)
        self.body.addWidget(self.panel)
        self.body.addStretch(1)
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.choice.value_changed.connect(self._choose)

    def choose(self, key: str) -> None:
        """Shows the figure of a key."""
        for number, figure in enumerate(self._figures):
            if figure.key == key:
                self.choice.set_value(str(number))
                self.panel.show_figure(figure)
                return

    def _choose(self) -> None:
        self.panel.show_figure(self._figures[int(self.choice.value() or 0)])


def show_explanation(
    figures: Figure | Sequence[Figure],
    parent: QWidget | None = None,
    names: Mapping[str, str] | None = None,
    key: str = "",
) -> ExplanationDialog:
    """Opens the explanation of a figure, or of several with the one of `key` shown first."""
    listed = [figures] if isinstance(figures, Figure) else list(figures)
    dialog = ExplanationDialog(listed, names, parent)
    if key:
        dialog.choose(key)
    dialog.show()
    dialog.raise_()
    dialog.activateWindow()
    return dialog


class ExplanationButton(Button):
    """A quiet button beside a figure; pressing it shows how the figure is worked out."""

    def __init__(
        self, figures: Figure | Sequence[Figure] = (), names: Mapping[str, str] | None = None, text: str = ""
    ) -> None:
        super().__init__(text or say("How this is worked out"), "link", name="explain")
        self._figures: list[Figure] = []
        self._names: Mapping[str, str] = {}
        self.dialog: ExplanationDialog | None = None
        self.show_figures(figures, names)
        self.clicked.connect(self.explain)

    def show_figures(self, figures: Figure | Sequence[Figure], names: Mapping[str, str] | None = None) -> None:
        """What it explains from now on; nothing makes it rest."""
        self._figures = [figures] if isinstance(figures, Figure) else list(figures)
        self._names = names or {}
        self.setEnabled(bool(self._figures))

    def explain(self) -> None:
        """Opens the explanation."""
        self.dialog = show_explanation(self._figures, self.window(), self._names)
        self.dialog.destroyed.connect(self._gone)

    def _gone(self) -> None:
        self.dialog = None
