"""The climate of days made of a logger's samples: means weighted by time, gaps not bridged beyond a stated length."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Seconds = NDArray[np.int64]

BRIDGED_S = 3600  # common practice, no source: over a longer time without a sample nothing is known of the air
WATCHED_HUMIDITY_PERCENT = 80.0  # common practice, no source: moulds of leaves gain from moist nights above it


@dataclass(frozen=True, eq=False)
class AirSamples:
    """Samples in the order of time. at_s: seconds of UTC since 1970. NaN where a value was not recorded."""

    at_s: Seconds
    temperature_c: Floats
    humidity_percent: Floats


@dataclass(frozen=True)
class AirDay:
    """A day's climate; None: the samples do not tell. covered_minutes: between samples that are near enough."""

    sample_count: int
    temperature_min_c: float | None
    temperature_mean_c: float | None
    temperature_max_c: float | None
    humidity_min_percent: float | None
    humidity_mean_percent: float | None
    humidity_max_percent: float | None
    night_humidity_mean_percent: float | None
    vpd_mean_kpa: float | None
    vpd_max_kpa: float | None
    dew_point_max_c: float | None
    hours_above_humidity: float | None
    longest_gap_minutes: float
    covered_minutes: float


@dataclass(frozen=True, eq=False)
class DayBounds:
    """Days as seconds of UTC, each from start until before end, one after the other (a day of a clock change has 23 or
    25 hours); and the times in which the lamps were off, None where that is not known."""

    edges_s: Seconds  # one more than there are days
    dark_s: tuple[tuple[int, int], ...] | None = None


def saturation_pressures(temperature_c: Floats) -> Floats:
    """Saturation vapour pressures in kPa, as climate.saturation_vapour_pressure, of many temperatures.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equation 11.
    """
    return np.asarray(0.6108 * np.exp(17.27 * temperature_c / (temperature_c + 237.3)))


def deficits(temperature_c: Floats, humidity_percent: Floats) -> Floats:
    """VPD of the air in kPa of many samples. Source: FAO Irrigation and Drainage Paper 56 (1998), equations 10, 11."""
    return saturation_pressures(temperature_c) * (1 - humidity_percent / 100)


def dew_points(temperature_c: Floats, humidity_percent: Floats) -> Floats:
    """Dew points in °C of many samples, NaN for air without water. Source: equation 11 turned over."""
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = np.log(saturation_pressures(temperature_c) * humidity_percent / 100 / 0.6108)
        points = 237.3 * ratio / (17.27 - ratio)
    return np.asarray(np.where(np.isfinite(points), points, np.nan))


def first_counts(earlier_s: Seconds, later_s: Seconds, bridged_s: int = BRIDGED_S) -> NDArray[np.bool_]:
    """Which samples of a file read in later fill what the earlier one leaves open: True for those kept.

    One is left out where the earlier file has samples on both sides of it that are near enough to be bridged, or one
    at the same minute.
    """
    if not len(earlier_s):
        return np.ones(len(later_s), np.bool_)
    after = np.searchsorted(earlier_s, later_s, "left")
    left = earlier_s[np.clip(after - 1, 0, len(earlier_s) - 1)]
    right = earlier_s[np.clip(after, 0, len(earlier_s) - 1)]
    inside = (after > 0) & (after < len(earlier_s)) & (right - left <= bridged_s)
    same_minute = (np.abs(later_s - left) < 60) | (np.abs(right - later_s) < 60)
    return np.asarray(~(inside | same_minute))


def air_days(
    samples: AirSamples,
    bounds: DayBounds,
    *,
    humid_above_percent: float = WATCHED_HUMIDITY_PERCENT,
    bridged_s: int = BRIDGED_S,
) -> list[AirDay]:
    """The climate of each day; a day without a sample has a count of 0.

    Means are taken over the time between samples on straight lines; a time without a sample longer than bridged_s
    counts for nothing, and a day with no such line has the plain mean of its samples. Lowest and highest are those of
    samples. longest_gap_minutes counts from the day's start and to its end where no sample lies there.
    """
    edges = bounds.edges_s
    days = len(edges) - 1
    columns = _columns(samples, bounds, humid_above_percent, bridged_s)
    day_of = np.searchsorted(edges, samples.at_s, "right") - 1
    counts = np.bincount(day_of[(day_of >= 0) & (day_of < days)], minlength=days)
    gaps, covered = _gaps(samples.at_s, edges), _covered(samples.at_s, edges, bridged_s)
    return [
        AirDay(
            sample_count=int(counts[d]),
            longest_gap_minutes=float(gaps[d]) / 60,
            covered_minutes=float(covered[d]) / 60,
            **{name: _known(values[d]) for name, values in columns.items()},
        )
        for d in range(days)
    ]


