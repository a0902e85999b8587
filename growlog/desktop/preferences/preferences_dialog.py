"""Preferences: theme, text size and units. What is chosen holds at once; there is nothing to confirm."""

from PySide6.QtWidgets import QApplication, QWidget

from growlog.desktop.look.theme import apply_theme
from growlog.desktop.look.widgets import ChoiceField, DialogFrame, SegmentSwitch, TextLabel
from growlog.desktop.settings import Settings
from growlog.words import say

TEXT_PERCENTS = (100, 110, 125, 150, 175, 200)


class PreferencesDialog(DialogFrame):
    """Writes into the settings and dresses the program anew."""

    def __init__(self, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(say("Preferences"), "", parent, 480)
        self.setObjectName("preferences")
        self._settings = settings
        self.theme_switch = SegmentSwitch(
            [("light", say("light")), ("dark", say("dark")), ("system", say("as the system"))],
            settings.text("theme"),
            say("Colours"),
        )
        self.size_field = ChoiceField(
            say("Text size"), _percents(settings.number("text_percent")), str(settings.number("text_percent")),
            name="textSize",
        )  # fmt: skip
        self.units_switch = SegmentSwitch(
            [("metric", say("metric: g, L, °C")), ("us", say("US: oz, gal, °F"))], settings.text("units"), say("Units")
        )
        self.close_button = self.add_button(say("Close"), "primary", "close")
        self._fill_body()
        self.theme_switch.value_changed.connect(self._set_theme)
        self.size_field.value_changed.connect(self._set_size)
        self.units_switch.value_changed.connect(self._set_units)
        self.close_button.clicked.connect(self.close)

    def _fill_body(self) -> None:
        self.body.addWidget(TextLabel(say("Colours"), "field-label"))
        self.body.addWidget(self.theme_switch)
        self.body.addWidget(self.size_field)
        self.body.addWidget(TextLabel(say("Units"), "field-label"))
        self.body.addWidget(self.units_switch)
        kept = say("The logbook keeps metric figures in any case; units change what is shown and typed.")
        self.body.addWidget(TextLabel(kept, "small", wraps=True))
        self.body.addStretch(1)

    def _set_theme(self, theme: str) -> None:
        self._settings.set("theme", theme)
        self._dress()

    def _set_size(self) -> None:
        self._settings.set("text_percent", int(self.size_field.value() or 100))
        self._dress()

    def _set_units(self, units: str) -> None:
        self._settings.set("units", units)

    def _dress(self) -> None:
        app = QApplication.instance()
        if isinstance(app, QApplication):
            apply_theme(app, self._settings.text("theme"), self._settings.number("text_percent"))


def _percents(present: int) -> list[tuple[str, str]]:
    return [(str(n), f"{n}\u2009%") for n in sorted({*TEXT_PERCENTS, present})]
