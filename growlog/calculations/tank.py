"""Care of a tank by mass balance: topping up, correcting, draining, and what the plants took up.

EC times volume stands for the amount of salts. Common practice, no source: real EC bends by a few per cent over the
range of a feed, so the meter rules and large corrections go in two parts.
"""

from dataclasses import dataclass

from growlog.calculations.allowed import require, require_above
from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.words import mark

_MOST_L = 5000.0
_MOST_EC = 20.0
# Less than a meter of EC or a measuring jug tells apart.
_SAME_L = 1e-6

_TOP_UP_METHOD = mark(
    "EC times volume is kept: what the tank holds, the water and the concentrate together make the wanted EC in the"
    " wanted volume. Concentrate is given as litres of full-strength mix; each dose is that many times its amount per"
    " litre."
)
_DRAIN_METHOD = mark(
    "EC times volume is kept: so much is let out that the rest, filled up with water, has the wanted EC in the wanted"
    " volume."
)
_UPTAKE_METHOD = mark(
    "EC times volume before and of what was added, less what is left and what drained, divided by the litres that the"
    " plants took."
)
_SHARE_METHOD = mark("What drained, in per cent of what was given.")
_DIFFERENCE_METHOD = mark("EC of the drain less EC of the feed. It rises where more salts are given than taken up.")


@dataclass(frozen=True)
class Tank:
    """A tank's volume in L and its EC in mS/cm."""

    volume_l: float
    ec_ms_per_cm: float

    @property
    def salts(self) -> float:
        """L times mS/cm."""
        return self.volume_l * self.ec_ms_per_cm


@dataclass(frozen=True)
class TopUp:
    """What to do, in this order. drain_l: let out first; water_l: then filled in; full_strength_l: then concentrate for
    so many litres of full-strength mix, to be spread over the whole tank (its own volume is part of water_l).
    """

    drain_l: float
    water_l: float
    full_strength_l: float


@dataclass(frozen=True)
class Uptake:
    """water_l: taken up and evaporated; ec_ms_per_cm: strength of that water, by the salts that went with it.

    Below 0 where salts came free, such as from the medium. difference_ms_per_cm: against the tank at the start.
    """

    water_l: float
    ec_ms_per_cm: float
    difference_ms_per_cm: float


