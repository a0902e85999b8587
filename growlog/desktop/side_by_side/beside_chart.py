"""The curves of several crops in one chart."""

from collections.abc import Sequence

from growlog.desktop.board.weight_scale import weight_unit
from growlog.desktop.charts import ChartData, Line
from growlog.services.side_by_side.beside import CropBeside, not_a_trial
from growlog.services.side_by_side.series import (
    PER_WORDS,
    Aligned,
    Counted,
    CropSeries,
    Per,
    crop_series,
    unit_of,
)
from growlog.words import say

# Colour and dash together, so that neither tells alone.
STYLES = (("pick", ""), ("feed", "dash"), ("pollination", "dash-dot"), ("stage", "dot"), ("light", ""),
          ("reading", "dash"), ("training", "dash-dot"), ("problem", "dot"))  # fmt: skip
MOST_CROPS = len(STYLES)


def beside_chart(crops: Sequence[CropBeside], counted: Counted, per: Per, aligned: Aligned) -> ChartData:
    """The chart; crops without a curve are named below it with the reason."""
    series = [crop_series(c, counted, per, aligned) for c in crops]
    highest = max((max(s.values) for s in series if s.values), default=0.0)
    currency = next((c.currency for c in crops if c.currency), "")
    divisor, unit = 1.0, unit_of(counted, per, currency)
    if counted is Counted.WEIGHT:
        shown = weight_unit(highest)
        divisor, unit = shown.grams, shown.name + unit.removeprefix("g")
    styled = zip(series, STYLES, strict=False)
    return ChartData(
        say("Crops side by side"),
        say("days from first pick") if aligned is Aligned.FIRST_PICK else say("plant age, days"),
        _y_title(counted, per, unit),
        [_line(s, token, dash, divisor) for s, (token, dash) in styled if s.values],
        notes=[*(f"{s.name}: {s.reason}" for s in series if s.reason), not_a_trial()],
        whole_y=counted is Counted.FRUIT and per is Per.CROP,
    )


def _line(series: CropSeries, token: str, dash: str, divisor: float) -> Line:
    xs, ys = [*series.days], [v / divisor for v in series.values]
    if series.last_day > xs[-1]:
        xs.append(series.last_day)
        ys.append(ys[-1])
    return Line(series.name, xs, ys, token, dash, steps=True)


def _y_title(counted: Counted, per: Per, unit: str) -> str:
    if counted is Counted.COST:
        return say("cost so far of a kg, {unit}", unit=unit)
    what = say("marketable yield so far") if counted is Counted.WEIGHT else say("marketable fruit so far")
    return f"{what} {say(PER_WORDS[per])}, {unit}"
