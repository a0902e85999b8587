"""Canopy light from what a light meter for people shows, by the factor of the kind of lamp."""

from dataclasses import dataclass

from growlog.calculations.allowed import require, require_above
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.words import mark, say

LUX_PER_FOOT_CANDLE = 10.76391041671  # one lumen on a square foot, exactly 1 / 0.3048²
_ONE_READ = 0.10  # common practice, no source: factors of one kind of lamp differ by about a tenth

_THIMIJAN = (
    "Thimijan, R. and Heins, R. (1983) Photometric, radiometric, and quantum light units of measure, HortScience 18"
)
_METER = "an instrument maker's conversion tables"
_DEITZER = "Deitzer, G. (1994) Spectral comparisons of sunlight and different lamps"
_RUNKLE = "Runkle, E. (2006) Light it up, Michigan State University"


@dataclass(frozen=True)
class LampFactor:
    """Factors of a kind of lamp, lux and foot-candles per µmol/m²/s.

    published: all that were read, in lux per µmol/m²/s. foot_candles: None where none was read; the one of lux is
    then turned over. from_memory: the factor was not read in its source.
    """

    key: str
    name: str
    lux: float
    foot_candles: float | None
    published: tuple[float, ...]
    source: str
    from_memory: bool = False

    @property
    def low(self) -> float:
        """The lowest factor in lux that is likely."""
        return min(self.published) if len(set(self.published)) > 1 else self.lux * (1 - _ONE_READ)

    @property
    def high(self) -> float:
        """The highest factor in lux that is likely."""
        return max(self.published) if len(set(self.published)) > 1 else self.lux * (1 + _ONE_READ)


def _lux(*foot_candles: float) -> tuple[float, ...]:
    return tuple(factor * LUX_PER_FOOT_CANDLE for factor in foot_candles)


LAMP_FACTORS: tuple[LampFactor, ...] = (
    LampFactor("sunlight", mark("sunlight"), 54, 5.13, (54, 55.18, *_lux(5.01, 5.13)), f"{_THIMIJAN}; {_DEITZER}"),
    LampFactor("blue-sky", mark("blue sky only"), 52, None, (52,), _THIMIJAN),
    LampFactor("hps", mark("high-pressure sodium"), 82, 7.6, (82, *_lux(7.6, 7.752)), f"{_THIMIJAN}; {_RUNKLE}"),
    LampFactor("lps", mark("low-pressure sodium"), 9.85 * LUX_PER_FOOT_CANDLE, 9.85, _lux(9.85), _METER),
    LampFactor("metal-halide", mark("metal halide"), 71, None, (71,), _THIMIJAN),
    LampFactor("ceramic-metal-halide", mark("ceramic metal halide, 4200 K"), 65, None, (65,), _METER),
    LampFactor("incandescent", mark("incandescent"), 50, None, (50, 49), f"{_THIMIJAN}; {_DEITZER}"),
    LampFactor("warm-white", mark("warm white fluorescent"), 76, None, (76,), f"{_THIMIJAN} (from memory)", True),
    LampFactor("cool-white", mark("cool white fluorescent"), 74, 6.87, (74, *_lux(6.87, 7.299)), _METER),
)
WHITE_LED = "white-led"

_BY_KEY = {factor.key: factor for factor in LAMP_FACTORS}
_OTHER_NAMES = {
    "sun": "sunlight", "daylight": "sunlight", "sun-and-sky": "sunlight",
    "high-pressure-sodium": "hps", "sodium": "hps", "low-pressure-sodium": "lps",
    "mh": "metal-halide", "cmh": "ceramic-metal-halide", "cool-white-fluorescent": "cool-white",
    "warm-white-fluorescent": "warm-white", "fluorescent": "cool-white",
    "led": WHITE_LED, "leds": WHITE_LED, "white-leds": WHITE_LED,
}  # fmt: skip


def lamp_key(name: str) -> str:
    """The key of a kind of lamp by its usual names; ValueError with the kinds that are known."""
    key = "-".join(name.casefold().replace("_", " ").replace("-", " ").split())
    key = _OTHER_NAMES.get(key, key)
    if key != WHITE_LED and key not in _BY_KEY:
        known = ", ".join((*_BY_KEY, WHITE_LED))
        raise ValueError(say("There is no kind of lamp {name}, only: {names}.", name=name, names=known))
    return key


def lamp_factor(name: str) -> LampFactor | None:
    """The published factors of a kind of lamp; None for white LEDs, whose spectrum decides. ValueError if unknown."""
    return _BY_KEY.get(lamp_key(name))


def own_factor(lamp_kind: str) -> tuple[str, float | None]:
    """A kind of lamp as a reading keeps it, and the grower's own factor in lux per µmol/m²/s where one is behind it.

    "white-led:68" is white LEDs whose own factor is 68. ValueError where what is behind the colon is no number from 10
    to 200.
    """
    kind, colon, text = lamp_kind.partition(":")
    if not colon:
        return kind, None
    factor = float(text)
    require("lux_per_umol", factor, 10, 200, "lux per µmol/m²/s")
    return kind, factor


def with_own_factor(lamp_kind: str, lux_per_umol: float | None) -> str:
    """The kind of lamp with the grower's own factor behind it, as a reading keeps both."""
    return lamp_kind if lux_per_umol is None else f"{lamp_kind}:{lux_per_umol:g}"