def top_up(now: Tank, wanted: Tank, water_ec_ms_per_cm: float, mix_ec_ms_per_cm: float) -> TopUp:
    """From a tank as it is to one as wanted.

    Volumes 0 to 5000 L (wanted above 0), EC 0 to 20 mS/cm; mix_ec_ms_per_cm: what the full-strength mix adds to its
    water, above 0. ValueError outside, and where the wanted EC is below that of the water that fills the tank.
    """
    _check_tank(now, wanted)
    require("water_ec_ms_per_cm", water_ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    require_above("mix_ec_ms_per_cm", mix_ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    drain_l = max(drain_for(now, wanted, water_ec_ms_per_cm), now.volume_l - wanted.volume_l, 0.0)
    water_l = wanted.volume_l - now.volume_l + drain_l
    kept = (now.volume_l - drain_l) * now.ec_ms_per_cm + water_l * water_ec_ms_per_cm
    full_strength_l = max(0.0, (wanted.salts - kept) / mix_ec_ms_per_cm)
    return TopUp(drain_l, water_l, full_strength_l if full_strength_l > _SAME_L else 0.0)


def drain_for(now: Tank, wanted: Tank, water_ec_ms_per_cm: float) -> float:
    """L to let out before filling up with water, so that the EC falls to the wanted one; 0 where none need be.

    ValueError where the water itself has more than the wanted EC and the tank too.
    """
    filled = now.salts + (wanted.volume_l - now.volume_l) * water_ec_ms_per_cm
    if wanted.volume_l < now.volume_l:
        filled = wanted.volume_l * now.ec_ms_per_cm  # so much is let out in any case
    if filled <= wanted.salts * (1 + 1e-9):
        return 0.0
    if water_ec_ms_per_cm > wanted.ec_ms_per_cm:
        lowest = f"{water_ec_ms_per_cm:g} mS/cm of the water and above"
        raise ValueError(f"wanted ec_ms_per_cm {wanted.ec_ms_per_cm:g} is outside {lowest}")
    excess = now.salts + (wanted.volume_l - now.volume_l) * water_ec_ms_per_cm - wanted.salts
    return excess / (now.ec_ms_per_cm - water_ec_ms_per_cm)


def uptake(before: Tank, after: Tank, added: Tank, drained: Tank | None = None) -> Uptake | None:
    """What the plants took up between two readings of a tank. None where no water was used.

    added: all that came in between, water and mix together, with its mean EC. drained: what left to waste; None where
    the drain comes back. Volumes 0 to 5000 L, EC 0 to 20 mS/cm; ValueError outside. Evaporation counts as taken up.
    """
    gone = drained or Tank(0.0, 0.0)
    for tank in (before, after, added, gone):
        require("volume_l", tank.volume_l, 0, _MOST_L, "L")
        require("ec_ms_per_cm", tank.ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    water_l = before.volume_l + added.volume_l - after.volume_l - gone.volume_l
    if water_l <= _SAME_L:
        return None
    ec = (before.salts + added.salts - after.salts - gone.salts) / water_l
    return Uptake(water_l, ec, ec - before.ec_ms_per_cm)


def uptake_to_waste(
    feed_l: float, feed_ec_ms_per_cm: float, drain_l: float, drain_ec_ms_per_cm: float
) -> Uptake | None:
    """The same where each feed drains to waste: what was given less its drain. None where all of it drained."""
    given = Tank(feed_l, feed_ec_ms_per_cm)
    return uptake(given, Tank(0.0, 0.0), Tank(0.0, 0.0), Tank(drain_l, drain_ec_ms_per_cm))


def drain_share_percent(feed_l: float, drain_l: float) -> float:
    """Drain in per cent of the feed. feed_l: above 0 to 5000; drain_l: 0 to 5000; ValueError outside."""
    require_above("feed_l", feed_l, 0, _MOST_L, "L")
    require("drain_l", drain_l, 0, _MOST_L, "L")
    return 100 * drain_l / feed_l


def drain_minus_feed(feed_ec_ms_per_cm: float, drain_ec_ms_per_cm: float) -> float:
    """EC of the drain less EC of the feed, mS/cm; each 0 to 20, ValueError outside."""
    require("feed_ec_ms_per_cm", feed_ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    require("drain_ec_ms_per_cm", drain_ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    return drain_ec_ms_per_cm - feed_ec_ms_per_cm


def explain_top_up(now: Tank, wanted: Tank, water_ec_ms_per_cm: float, mix_ec_ms_per_cm: float) -> tuple[Figure, ...]:
    """Drain, water and litres' worth of full-strength mix, each in L, as top_up finds them."""
    found = top_up(now, wanted, water_ec_ms_per_cm, mix_ec_ms_per_cm)
    inputs = (
        Input(mark("in the tank"), now.volume_l, "L"),
        Input(mark("EC now"), now.ec_ms_per_cm, "mS/cm"),
        Input(mark("volume wanted"), wanted.volume_l, "L"),
        Input(mark("EC wanted"), wanted.ec_ms_per_cm, "mS/cm"),
        Input(mark("EC of the water"), water_ec_ms_per_cm, "mS/cm"),
        Input(mark("EC that the full-strength mix adds"), mix_ec_ms_per_cm, "mS/cm"),
    )
    rows = (
        ("drain", found.drain_l, _DRAIN_METHOD),
        ("water", found.water_l, _TOP_UP_METHOD),
        ("full-strength-mix", found.full_strength_l, _TOP_UP_METHOD),
    )
    return tuple(Figure(key, l_, "L", inputs, method, COMMON_PRACTICE, Sure.ESTIMATE) for key, l_, method in rows)


def explain_uptake(before: Tank, after: Tank, added: Tank, drained: Tank | None = None) -> Figure:
    """The strength that the plants took up, in mS/cm of the water they used; no value where they used none."""
    found = uptake(before, after, added, drained)
    stated = [("before", before), ("after", after), ("added", added), *([("drained", drained)] if drained else [])]
    inputs = tuple(
        i for name, t in stated for i in (Input(name, t.volume_l, "L"), Input(name, t.ec_ms_per_cm, "mS/cm"))
    )
    value = None if found is None else found.ec_ms_per_cm
    return Figure("uptake", value, "mS/cm", inputs, _UPTAKE_METHOD, COMMON_PRACTICE, Sure.ESTIMATE)


def explain_drain_share(feed_l: float, drain_l: float) -> Figure:
    """The drain share in per cent."""
    inputs = (Input(mark("feed"), feed_l, "L"), Input(mark("drain"), drain_l, "L"))
    value = drain_share_percent(feed_l, drain_l)
    return Figure("drain-share", value, "%", inputs, _SHARE_METHOD, COMMON_PRACTICE, Sure.COMMON_PRACTICE)


def explain_drain_difference(feed_ec_ms_per_cm: float, drain_ec_ms_per_cm: float) -> Figure:
    """Drain EC less feed EC in mS/cm."""
    inputs = (Input(mark("feed"), feed_ec_ms_per_cm, "mS/cm"), Input(mark("drain"), drain_ec_ms_per_cm, "mS/cm"))
    value = drain_minus_feed(feed_ec_ms_per_cm, drain_ec_ms_per_cm)
    return Figure("drain-difference", value, "mS/cm", inputs, _DIFFERENCE_METHOD, COMMON_PRACTICE, Sure.COMMON_PRACTICE)


def _check_tank(now: Tank, wanted: Tank) -> None:
    require("volume_l", now.volume_l, 0, _MOST_L, "L")
    require("ec_ms_per_cm", now.ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
    require_above("wanted volume_l", wanted.volume_l, 0, _MOST_L, "L")
    require("wanted ec_ms_per_cm", wanted.ec_ms_per_cm, 0, _MOST_EC, "mS/cm")
