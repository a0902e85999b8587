"""The curve as SVG, read by an XML parser and drawn into the typesetter's pages elsewhere."""

from xml.etree import ElementTree

import pytest

from growlog.sharing.svg_chart import NARROW, WIDE, ChartCurve, YieldChart, axis_steps, day_steps, yield_chart_svg

SVG = "{http://www.w3.org/2000/svg}"


def chart(name: str = "Skylight Round", packet: int | None = 58) -> YieldChart:
    own = ChartCurve("Boxroom Gold", ((44, 0.2), (58, 1.1), (110, 2.7)), 112)
    other = ChartCurve(name, ((46, 0.4), (95, 3.4)), 96)
    return YieldChart(own, (other,), packet, lambda v: f"{v:g} kg", "Yield by age", "day", "packet maturity")


def words(svg: str) -> list[str]:
    return [t.text or "" for t in ElementTree.fromstring(svg).iter(f"{SVG}text")]


@pytest.mark.parametrize(("highest", "steps"), [(3.4, [0, 1, 2, 3]), (0.9, [0, 0.5]), (46, [0, 20, 40]), (0, [0])])
def test_the_axis_has_a_few_round_values(highest: float, steps: list[float]) -> None:
    assert axis_steps(highest) == pytest.approx(steps)


@pytest.mark.parametrize(("last", "most", "steps"), [(112, 9, [*range(0, 113, 14)]), (6, 9, [0]), (0, 9, [0])])
def test_days_stand_at_whole_weeks(last: int, most: int, steps: list[int]) -> None:
    assert day_steps(last, most) == steps


def test_it_says_what_it_shows_and_names_what_it_lays_beside() -> None:
    svg = yield_chart_svg(chart())
    assert ElementTree.fromstring(svg).get("aria-label") == "Yield by age"
    assert {"Skylight Round", "packet maturity", "day", "1 kg", "112"} <= set(words(svg))


def test_words_in_it_become_no_markup() -> None:
    name = "<script>\"x\" & 'y'"
    assert name in words(yield_chart_svg(chart(name)))


def test_the_curve_steps_up_at_each_pick_and_never_down() -> None:
    paths = [p.get("d") or "" for p in ElementTree.fromstring(yield_chart_svg(chart())).iter(f"{SVG}path")]
    own = paths[-1].replace("M", "L").split("L")[1:]
    heights = [float(point.split()[1]) for point in own]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == 4  # nothing yet, and three picks


def test_nothing_leaves_the_picture() -> None:
    for size in (WIDE, NARROW):
        root = ElementTree.fromstring(yield_chart_svg(chart("A very long name of a crop that goes on and on"), size))
        for line in root.iter(f"{SVG}text"):
            assert 0 <= float(line.get("x", "-1")) <= size.width
            assert 0 <= float(line.get("y", "-1")) <= size.height


def test_without_a_pick_and_a_packet_there_are_axes_alone() -> None:
    empty = YieldChart(ChartCurve("x", (), 10), (), None, str, "Yield", "day", "packet")
    assert not list(ElementTree.fromstring(yield_chart_svg(empty)).iter(f"{SVG}path"))
