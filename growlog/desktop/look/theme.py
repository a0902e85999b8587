"""Puts the look on the application: style, palette, font and style sheet, and tells when they change."""

from dataclasses import dataclass
from string import Template

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication

from growlog.desktop.look.icon_files import arrow_file, tick_file
from growlog.desktop.look.tokens import COLOUR_TOKENS, DARK, LIGHT, Palette, blend
from growlog.desktop.resources import resource_path, resource_text

FAMILY = "Logbook Sans"
BASE_PX = 13
MODES = ("light", "dark", "system")
_SCHEMES = {
    "light": Qt.ColorScheme.Light,
    "dark": Qt.ColorScheme.Dark,
    "system": Qt.ColorScheme.Unknown,  # gives the choice back to the system
}
_WEIGHTS = ("Regular", "Medium", "SemiBold", "Bold")
_SHEETS = ("base", "buttons", "fields", "lists", "panels")


@dataclass(frozen=True)
class Look:
    """What painted widgets need to know: the colours and how much larger than usual the text is."""

    palette: Palette = LIGHT
    scale: float = 1.0

    def px(self, at_100_percent: float) -> int:
        """A length in pixels at the present text size."""
        return round(at_100_percent * self.scale)

    def font(self, size: float = BASE_PX, weight: QFont.Weight = QFont.Weight.Normal) -> QFont:
        """The program's font with tabular figures; size in pixels at 100 %."""
        return make_font(self.px(size), weight)

    def colour(self, token: str) -> QColor:
        """A token as a colour to paint with."""
        return QColor(self.palette.colour(token))


class ThemeSignal(QObject):
    """Says that the colours or the text size have changed."""

    changed = Signal()


class _State:
    look = Look()
    mode = "light"
    signal: ThemeSignal | None = None


def current() -> Look:
    """The look that is on now."""
    return _State.look


def theme_signal() -> ThemeSignal:
    """The object whose `changed` painted widgets connect to."""
    if _State.signal is None:
        _State.signal = ThemeSignal()
    return _State.signal


def apply_theme(app: QApplication, mode: str = "system", text_percent: int = 100) -> None:
    """Dresses the application. mode: light, dark or system. text_percent: 100 to 200."""
    if mode not in MODES:
        raise ValueError(f"mode is {mode}, allowed are {', '.join(MODES)}")
    if not 100 <= text_percent <= 200:
        raise ValueError(f"text_percent is {text_percent}, allowed is 100 to 200")
    _load_font()
    _follow_system(app)
    _State.mode = mode
    app.styleHints().setColorScheme(_SCHEMES[mode])
    _State.look = Look(_palette_for(app, mode), text_percent / 100)
    _dress(app)
    theme_signal().changed.emit()


def make_font(size_px: int, weight: QFont.Weight = QFont.Weight.Normal) -> QFont:
    """The program's font at a size in pixels, with figures of one width."""
    font = QFont(FAMILY)
    font.setPixelSize(size_px)
    font.setWeight(weight)
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def style_sheet(look: Look) -> str:
    """The style sheet with the tokens and the lengths put in."""
    template = Template("\n".join(resource_text("styles", f"{name}.qss") for name in _SHEETS))
    return template.substitute(_values(look))


def _palette_for(app: QApplication, mode: str) -> Palette:
    if mode == "system":
        dark = app.styleHints().colorScheme() == Qt.ColorScheme.Dark
        return DARK if dark else LIGHT
    return DARK if mode == "dark" else LIGHT


def _dress(app: QApplication) -> None:
    look = _State.look
    if app.style().name() != "fusion":
        app.setStyle("Fusion")
    app.setPalette(qt_palette(look.palette))
    app.setFont(look.font())
    app.setStyleSheet(style_sheet(look))


def _follow_system(app: QApplication) -> None:
    if app.property("follows_system"):
        return
    app.setProperty("follows_system", True)
    app.styleHints().colorSchemeChanged.connect(_system_changed)