def ppfd_from_lux(lux: float, lux_per_umol: float) -> float:
    """PPFD in µmol/m²/s from lux, 0 to 200000, and lux per µmol/m²/s, 10 to 200; ValueError outside.

    Source of the method: Thimijan, R. and Heins, R. (1983) Photometric, radiometric, and quantum light units of
    measure: a review of procedures for interconversion, HortScience 18(6).
    """
    require("lux", lux, 0, 200_000, "lux")
    require("lux_per_umol", lux_per_umol, 10, 200, "lux per µmol/m²/s")
    return lux / lux_per_umol


def lux_from_ppfd(ppfd_umol: float, lux_per_umol: float) -> float:
    """Lux from PPFD, 0 to 3000 µmol/m²/s, and lux per µmol/m²/s, 10 to 200; ValueError outside. Same source."""
    require("ppfd_umol", ppfd_umol, 0, 3000, "µmol/m²/s")
    require("lux_per_umol", lux_per_umol, 10, 200, "lux per µmol/m²/s")
    return ppfd_umol * lux_per_umol


def ppfd_from_foot_candles(foot_candles: float, foot_candles_per_umol: float) -> float:
    """PPFD in µmol/m²/s from foot-candles, 0 to 20000, and their factor, above 0 to 20; ValueError outside."""
    require("foot_candles", foot_candles, 0, 20_000, "foot-candles")
    require_above("foot_candles_per_umol", foot_candles_per_umol, 0, 20, "foot-candles per µmol/m²/s")
    return foot_candles / foot_candles_per_umol


def foot_candles_from_ppfd(ppfd_umol: float, foot_candles_per_umol: float) -> float:
    """Foot-candles from PPFD, 0 to 3000 µmol/m²/s, and their factor, above 0 to 20; ValueError outside."""
    require("ppfd_umol", ppfd_umol, 0, 3000, "µmol/m²/s")
    require_above("foot_candles_per_umol", foot_candles_per_umol, 0, 20, "foot-candles per µmol/m²/s")
    return ppfd_umol * foot_candles_per_umol


def explain_ppfd_from_lux(lux: float, lamp: str, own_factor: float | None = None) -> Figure:
    """PPFD from lux with its range; own_factor (lux per µmol/m²/s) goes before the published one.

    ValueError for an unknown lamp, numbers out of range, and white LEDs without a factor of the grower's own.
    """
    given = (Input("lux", lux, "lux"), Input("lamp", lamp_key(lamp)))
    if own_factor is not None:
        ppfd = ppfd_from_lux(lux, own_factor)
        return _by_own_factor("ppfd-from-lux", ppfd, (*given, Input("factor", own_factor, "lux per µmol/m²/s")))
    factor = _published(lamp, "lux")
    ppfd = ppfd_from_lux(lux, factor.lux)
    used = Input("factor", factor.lux, "lux per µmol/m²/s")
    return _by_lamp("ppfd-from-lux", ppfd, lux, factor, (*given, used))


def explain_ppfd_from_foot_candles(foot_candles: float, lamp: str, own_factor: float | None = None) -> Figure:
    """PPFD from foot-candles with its range; own_factor is in foot-candles per µmol/m²/s. Errors as for lux."""
    given = (Input("foot_candles", foot_candles, "foot-candles"), Input("lamp", lamp_key(lamp)))
    unit = "foot-candles per µmol/m²/s"
    if own_factor is not None:
        ppfd = ppfd_from_foot_candles(foot_candles, own_factor)
        return _by_own_factor("ppfd-from-foot-candles", ppfd, (*given, Input("factor", own_factor, unit)))
    factor = _published(lamp, "foot-candles")
    used = factor.foot_candles or factor.lux / LUX_PER_FOOT_CANDLE
    ppfd = ppfd_from_foot_candles(foot_candles, used)
    lux = foot_candles * LUX_PER_FOOT_CANDLE
    return _by_lamp("ppfd-from-foot-candles", ppfd, lux, factor, (*given, Input("factor", used, unit)))


def _published(lamp: str, unit: str) -> LampFactor:
    factor = lamp_factor(lamp)
    if factor is None:
        raise ValueError(
            say(
                "The light of white LEDs depends on their spectrum, and no published factor fits them all. Add the "
                "factor of yours, {unit} per µmol/m²/s, as factor=NUMBER.",
                unit=unit,
            )
        )
    return factor


def _by_own_factor(key: str, ppfd: float, inputs: tuple[Input, ...]) -> Figure:
    method = say("The reading over your own factor for this lamp.")
    return Figure(key, ppfd, "µmol/m²/s", inputs, method, say("the factor was given by you"), Sure.ESTIMATE)


def _by_lamp(key: str, ppfd: float, lux: float, factor: LampFactor, inputs: tuple[Input, ...]) -> Figure:
    method = say(
        "The reading over the factor of the kind of lamp, {lamp}. The range is that of the published factors, or a "
        "tenth either side where only one was read.",
        lamp=say(factor.name),
    )
    low, high = min(ppfd, lux / factor.high), max(ppfd, lux / factor.low)
    return Figure(key, ppfd, "µmol/m²/s", inputs, method, factor.source, Sure.ESTIMATE, low, high)
