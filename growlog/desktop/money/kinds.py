"""How each kind of cost is drawn: a colour and a hatching of its own, so that no kind is told by colour alone."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor

from growlog.desktop.look.theme import current
from growlog.services.money.lines import CostKind

_P = Qt.BrushStyle
_DRAWN = {
    CostKind.ENERGY: ("light", _P.SolidPattern),
    CostKind.NUTRIENTS: ("feed", _P.Dense4Pattern),
    CostKind.WATER: ("reading", _P.HorPattern),
    CostKind.SEED: ("stage", _P.SolidPattern),
    CostKind.MEDIUM: ("training", _P.BDiagPattern),
    CostKind.CONTAINERS: ("mute", _P.CrossPattern),
    CostKind.GEAR: ("accent", _P.FDiagPattern),
    CostKind.LABOUR: ("pollination", _P.Dense5Pattern),
    CostKind.OTHER: ("pick", _P.VerPattern),
}


def kind_brush(kind: CostKind) -> QBrush:
    """The brush of a kind in the present theme."""
    token, style = _DRAWN[kind]
    return QBrush(QColor(current().colour(token)), style)


def kind_colour(kind: CostKind) -> QColor:
    """The colour of a kind in the present theme."""
    return QColor(current().colour(_DRAWN[kind][0]))


def kind_token(kind: CostKind) -> str:
    """The name of a kind's colour among the tokens."""
    return _DRAWN[kind][0]
