"""A mix as a TOML file: what it says, read without judging its figures, and written again."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from growlog.calculations.dose_units import read_unit
from growlog.calculations.nutrients import ELEMENTS, LABEL_WORDS, NITRATE_N, NITROGEN_FORMS, add_up, nutrient_factor
from growlog.calculations.products import BY_WEIGHT, SOLID, Product
from growlog.calculations.water import Water, alkalinity_from_bicarbonate
from growlog.words import say

_TOP = {"name", "tank_l", "strength", "ph", "smallest_ml", "smallest_g", "water", "product", "dose", "target"}
_PRODUCT = {"name", "form", "basis", "density_g_per_ml", "label_max_per_l", "analysis"}
_DOSE = {"product", "amount", "unit"}
TARGET_WORDS = (*ELEMENTS, *(form for form in NITROGEN_FORMS if form != "N"))


class MixFileProblem(Exception):
    """A file that cannot be read as a mix; field: where, str(): the sentence."""

    def __init__(self, field_name: str, sentence: str) -> None:
        super().__init__(field_name, sentence)
        self.field = field_name
        self.sentence = sentence

    def __str__(self) -> str:
        return self.sentence


@dataclass(frozen=True)
class MixDose:
    """A dose as it is written. unit: such as "mL/L" or "oz/100gal_us"."""

    product: str
    amount: float
    unit: str


@dataclass(frozen=True)
class MixFile:
    """What a mix file says. tank_l: None where it is not stated; ignored: words in it that mean nothing here.

    smallest_ml, smallest_g: what the syringe and the scale can measure out for the tank, which doses found for a target
    are rounded to; None: not rounded.
    """

    tank_l: float | None = None
    water: Water | None = None
    products: tuple[Product, ...] = ()
    doses: tuple[MixDose, ...] = ()
    target_mg_per_l: Mapping[str, float] = field(default_factory=dict)
    strength: float = 1.0
    ph: float | None = None
    name: str = ""
    ignored: tuple[str, ...] = ()
    smallest_ml: float | None = None
    smallest_g: float | None = None


def parse_mix(text: str) -> MixFile:
    """The mix in a TOML text; MixFileProblem says which field cannot be read."""
    try:
        top = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise MixFileProblem("", say("This is no TOML file: {reason}.", reason=error)) from error
    ignored = [word for word in top if word not in _TOP]
    return MixFile(
        tank_l=_number(top, "tank_l", "tank_l"),
        water=_water(_table(top, "water")) if "water" in top else None,
        products=tuple(_product(table, ignored) for table in _tables(top, "product")),
        doses=tuple(_dose(table, ignored) for table in _tables(top, "dose")),
        target_mg_per_l=_target(_table(top, "target")),
        strength=1.0 if "strength" not in top else _number(top, "strength", "strength") or 0.0,
        ph=_number(top, "ph", "ph"),
        name=str(top.get("name", "")),
        ignored=tuple(dict.fromkeys(ignored)),
        smallest_ml=_number(top, "smallest_ml", "smallest_ml"),
        smallest_g=_number(top, "smallest_g", "smallest_g"),
    )


def mix_text(mix: MixFile) -> str:
    """The same mix as TOML; parse_mix gives it back."""
    lines = _pairs({"name": mix.name or None, "tank_l": mix.tank_l, "ph": mix.ph})
    lines += _pairs({"strength": mix.strength if mix.strength != 1 else None})
    lines += _pairs({"smallest_ml": mix.smallest_ml, "smallest_g": mix.smallest_g})
    if mix.water is not None:
        lines += ["", "[water]", *_pairs(_water_words(mix.water))]
    for product in mix.products:
        facts = {key: getattr(product, key) for key in ("name", "form", "basis", "density_g_per_ml", "label_max_per_l")}
        lines += ["", "[[product]]", *_pairs(facts)]
        if product.analysis_pct:
            lines += ["", "[product.analysis]", *_pairs(product.analysis_pct)]
    for dose in mix.doses:
        lines += ["", "[[dose]]", *_pairs({"product": dose.product, "amount": dose.amount, "unit": dose.unit})]
    if mix.target_mg_per_l:
        lines += ["", "[target]", *_pairs(mix.target_mg_per_l)]
    return "\n".join(lines).lstrip("\n") + "\n"


def _water(table: Mapping[str, Any]) -> Water:
    written = {word.lower(): word for word in table}
    table = _lower(table, "water")
    named = {"ec_ms_per_cm", "ph", "alkalinity_mg_per_l_caco3", "hco3"}
    contents = []
    for word in table.keys() - named:
        contents.append(_in_water(word, written[word], _number(table, word, f"water: {word}") or 0.0))
    alkalinity = _number(table, "alkalinity_mg_per_l_caco3", "water: alkalinity_mg_per_l_caco3")
    bicarbonate = _number(table, "hco3", "water: HCO3")
    if alkalinity is None and bicarbonate is not None:
        alkalinity = alkalinity_from_bicarbonate(max(bicarbonate, 0.0))
    ec = _number(table, "ec_ms_per_cm", "water: ec_ms_per_cm")
    return Water(add_up(contents), ec, _number(table, "ph", "water: ph"), alkalinity)


def _in_water(word: str, written: str, mg_per_l: float) -> dict[str, float]:
    form = next((form for form in NITROGEN_FORMS if form.lower() == word), None)
    if form is None and word not in LABEL_WORDS:
        sentence = say("The water states {word}, which is no element here.", word=written)
        raise MixFileProblem(f"water: {written}", sentence)
    if form is not None:
        return {NITRATE_N if form == "N" else form: mg_per_l}  # nitrogen of a water is nitrate
    nutrient, factor = nutrient_factor(word)
    return {nutrient: mg_per_l * factor}


def _water_words(water: Water) -> dict[str, float | None]:
    measured = {"ec_ms_per_cm": water.ec_ms_per_cm, "ph": water.ph}
    return {**water.nutrients_mg_per_l, **measured, "alkalinity_mg_per_l_caco3": water.alkalinity_mg_per_l_caco3}


def _product(table: Mapping[str, Any], ignored: list[str]) -> Product:
    name = _text(table, "name", "product: name")
    form = _text(table, "form", f"{name}: form").lower()
    basis = str(table.get("basis", BY_WEIGHT if form == SOLID else "")).strip().lower()
    ignored += [word for word in table if word not in _PRODUCT]
    stated = _lower(_table(table, "analysis"), f"{name}: analysis")
    unknown = [word for word in stated if word not in LABEL_WORDS]
    if unknown:
        words = ", ".join(LABEL_WORDS)
        sentence = say("{product} states {word}; known are {words}.", product=name, word=unknown[0], words=words)
        raise MixFileProblem(f"{name}: {unknown[0]}", sentence)
    analysis = {word: _number(stated, word, f"{name}: {word}") or 0.0 for word in stated}
    density = _number(table, "density_g_per_ml", f"{name}: density_g_per_ml")
    return Product(name, form, basis, analysis, density, _number(table, "label_max_per_l", f"{name}: label_max_per_l"))


def _dose(table: Mapping[str, Any], ignored: list[str]) -> MixDose:
    name = _text(table, "product", "dose: product")
    ignored += [word for word in table if word not in _DOSE]
    amount = _number(table, "amount", f"{name}: amount")
    if amount is None:
        raise MixFileProblem(f"{name}: amount", say("The dose of {product} has no amount.", product=name))
    return MixDose(name, amount, read_unit(_text(table, "unit", f"{name}: unit")))


def _target(table: Mapping[str, Any]) -> dict[str, float]:
    symbols = {word.lower(): word for word in TARGET_WORDS}
    for word in table:
        if word.lower() not in symbols:
            sentence = say("The target names {word}; name elements: {words}.", word=word, words=", ".join(TARGET_WORDS))
            raise MixFileProblem(f"target: {word}", sentence)
    lower = _lower(table, "target")
    return {symbols[word]: _number(lower, word, f"target: {word}") or 0.0 for word in lower}


def _lower(table: Mapping[str, Any], where: str) -> dict[str, Any]:
    """A table with its words in small letters; MixFileProblem where two are then the same."""
    found: dict[str, Any] = {}
    for word, value in table.items():
        if word.lower() in found:
            raise MixFileProblem(f"{where}: {word}", say("{word} is stated twice.", word=word))
        found[word.lower()] = value
    return found


def _number(table: Mapping[str, Any], key: str, where: str) -> float | None:
    value = table.get(key)
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < float("inf"):
        raise MixFileProblem(where, say("{field} is no number.", field=where))
    return float(value)


def _text(table: Mapping[str, Any], key: str, where: str) -> str:
    value = table.get(key)
    if not isinstance(value, str) or not value.strip():
        raise MixFileProblem(where, say("{field} is missing.", field=where))
    return value.strip()


def _table(table: Mapping[str, Any], key: str) -> dict[str, Any]:
    value = table.get(key, {})
    if not isinstance(value, dict):
        raise MixFileProblem(key, say("{field} is no table.", field=key))
    return value


def _tables(top: Mapping[str, Any], key: str) -> list[dict[str, Any]]:
    value = top.get(key, [])
    if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
        raise MixFileProblem(key, say("Write each {field} under a line [[{field}]].", field=key))
    return value


def _pairs(values: Mapping[str, float | str | None]) -> list[str]:
    return [f"{key} = {_value(value)}" for key, value in values.items() if value is not None]


def _value(value: float | str) -> str:
    if not isinstance(value, str):
        return repr(float(value))
    plain = value.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in plain) + '"'
