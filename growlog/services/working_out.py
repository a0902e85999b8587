"""One figure worked out from values that a person typed, with its explanation."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from growlog.calculations.explained_figure import Figure
from growlog.services.typed_values import NotUnderstood, Reader, Unit
from growlog.words import say


@dataclass(frozen=True)
class Parameter:
    """A value that a figure takes. other_names: also understood. default: text read where it is not typed."""

    key: str
    read: Reader
    unit: Unit
    other_names: tuple[str, ...] = ()
    required: bool = True
    default: str = ""


@dataclass(frozen=True)
class Workable:
    """A figure that can be worked out. work: takes the read values by key; those not typed are missing."""

    key: str
    name: str
    parameters: tuple[Parameter, ...]
    work: Callable[[Mapping[str, Any]], Figure]
    other_names: tuple[str, ...] = ()

    def usage(self) -> str:
        """Its parameters with their units, those that may be left out in brackets."""
        return " ".join(_usage(p) for p in self.parameters)


# What calculations call a quantity, where the person typed another name.
_TYPED_NAMES = {
    "photoperiod_h": "hours", "hours_a_day": "hours", "relative_humidity_percent": "humidity",
    "air_temperature_c": "temperature", "power_w": "watts", "lamp_w": "watts", "wall_w": "watts", "highest": "tmax",
    "lowest": "tmin", "ppfd_umol": "ppfd", "dli_mol": "dli", "lux_per_umol": "factor",
    "foot_candles_per_umol": "factor", "ballast_loss_percent": "loss",
    "dimming_percent": "dimming", "efficacy_umol_per_j": "efficacy", "on_minutes": "hours", "rate_an_hour": "rate",
}  # fmt: skip


def work_out(figure: str, pairs: Sequence[str], workables: Sequence[Workable], today: date) -> Figure:
    """The figure of that name from pairs of key=value. today: the day taken where a figure needs one and none is said.

    NotUnderstood, with one plain sentence, where the name, a key or a value cannot be used or one is missing.
    """
    wanted = find(figure, workables)
    typed = _pairs(pairs)
    values: dict[str, Any] = {"today": today}
    for parameter in wanted.parameters:
        if (found := _take(parameter, typed)) is not None:
            values[parameter.key] = found
    if typed:
        raise NotUnderstood(
            say("{figure} takes no {key}. It takes: {usage}.", figure=wanted.key, key=next(iter(typed)),
                usage=wanted.usage())
        )  # fmt: skip
    missing = [_usage(p) for p in wanted.parameters if p.required and p.key not in values]
    if missing:
        raise NotUnderstood(say("{figure} also needs {missing}.", figure=wanted.key, missing=" ".join(missing)))
    try:
        return wanted.work(values)
    except ValueError as error:
        raise NotUnderstood(_sentence(str(error))) from error


def find(figure: str, workables: Sequence[Workable]) -> Workable:
    """The workable of that name; NotUnderstood, naming them all, for another."""
    name = _plain(figure).replace("_", "-")
    for workable in workables:
        if name in (workable.key, *workable.other_names):
            return workable
    known = ", ".join(w.key for w in workables)
    raise NotUnderstood(say("There is no figure {name}, only: {names}.", name=figure, names=known))


def _pairs(pairs: Sequence[str]) -> dict[str, str]:
    typed: dict[str, str] = {}
    for pair in pairs:
        key, equals, value = pair.partition("=")
        if not (key.strip() and equals and value.strip()):
            raise NotUnderstood(say("{pair} is not understood. Write it as key=value, such as hours=16.", pair=pair))
        if _plain(key) in typed:
            raise NotUnderstood(say("{key} is said twice.", key=key))
        typed[_plain(key)] = value.strip()
    return typed


def _take(parameter: Parameter, typed: dict[str, str]) -> Any:
    """The value of a parameter, taken out of what was typed; None where it was not."""
    names = _names(parameter)
    here = [key for key in typed if key in names]
    if len(here) > 1:
        raise NotUnderstood(say("{key} and {other} say the same thing; leave one out.", key=here[0], other=here[1]))
    if here:
        return parameter.read(here[0], typed.pop(here[0]), names[here[0]])
    return parameter.read(parameter.key, parameter.default, "") if parameter.default else None


def _names(parameter: Parameter) -> dict[str, str]:
    """All names of a parameter, with the unit that a name's ending stands for."""
    endings = parameter.unit.endings
    # A name may be an ending itself: kw=0.8 is kilowatts.
    names = {name: endings.get(name, "") for name in (parameter.key, *parameter.other_names)}
    for stem in list(names):
        for ending, unit in endings.items():
            bare = stem.removesuffix(f"_{parameter.key.rpartition('_')[2]}") if "_" in stem else stem
            names.setdefault(f"{stem}_{ending}", unit)
            names.setdefault(f"{bare}_{ending}", unit)
    return names


def _usage(parameter: Parameter) -> str:
    unit = f" ({parameter.unit.shown})" if parameter.unit.shown else ""
    text = f"{parameter.key}=…{unit}"
    return text if parameter.required else f"[{text}]"


def _sentence(reason: str) -> str:
    if reason.endswith("."):
        return reason
    name, _, rest = reason.partition(" ")
    return f"{_TYPED_NAMES.get(name, name)} {rest}."


def _plain(name: str) -> str:
    return name.strip().casefold().replace("-", "_")
