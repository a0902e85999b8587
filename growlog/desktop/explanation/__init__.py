"""How a computed figure is worked out, shown wherever one stands on the screen."""

from growlog.desktop.explanation.explanation_dialog import ExplanationButton, ExplanationDialog, show_explanation
from growlog.desktop.explanation.explanation_panel import ExplanationPanel

__all__ = ["ExplanationButton", "ExplanationDialog", "ExplanationPanel", "show_explanation"]
