"""The unfinished tally: kept, offered again, set aside where it cannot be read, let go of when it is written."""

import json
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import CullCause
from growlog.services.logbooks import open_log
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.tally import (
    CropTally,
    Stopwatch,
    Tally,
    drop_draft,
    find_draft,
    new_tally,
    save_draft,
    write_tally,
)
from growlog.services.tally.kept_form import UnreadableDraft, tally_of, text_of
from tests.logbooks import TODAY, still_clock
from tests.services.tally.conftest import DAY, MORNING


@pytest.fixture
def full(crop: Crop, tally_of_day: Callable[..., Tally]) -> Tally:
    state = CropTally(crop.id).picked(93).picked().culled(CullCause.CRACKED).checked("dropped", 0)
    state = replace(state.counted("females_pollinated", 5, MORNING), note="ein Fleck, 2 mm ≥ 1").with_time(time(7, 30))
    watch = Stopwatch(60, datetime(2026, 1, 18, 12, 41, tzinfo=UTC))
    return tally_of_day(state.with_minutes(8), typed="86", chosen=crop.id, stopwatch=watch, minutes_typed=12)


def file_of(log: OpenLogbook) -> Path:
    return log.folder / "unfinished" / "tally.json"


def test_a_kept_tally_comes_back_in_every_detail(log: OpenLogbook, full: Tally) -> None:
    save_draft(log, full)
    found = find_draft(log)
    assert found.tally == full
    assert found.sentence == "A tally from 18 January 2026, 12:40 was not finished."
    drop_draft(log)
    assert find_draft(log).tally is None
    assert not file_of(log).parent.exists()


def test_an_untouched_tally_leaves_nothing_behind(log: OpenLogbook, full: Tally) -> None:
    save_draft(log, full)
    save_draft(log, new_tally(log, datetime.combine(DAY, time(12, 40))))
    assert not file_of(log).exists()


def test_a_new_tally_is_of_the_day_that_counts_as_today(log: OpenLogbook) -> None:
    tally = new_tally(log, datetime.combine(date(2031, 5, 5), time(7, 30, 12, 99)))
    assert (tally.day, tally.started_at, tally.at) == (TODAY, datetime.combine(TODAY, time(7, 30, 12)), time(7, 30))


def damaged(text: str) -> list[str]:
    """Texts that a torn disk, a person with an editor or a later version may leave."""
    whole = json.loads(text)
    wrong_type = json.loads(text)
    wrong_type["tally"]["crops"][0]["females_pollinated"] = "five"
    no_weight = json.loads(text)
    no_weight["tally"]["crops"][0]["fruit"] = ["heavy"]
    no_name = json.loads(text)
    no_name["tally"]["id"] = "not a uuid"
    return [
        text[: len(text) // 2],
        "",
        "[]",
        "[" * 100_000,
        json.dumps({**whole, "version": 2}),
        json.dumps(wrong_type),
        json.dumps(no_weight),
        json.dumps(no_name),
    ]


@pytest.mark.parametrize("case", range(8))
def test_a_draft_that_cannot_be_read_is_set_aside_with_a_sentence(log: OpenLogbook, full: Tally, case: int) -> None:
    text = damaged(text_of(full))[case]
    save_draft(log, full)
    file_of(log).write_text(text, encoding="utf-8")
    found = find_draft(log)
    assert found.tally is None
    (aside,) = file_of(log).parent.iterdir()
    assert aside.read_text(encoding="utf-8") == text
    assert str(aside.relative_to(log.folder)) in found.sentence
    assert find_draft(log).sentence == ""


def test_bytes_that_are_no_text_are_set_aside_too(log: OpenLogbook, full: Tally) -> None:
    save_draft(log, full)
    file_of(log).write_bytes(b"\xff\xfe\x00")
    assert "set aside" in find_draft(log).sentence


def test_a_draft_without_what_a_later_field_holds_is_read(full: Tally) -> None:
    whole = json.loads(text_of(full))
    del whole["tally"]["minutes_typed"]
    assert tally_of(json.dumps(whole)) == replace(full, minutes_typed=None)
    whole["tally"]["something_new"] = 1
    with pytest.raises(UnreadableDraft):
        tally_of(json.dumps(whole))


def test_a_tally_that_was_written_just_before_a_crash_is_not_offered_again(log: OpenLogbook, full: Tally) -> None:
    save_draft(log, full)
    write_tally(log, full)
    assert find_draft(log).tally is None
    assert not file_of(log).exists()


def test_a_logbook_open_for_reading_only_keeps_no_draft(log: OpenLogbook, full: Tally, tmp_path: Path) -> None:
    reading = open_log(log.folder, still_clock(), tmp_path / "cache", read_only=True)
    try:
        save_draft(reading, full)
        assert not file_of(log).exists()
        save_draft(log, full)
        assert find_draft(reading).tally is None
        drop_draft(reading)
        assert file_of(log).exists()
    finally:
        reading.close()


def test_a_folder_that_takes_no_draft_is_said_with_a_sentence(log: OpenLogbook, full: Tally) -> None:
    (log.folder / "unfinished").write_text("in the way")
    with pytest.raises(LogbookProblem, match="cannot be written"):
        save_draft(log, full)