def _columns(samples: AirSamples, bounds: DayBounds, humid_above_percent: float, bridged_s: int) -> dict[str, Floats]:
    """The figures of each day under the names that AirDay has for them; NaN where a day tells none."""
    edges = bounds.edges_s
    days = len(edges) - 1
    t, rh = samples.temperature_c, samples.humidity_percent
    vpd, dew = deficits(t, rh), dew_points(t, rh)
    day_of = np.searchsorted(edges, samples.at_s, "right") - 1
    inside = (day_of >= 0) & (day_of < days)
    at = (day_of[inside], days)
    lines = {
        name: _Lines.of(samples.at_s, values, edges, bridged_s) for name, values in (("t", t), ("rh", rh), ("vpd", vpd))
    }
    return {
        "temperature_min_c": _extreme(np.fmin, t[inside], *at),
        "temperature_mean_c": lines["t"].mean(_plain_mean(t[inside], *at)),
        "temperature_max_c": _extreme(np.fmax, t[inside], *at),
        "humidity_min_percent": _extreme(np.fmin, rh[inside], *at),
        "humidity_mean_percent": lines["rh"].mean(_plain_mean(rh[inside], *at)),
        "humidity_max_percent": _extreme(np.fmax, rh[inside], *at),
        "night_humidity_mean_percent": _night(samples, bounds, bridged_s),
        "vpd_mean_kpa": lines["vpd"].mean(_plain_mean(vpd[inside], *at)),
        "vpd_max_kpa": _extreme(np.fmax, vpd[inside], *at),
        "dew_point_max_c": _extreme(np.fmax, dew[inside], *at),
        "hours_above_humidity": lines["rh"].hours_above(humid_above_percent),
    }


@dataclass(frozen=True, eq=False)
class _Lines:
    """Straight lines between neighbouring samples of one quantity, cut at the edges of days."""

    day: NDArray[np.int64]
    seconds: Floats
    start: Floats
    end: Floats
    days: int

    @staticmethod
    def of(at_s: Seconds, values: Floats, edges: Seconds, bridged_s: int) -> "_Lines":
        known = np.isfinite(values)
        at, value = at_s[known], values[known]
        cuts = edges[(edges > at[0]) & (edges < at[-1])] if len(at) else edges[:0]
        if len(cuts):  # a point on the line at each edge; whether the line holds is seen from its neighbours
            cuts = cuts[~np.isin(cuts, at)]
            after = np.searchsorted(at, cuts)
            cuts, after = cuts[at[after] - at[after - 1] <= bridged_s], after[at[after] - at[after - 1] <= bridged_s]
            between = np.interp(cuts, at, value)
            at, value = np.insert(at, after, cuts), np.insert(value, after, between)
        seconds = np.diff(at).astype(np.float64)
        day = np.searchsorted(edges, at[:-1], "right") - 1
        good = (seconds <= bridged_s) & (day >= 0) & (day < len(edges) - 1)
        return _Lines(day[good], seconds[good], value[:-1][good], value[1:][good], len(edges) - 1)

    def mean(self, otherwise: Floats) -> Floats:
        """The mean over time by day, another value where a day has no line."""
        weights = np.bincount(self.day, self.seconds, minlength=self.days)
        sums = np.bincount(self.day, self.seconds * (self.start + self.end) / 2, minlength=self.days)
        return np.where(weights > 0, sums / np.where(weights > 0, weights, 1), otherwise)

    def hours_above(self, threshold: float) -> Floats:
        """Hours above a threshold by day, NaN where a day has no line."""
        low, high = np.minimum(self.start, self.end), np.maximum(self.start, self.end)
        rise = np.where(high > low, high - low, 1)
        part = np.where(high > low, np.clip((high - threshold) / rise, 0, 1), (low > threshold).astype(np.float64))
        weights = np.bincount(self.day, self.seconds, minlength=self.days)
        above = np.bincount(self.day, self.seconds * part, minlength=self.days) / 3600
        return np.where(weights > 0, above, np.nan)


def _night(samples: AirSamples, bounds: DayBounds, bridged_s: int) -> Floats:
    """The mean humidity of each day while the lamps were off: each dark time counts on the day on which it falls."""
    edges = bounds.edges_s
    days = len(edges) - 1
    if bounds.dark_s is None or not bounds.dark_s:
        return np.full(days, np.nan)
    dark_edges = np.unique(np.concatenate([np.array(bounds.dark_s, np.int64).ravel(), edges]))
    lines = _Lines.of(samples.at_s, samples.humidity_percent, dark_edges, bridged_s)
    starts = dark_edges[:-1]
    is_dark = np.zeros(len(starts), np.bool_)
    for start, end in bounds.dark_s:
        is_dark[np.searchsorted(starts, start) : np.searchsorted(starts, end)] = True
    day_of = np.searchsorted(edges, starts, "right") - 1
    seen = is_dark[lines.day] & (day_of[lines.day] >= 0) & (day_of[lines.day] < days)
    by_day = _Lines(day_of[lines.day][seen], lines.seconds[seen], lines.start[seen], lines.end[seen], days)
    return by_day.mean(np.full(days, np.nan))


def _extreme(of: np.ufunc, values: Floats, day: NDArray[np.int64], days: int) -> Floats:
    found = np.full(days, np.nan)
    of.at(found, day, values)
    return found


def _plain_mean(values: Floats, day: NDArray[np.int64], days: int) -> Floats:
    known = np.isfinite(values)
    count = np.bincount(day[known], minlength=days)
    total = np.bincount(day[known], values[known], minlength=days)
    return np.where(count > 0, total / np.where(count > 0, count, 1), np.nan)


def _gaps(at_s: Seconds, edges: Seconds) -> Floats:
    """The longest time of each day without a sample, in seconds."""
    marks = np.unique(np.concatenate([at_s, edges]))
    marks = marks[(marks >= edges[0]) & (marks <= edges[-1])]
    found = np.zeros(len(edges) - 1)
    np.fmax.at(found, np.searchsorted(edges, marks[:-1], "right") - 1, np.diff(marks).astype(np.float64))
    return found


def _covered(at_s: Seconds, edges: Seconds, bridged_s: int) -> Floats:
    lines = _Lines.of(at_s, np.zeros(len(at_s)), edges, bridged_s)
    return np.bincount(lines.day, lines.seconds, minlength=len(edges) - 1).astype(np.float64)


def _known(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None
