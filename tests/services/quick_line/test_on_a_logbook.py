"""A line on a real logbook: one undoable change, its mixes, and what the logbook asks."""

from datetime import date

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed, Owner, OwnerKind, Pick, Treatment
from growlog.records.recipe import MixPart
from growlog.services.day_sheet import crop_days_of
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import OpenLogbook
from growlog.services.quick_line import check_line, context_of, entries_of, read_line, words_of, write_line
from growlog.services.undo import undo
from tests.logbooks import content_of, write

DAY = date(2026, 1, 18)


def test_a_line_is_written_as_one_change_that_undo_takes_back(log: OpenLogbook, crop: Crop):
    before = content_of(log)
    reading = read_line("3 fruit 250 g, 5 females pollinated, feed 1.2 L", context_of(log))
    change = write_line(log, reading, Owner(OwnerKind.CROP, crop.id), DAY)
    entries = crop_days_of(log, crop.id).entries
    assert {e.kind for e in entries} == {"pick", "pollination", "feed"}
    assert len({e.group_id for e in entries}) == 1
    assert entries[0].group_id is not None
    assert {e.day for e in entries} == {DAY}
    assert change.title == "Quick line on 18 January 2026"
    undo(log, change)
    assert content_of(log) == before


def test_a_feed_points_at_the_newest_edition_of_the_mix_that_it_names(log: OpenLogbook, crop: Crop):
    save_mix(log, "Basic bloom", (MixPart("A", 2.0),))
    newest, _ = save_mix(log, "Basic bloom", (MixPart("A", 3.0),))
    context = context_of(log)
    (draft,) = read_line("feed 2 L basic bloom", context).drafts
    assert draft.detail == Feed(mix_id=newest.id, volume_l=2)
    assert words_of(context, ()).mixes == ("Basic bloom",)


def test_a_pick_inside_a_harvest_interval_is_asked_about_before_it_is_written(log: OpenLogbook, crop: Crop):
    write(log, crop, DAY, Treatment("soap", harvest_interval_days=3))
    (question,) = check_line(log, read_line("3 fruit 250 g"), Owner(OwnerKind.CROP, crop.id), DAY)
    assert question.asks
    assert "asks for no pick" in question.sentence


def test_a_day_before_sowing_is_refused(log: OpenLogbook, crop: Crop):
    problems = check_line(log, read_line("3 fruit 250 g"), Owner(OwnerKind.CROP, crop.id), date(2025, 1, 1))
    assert [p.asks for p in problems] == [False]


def test_a_line_with_unread_words_makes_no_entries():
    with pytest.raises(ValueError, match="not understood"):
        entries_of(read_line("3 fruit blue"), Owner(OwnerKind.CROP, "crop-1"), DAY)


def test_whole_minutes_and_the_count_are_kept_as_whole_numbers():
    (entry,) = entries_of(read_line("three fruit 0.5 h"), Owner(OwnerKind.CROP, "crop-1"), DAY)
    assert entry.labour_minutes == 30
    assert entry.detail == Pick(3)
    assert isinstance(entry.detail.fruit_count, int)  # type: ignore[attr-defined]
