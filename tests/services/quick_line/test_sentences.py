"""What growers write of an evening, and the entries that it becomes."""

from datetime import time

import pytest

from growlog.records.entry import (
    Cull,
    CullCause,
    Feed,
    FruitCheck,
    Note,
    Pick,
    Pollination,
    PollinationWay,
    Reading,
    StageSeen,
    Training,
)
from tests.services.quick_line.lines import BLOOM, became, detail_of, read


def test_an_evening_in_one_line_becomes_a_pick_a_pollination_and_a_feed():
    line = "12 fruit 86 93 78 101 …g, 5 females pollinated, feed 1.2 L EC 1.9 pH 5.9"
    assert [d.detail for d in read(line).drafts] == [
        Pick(12, None, (86, 93, 78, 101)),
        Pollination(females_pollinated=5),
        Feed(volume_l=1.2, ec_ms_per_cm=1.9, ph=5.9),
    ]
    assert read(line).can_be_written


@pytest.mark.parametrize(
    ("line", "pick"),
    [
        ("picked 3, 250 g", Pick(3, 250)),
        ("picked 3 250 g", Pick(3, 250)),
        ("picked 14, 1.2 kg", Pick(14, 1200)),
        ("12 fruit", Pick(12)),
        ("picked 12", Pick(12)),
        ("12 picked 1.1 kg", Pick(12, 1100)),
        ("a dozen fruit 1.1 kg", Pick(12, 1100)),
        ("1 fruit 86 g", Pick(1, None, (86,))),
        ("picked 86 93 78", Pick(3, None, (86, 93, 78))),
        ("fruit 86 g 93 g 78 g", Pick(3, None, (86, 93, 78))),
        ("picked 86 + 93 + 78 g", Pick(3, None, (86, 93, 78))),
        ("picked 86,93,78 g", Pick(3, None, (86, 93, 78))),
        ("picked 3: 86 93 78", Pick(3, None, (86, 93, 78))),
        ("3 fruit 86,5 93 78,5 g", Pick(3, None, (86.5, 93, 78.5))),
        ("5 fruit 86 93, total 460 g", Pick(5, 460, (86, 93))),
        ("5 fruit 460 g in all", Pick(5, 460)),
        ("12 chillies 40 g", Pick(12, 40)),
    ],
)
def test_counts_single_weights_and_totals_of_a_pick_are_told_apart(line: str, pick: Pick):
    assert detail_of(line) == pick
    assert read(line).questions == ()


@pytest.mark.parametrize(
    ("line", "culls"),
    [
        ("2 culled cracked", (Cull(2, CullCause.CRACKED),)),
        ("culled 2 for blossom-end rot, 150 g", (Cull(2, CullCause.BLOSSOM_END_ROT, 150),)),
        ("2 cracked, 1 oversize", (Cull(2, CullCause.CRACKED), Cull(1, CullCause.OVERSIZE))),
        ("3 culled: 2 split, 1 damaged", (Cull(2, CullCause.CRACKED), Cull(1, CullCause.DAMAGED))),
        ("culls: misshapen 4", (Cull(4, CullCause.MISSHAPEN),)),
    ],
)
def test_culls_have_their_cause_and_weight(line: str, culls: tuple[Cull, ...]):
    assert detail_of(line) == Pick(0, None, (), culls)


def test_culls_stand_with_the_pick_of_the_same_line():
    assert detail_of("12 fruit 1.1 kg, 2 cracked") == Pick(12, 1100, (), (Cull(2, CullCause.CRACKED),))
    assert detail_of("2 cracked, 12 fruit 1.1 kg") == Pick(12, 1100, (), (Cull(2, CullCause.CRACKED),))


def test_a_cull_without_a_cause_asks_for_it():
    assert [p.sentence for p in read("2 culled").refusals] == [
        "Say why fruit was culled: misshapen, blossom-end rot, cracked, oversize or damaged."
    ]


@pytest.mark.parametrize(
    ("line", "feed"),
    [
        ("fed 1,2 L, EC 1,9, pH 5,9", Feed(volume_l=1.2, ec_ms_per_cm=1.9, ph=5.9)),
        ("feed 1.2 EC1.9 pH5.9", Feed(volume_l=1.2, ec_ms_per_cm=1.9, ph=5.9)),
        ("1.2 L of feed, 1900 µS/cm, 5.9 pH", Feed(volume_l=1.2, ec_ms_per_cm=1.9, ph=5.9)),
        ("feed EC: 1.9", Feed(ec_ms_per_cm=1.9)),
        ("feed 1.2 L 1.9 EC", Feed(volume_l=1.2, ec_ms_per_cm=1.9)),
        ("plain water 2 L", Feed(volume_l=2, water_only=True)),
        ("fed 2 L of water", Feed(volume_l=2, water_only=True)),
        ("2 L of water", Feed(volume_l=2, water_only=True)),
        ("watered 2 L pH 6.2", Feed(volume_l=2, ph=6.2, water_only=True)),
        ("basic bloom 2 L", Feed(mix_id=BLOOM.id, volume_l=2)),
        ("feed 2 L with Basic bloom strength 80 %", Feed(mix_id=BLOOM.id, volume_l=2, strength_percent=80)),
        (
            "feed 2.8 L, drain 0.6 L EC 2.24 pH 6.1",
            Feed(volume_l=2.8, drain_l=0.6, drain_ec_ms_per_cm=2.24, drain_ph=6.1),
        ),
        ("feed 2.8 L EC 1.9, runoff 600 mL", Feed(volume_l=2.8, ec_ms_per_cm=1.9, drain_l=0.6)),
    ],
)
def test_feeds_water_and_drain(line: str, feed: Feed):
    assert detail_of(line) == feed


