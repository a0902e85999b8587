"""The yield chart as values, to be saved, printed or copied."""

from growlog.desktop.board.curve_steps import Steps, drawn_curve
from growlog.desktop.board.outlook_layer import AheadBand, drawn_outlook
from growlog.desktop.board.weight_scale import WeightUnit, weight_unit
from growlog.desktop.charts import Band, ChartData, Line, Upright
from growlog.services.board import Board, Curve
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say


def chart_of_yield(board: Board, underlay: Curve | None, outlook: Outlook | None, by_count: bool) -> ChartData:
    """The crop's curve, the one under it, and what is to come where that is shown; weights in the unit shown."""
    ahead = None if outlook is None else drawn_outlook(outlook, board, by_count)
    curves = [c for c in (board.curve, underlay) if c is not None and c.points]
    drawn = [(c.name, drawn_curve(c.points, c.last_age, by_count)) for c in curves]
    highest = max([0.0 if ahead is None else ahead.highest, *(float(d.whole.values[-1]) for _, d in drawn)])
    unit = WeightUnit(say("fruit"), 1.0) if by_count else weight_unit(highest)
    styles = (("pick", ""), ("mute", "dash"))
    lines = [_line(name, d.whole, unit, token, dash) for (name, d), (token, dash) in zip(drawn, styles, strict=False)]
    bands = []
    if ahead is not None and ahead.band is not None:
        lines.append(_line(say("most likely"), Steps(ahead.band.ages, ahead.band.middle), unit, "pick", "dash"))
        bands.append(_band(say("in four cases out of five"), ahead.band, unit))
    if ahead is not None and ahead.fit is not None:
        lines.append(_line(say("fitted curve"), ahead.fit, unit, "pick", "dot"))
    if ahead is not None and ahead.coming is not None:
        bands.append(_band(say("coming picks"), ahead.coming, unit, hatched=True))
    return ChartData(
        say("Yield of {crop}", crop=board.crop.name), say("plant age, days"),
        say("marketable yield so far, {unit}", unit=unit.name), lines, bands, _uprights(board),
        () if outlook is None else (outlook.sentence,), whole_y=by_count,
    )  # fmt: skip


def _line(name: str, steps: Steps, unit: WeightUnit, token: str, dash: str) -> Line:
    return Line(name, steps.ages.tolist(), (steps.values / unit.grams).tolist(), token, dash)


def _band(name: str, band: AheadBand, unit: WeightUnit, hatched: bool = False) -> Band:
    low, high = (band.low / unit.grams).tolist(), (band.high / unit.grams).tolist()
    return Band(name, band.ages.tolist(), low, high, "pick", hatched)


def _uprights(board: Board) -> list[Upright]:
    found = []
    if board.first_pick_age is not None:
        found.append(Upright(board.first_pick_age, say("first pick"), "pick"))
    if board.packet_maturity_age is not None:
        found.append(Upright(board.packet_maturity_age, say("packet maturity")))
    return found
