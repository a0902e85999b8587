"""Entries written out in plain words are read back as they were, whatever stands beside them in the line."""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.records.entry import Cull, CullCause, Detail, Feed, FruitCheck, Pick, Pollination, Reading, Training
from tests.services.quick_line.lines import read

pytestmark = pytest.mark.slow

COUNT = st.integers(1, 60)
WEIGHT = st.integers(5, 900)
Said = tuple[str, Detail]


def number(value: float, comma: bool) -> str:
    written = f"{value:g}"
    return written.replace(".", ",") if comma else written


@st.composite
def picks(draw: Callable) -> Said:  # type: ignore[type-arg]
    weights = tuple(float(w) for w in draw(st.lists(WEIGHT, min_size=3, max_size=7)))
    row = " ".join(number(w, False) for w in weights) + " g"
    count, total = draw(COUNT) + 1, draw(st.integers(900, 9000))
    said: list[Said] = [
        (f"{len(weights)} fruit {row}", Pick(len(weights), None, weights)),
        (f"picked {count} fruit {total} g", Pick(count, total)),
        (f"picked {count}, {total / 1000:g} kg", Pick(count, total)),
        (f"{count} fruit", Pick(count)),
    ]
    words, pick = draw(st.sampled_from(said))
    if draw(st.booleans()):
        culled, cause = draw(COUNT), draw(st.sampled_from(CullCause))
        label = cause.label
        tail = draw(st.sampled_from([f"{culled} {label}", f"culled {culled} {label}", f"{culled} culled {label}"]))
        assert isinstance(pick, Pick)
        return f"{words}, {tail}", Pick(pick.fruit_count, pick.total_weight_g, pick.weights_g, (Cull(culled, cause),))
    return words, pick


@st.composite
def feeds(draw: Callable) -> Said:  # type: ignore[type-arg]
    comma = draw(st.booleans())
    volume, ec, ph = draw(st.integers(1, 90)) / 10, draw(st.integers(1, 49)) / 10, draw(st.integers(46, 74)) / 10
    parts = [f"{number(volume, comma)} L", f"EC {number(ec, comma)}", f"pH {number(ph, comma)}"]
    words = "feed " + draw(st.sampled_from([" ", ", "])).join(draw(st.permutations(parts)))
    if draw(st.booleans()):
        return f"{words}, drain 300 mL EC 2.2", Feed(
            volume_l=volume, ec_ms_per_cm=ec, ph=ph, drain_l=0.3, drain_ec_ms_per_cm=2.2
        )
    return words, Feed(volume_l=volume, ec_ms_per_cm=ec, ph=ph)


@st.composite
def counted(draw: Callable) -> Said:  # type: ignore[type-arg]
    a, b = draw(COUNT), draw(COUNT)
    said: list[Said] = [
        (f"{a} females pollinated, {b} males open", Pollination(a, b)),
        (f"pollinated {a}, males open {b}", Pollination(a, b)),
        (f"{a} trusses vibrated", Pollination(trusses_vibrated=a)),
    ]
    return draw(st.sampled_from(said))  # type: ignore[no-any-return]


@st.composite
def work(draw: Callable) -> Said:  # type: ignore[type-arg]
    a, b = draw(COUNT), draw(COUNT)
    said: list[Said] = [
        (f"{a} old leaves and {b} side shoots removed", Training(a, b)),
        (f"tied {a} stems, {b} tips stopped", Training(shoots_stopped=b, stems_tied=a)),
    ]
    return draw(st.sampled_from(said))  # type: ignore[no-any-return]


@st.composite
def looks(draw: Callable) -> Said:  # type: ignore[type-arg]
    a, b = draw(COUNT), draw(COUNT)
    return draw(  # type: ignore[no-any-return]
        st.sampled_from(
            [
                (f"fruit check {a} set {b} hanging", FruitCheck(fruit_set=a, hanging=b)),
                (f"{a} females open, {b} dropped", FruitCheck(females_open=a, dropped=b)),
            ]
        )
    )


@st.composite
def readings(draw: Callable) -> Said:  # type: ignore[type-arg]
    air, humidity, height = draw(st.integers(60, 390)) / 10, draw(st.integers(6, 99)), draw(st.integers(1, 250))
    return draw(  # type: ignore[no-any-return]
        st.sampled_from(
            [
                (f"air {air:g} °C {humidity} % RH", Reading(air, humidity)),
                (f"humidity {humidity}, height {height} cm", Reading(None, humidity, None, height)),
                (f"{air:g} °C air, {height} cm tall", Reading(air, None, None, height)),
            ]
        )
    )


EVERY_KIND = st.permutations([picks(), feeds(), counted(), work(), looks(), readings()])


@settings(max_examples=150, deadline=None)
@given(EVERY_KIND.flatmap(lambda kinds: st.tuples(*kinds)), st.sampled_from([", ", "; ", " and ", ". ", " "]))
def test_a_line_of_every_kind_is_read_back_as_it_was_meant(said: tuple[Said, ...], between: str):
    line = between.join(words for words, _ in said)
    reading = read(line)
    assert reading.unread == ()
    assert [draft.detail for draft in reading.drafts] == [detail for _, detail in said]
    assert reading.can_be_written