@pytest.mark.parametrize(
    ("line", "detail"),
    [
        ("5 females pollinated, 9 males open", Pollination(5, 9)),
        ("pollinated 5, males 9", Pollination(5, 9)),
        ("pollinated 5 males 9", Pollination(5, 9)),
        ("females 5 males 9", Pollination(5, 9)),
        ("pollinated 5 flowers with a brush", Pollination(5, way=PollinationWay.BRUSH)),
        ("5 females with 3 male flowers", Pollination(5, 3)),
        ("male flowers 4, female flowers 2 pollinated", Pollination(2, 4)),
        ("5 females, male flower", Pollination(5, way=PollinationWay.MALE_FLOWER)),
        ("vibrated 6 trusses", Pollination(trusses_vibrated=6)),
        ("6 trusses shaken", Pollination(trusses_vibrated=6)),
        ("2 old leaves, 3 side shoots removed", Training(2, 3)),
        ("removed 2 old leaves and 3 side-shoots", Training(2, 3)),
        ("removed 2 leaves", Training(2)),
        ("stopped 1 growing tip", Training(shoots_stopped=1)),
        ("Two old leaves removed, 1 tip stopped", Training(2, None, 1)),
        ("tied 3 stems, 2 stakes", Training(stems_tied=3, plants_staked=2)),
        ("staked 2 plants", Training(plants_staked=2)),
        ("fruit check: 5 females open, 3 set, 1 dropped, 2 thinned, 9 hanging", FruitCheck(5, 3, 1, 2, 9)),
        ("9 fruit hanging", FruitCheck(hanging=9)),
        ("BBCH 61/71", StageSeen(("61", "71"))),
        ("stage 13, 21", StageSeen(("13", "21"))),
        ("air 24.6 °C 58 % RH", Reading(24.6, 58)),
        ("24.6 C, 58%RH", Reading(24.6, 58)),
        ("humidity 58 air 24.6", Reading(24.6, 58)),
        ("temperature 24,6 humidity 58", Reading(24.6, 58)),
        ("solution 19.5", Reading(solution_temperature_c=19.5)),
        ("water temperature 19.5 °C", Reading(solution_temperature_c=19.5)),
        ("45 cm tall", Reading(plant_height_cm=45)),
        ("container weight 3.2 kg", Reading(container_weight_g=3200)),
        ("canopy 600", Reading(canopy_ppfd_umol=600)),
        ("canopy 32000 lux", Reading(canopy_lux=32000)),
    ],
)
def test_work_readings_checks_and_stages(line: str, detail: object):
    assert detail_of(line) == detail


def test_a_note_takes_all_up_to_a_semicolon():
    reading = read("note 3 leaves curl, look again: EC 2?; 5 females pollinated")
    assert [(d.detail, d.note) for d in reading.drafts] == [
        (Note(), "3 leaves curl, look again: EC 2?"),
        (Pollination(5), ""),
    ]
    assert reading.can_be_written
    assert not read("note").can_be_written


def test_labour_belongs_to_the_entry_before_it_or_to_the_first():
    assert [d.labour_minutes for d in read("5 females 8 min, 2 old leaves 1 h 20 min").drafts] == [8, 80]
    assert [d.labour_minutes for d in read("labour 12, 2 old leaves").drafts] == [12]
    assert read("2 old leaves 5 min 6 min").unread == ("6 min",)


def test_a_time_at_the_beginning_counts_for_the_line_and_one_behind_an_entry_for_that():
    assert [d.at for d in read("8:20 feed 1 L, 5 females").drafts] == [time(8, 20), time(8, 20)]
    assert [d.at for d in read("feed 1 L at 8 am, 5 females at 6:05 pm").drafts] == [time(8), time(18, 5)]
    assert [d.at for d in read("12 am feed 1 L, 2 old leaves at 12 pm").drafts] == [time(0), time(12)]


def test_two_picks_in_one_line_are_two_entries():
    both = ["Picked 3, 250 g", "Picked 2, 180 g"]
    assert became("picked 3, 250 g; picked 2, 180 g") == both
    assert became("picked 3, 250 g, picked 2, 180 g") == both
    assert became("3 fruit 250 g and 2 fruit 180 g") == both


def test_what_belongs_together_is_one_entry_even_where_something_stands_between():
    assert became("5 females, 2 old leaves, 9 males open") == [
        "Pollinated 5 flowers · 9 males open",
        "2 old leaves removed",
    ]
    assert len(became("5 females; 9 males open")) == 2
    assert became("5 females, 6 trusses vibrated") == ["Pollinated 5 flowers", "Vibrated 6 trusses"]


def test_all_that_was_understood_can_be_seen():
    (twelve,) = became("12 fruit 86 93 78 101 88 95 90 84 79 102 91 87 g")
    assert twelve.endswith("86 g + 93 g + 78 g + 101 g + 88 g + 95 g + 90 g + 84 g + 79 g + 102 g + 91 g + 87 g")
    assert became("2 cracked 150 g") == ["Culled 2 · culled: 2 cracked; culls weigh 150 g"]
    assert became("feed 1 L strength 80 %") == ["Feed 1.0 L · strength 80 %"]
