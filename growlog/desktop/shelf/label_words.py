"""The words of a guaranteed analysis as a person reads them."""

from growlog.calculations.nutrients import LABEL_WORDS
from growlog.words import mark, say

_NAMES = {
    "n": mark("N, total"), "n_nitrate": mark("N as nitrate"), "n_ammonium": mark("N as ammonium"),
    "n_urea": mark("N as urea"), "no3": mark("NO₃, nitrate"), "nh4": mark("NH₄, ammonium"), "p2o5": "P₂O₅",
    "po4": "PO₄", "k2o": "K₂O", "cao": "CaO", "caco3": "CaCO₃", "mgo": "MgO", "so3": "SO₃", "so4": "SO₄",
    "sio2": "SiO₂", "fe2o3": "Fe₂O₃", "mno": "MnO", "zno": "ZnO", "cuo": "CuO", "b2o3": "B₂O₃", "moo3": "MoO₃",
    "na2o": "Na₂O",
}  # fmt: skip
# As a label lists them; each oxide beside its element.
_ORDER = (
    "n", "n_nitrate", "n_ammonium", "n_urea", "p2o5", "p", "k2o", "k", "cao", "ca", "mgo", "mg", "so3", "s", "sio2",
    "si", "fe", "mn", "zn", "cu", "b", "mo", "cl", "na",
)  # fmt: skip


def nutrient_name(word: str) -> str:
    """A label word, such as n_nitrate or p2o5, in print: "N as nitrate", "P₂O₅"."""
    return say(_NAMES[word]) if word in _NAMES else word.capitalize()


def nutrient_choices() -> list[tuple[str, str]]:
    """All label words, the usual ones first."""
    others = [word for word in LABEL_WORDS if word not in _ORDER]
    return [(word, nutrient_name(word)) for word in (*_ORDER, *others)]