def _system_changed() -> None:
    app = QApplication.instance()
    if _State.mode == "system" and isinstance(app, QApplication):
        apply_theme(app, "system", round(_State.look.scale * 100))


def _load_font() -> None:
    if FAMILY in QFontDatabase.families():
        return
    for weight in _WEIGHTS:
        path = resource_path("font", f"LogbookSans-{weight}.otf")
        if QFontDatabase.addApplicationFont(str(path)) < 0:
            raise RuntimeError(f"The font file {path} cannot be read.")


def qt_palette(tokens: Palette) -> QPalette:
    """The tokens in the roles that Qt's own painting reads."""
    role = QPalette.ColorRole
    pairs = {
        role.Window: tokens.paper,
        role.WindowText: tokens.ink,
        role.Base: tokens.card,
        role.AlternateBase: tokens.soft,
        role.Text: tokens.ink,
        role.PlaceholderText: tokens.mute,
        role.Button: tokens.card,
        role.ButtonText: tokens.ink,
        role.BrightText: tokens.problem,
        role.ToolTipBase: tokens.ink,
        role.ToolTipText: tokens.paper,
        role.Highlight: tokens.accent,
        role.HighlightedText: tokens.on_accent,
        role.Link: tokens.accent,
        role.LinkVisited: tokens.accent,
        role.Light: tokens.card,
        role.Midlight: tokens.soft,
        role.Mid: tokens.rule,
        role.Dark: tokens.edge,
        role.Shadow: tokens.rule,
        role.Accent: tokens.accent,
    }
    palette = QPalette()
    for which, colour in pairs.items():
        palette.setColor(which, QColor(colour))
    for which in (role.Text, role.WindowText, role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, which, QColor(disabled_ink(tokens)))
    return palette


def disabled_ink(tokens: Palette) -> str:
    """Text of what cannot be used now: halfway between second text and the ground."""
    return blend(tokens.mute, tokens.paper, 0.4)


def _values(look: Look) -> dict[str, str]:
    tokens = look.palette
    values = {token: tokens.colour(token) for token in COLOUR_TOKENS}
    values["disabled"] = disabled_ink(tokens)
    values["hover"] = blend(tokens.card, tokens.soft, 0.7)
    values["pressed"] = blend(tokens.soft, tokens.rule, 0.5)
    values["accent_hover"] = blend(tokens.accent, tokens.ink if tokens.is_dark else tokens.paper, 0.14)
    values["accent_pressed"] = blend(tokens.accent, tokens.paper if tokens.is_dark else tokens.ink, 0.25)
    values["accent_tint"] = blend(tokens.card, tokens.accent, 0.12)
    values["problem_tint"] = blend(tokens.card, tokens.problem, 0.08)
    values["light_tint"] = blend(tokens.card, tokens.light, 0.12)
    for size in (9, 11, 12, 13, 14, 15, 16, 18, 20, 22, 24, 28, 32, 40):
        values[f"t{size}"] = f"{look.px(size)}px"
    for length in (2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 24, 28, 30, 32, 36, 40, 44, 48, 56):
        values[f"s{length}"] = f"{look.px(length)}px"
        # Beside a thicker line there is less padding, so that nothing moves when the focus comes.
        values[f"f{length}"] = f"{max(0, look.px(length) - 1)}px"
        values[f"d{length}"] = f"{max(0, look.px(length) - 3)}px"
    values["family"] = FAMILY
    values["arrow_down"] = arrow_file("down", tokens.mute)
    values["arrow_up"] = arrow_file("up", tokens.mute)
    values["arrow_right"] = arrow_file("right", tokens.mute)
    values["tick"] = tick_file("check", tokens.on_accent)
    values["dot"] = tick_file("dot", tokens.accent)
    values["round"] = f"{look.px(14) // 2 + 1}px"
    values["dash"] = tick_file("dash", tokens.on_accent)
    return values
