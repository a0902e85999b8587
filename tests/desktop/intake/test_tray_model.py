"""The list behind the intake tray, without a window."""

from datetime import date, time, timedelta
from pathlib import Path

import pytest

from growlog.desktop.intake.tray_model import Tray
from growlog.desktop.intake.wording import counts_line, day_and_source, result_words
from growlog.records.crop import Crop
from growlog.records.photo import DateSource
from growlog.services.photo_intake import Outcome
from tests.desktop.intake.made_items import item, refused


def filled() -> Tray:
    """Three pictures and a file that is none."""
    tray = Tray()
    tray.add([item("a.jpg"), item("b.jpg"), refused("c.txt"), item("d.jpg")])
    return tray


def test_a_file_that_is_listed_is_not_fresh() -> None:
    tray = filled()
    assert [i.path.name for i in tray.fresh([item("b.jpg"), item("e.jpg"), item("e.jpg")])] == ["e.jpg"]


def test_a_typed_day_goes_to_the_chosen_pictures_only() -> None:
    tray = filled()
    tray.set_day([0, 2], date(2026, 2, 1))
    assert [row.item.day for row in tray.rows] == [date(2026, 2, 1), date(2026, 1, 18), None, date(2026, 1, 18)]
    assert tray.rows[0].item.source is DateSource.TYPED


def test_a_shift_across_midnight_changes_the_day() -> None:
    tray = filled()
    tray.shift([1], timedelta(hours=-19))
    assert (tray.rows[1].item.day, tray.rows[1].item.at) == (date(2026, 1, 17), time(23, 41))


def test_a_shift_beyond_the_calendar_changes_nothing() -> None:
    tray = Tray()
    tray.add([item("a.jpg"), item("b.jpg", day=date(9999, 12, 31))])
    with pytest.raises(OverflowError):
        tray.shift([0, 1], timedelta(days=2))
    assert tray.rows[0].item.day == date(2026, 1, 18)


def test_the_day_as_read_comes_back_and_the_crop_stays() -> None:
    tray = filled()
    tray.set_day([0], date(2026, 2, 1))
    tray.set_crop([0], "other")
    tray.put_as_read([0])
    row = tray.rows[0].item
    assert (row.day, row.source, row.crop_id) == (date(2026, 1, 18), DateSource.EXIF_ORIGINAL, "other")


def test_what_is_left_out_is_not_judged_and_does_not_go_in() -> None:
    tray = filled()
    tray.leave_out([0])
    assert [row.item.path.name for row in tray.to_judge()] == ["b.jpg", "d.jpg"]
    assert [row.item.path.name for row in tray.going_in()] == ["b.jpg", "d.jpg"]


def test_a_change_makes_the_judgement_stale() -> None:
    tray = filled()
    sent = tray.to_judge()
    tray.take_judgement(tray.version, sent, [row.item for row in sent])
    assert tray.is_settled
    tray.leave_out([0])
    assert not tray.is_settled


def test_a_judgement_does_not_overwrite_what_changed_since() -> None:
    tray = filled()
    sent, version = tray.to_judge(), tray.version
    tray.set_day([0], date(2026, 2, 1))
    tray.take_judgement(version, sent, [item(row.item.path.name, outcome=Outcome.DUPLICATE) for row in sent])
    assert tray.rows[0].item.day == date(2026, 2, 1)
    assert tray.rows[1].item.outcome is Outcome.DUPLICATE
    assert not tray.is_settled


def test_written_rows_go_and_refused_ones_stay_with_their_sentence() -> None:
    tray = filled()
    sent = tray.going_in()
    results = [sent[0].item, item("b.jpg", outcome=Outcome.REFUSED, reason="b.jpg is gone."), sent[2].item]
    assert tray.take_result(sent, results, written=2) == 1
    assert [(row.item.path.name, row.item.reason) for row in tray.rows] == [
        ("b.jpg", "b.jpg is gone."),
        ("c.txt", "c.txt is not a picture."),
    ]


def test_after_a_stop_only_the_first_written_rows_go() -> None:
    tray = filled()
    sent = tray.going_in()
    tray.take_result(sent, [row.item for row in sent], written=1)
    assert [row.item.path.name for row in tray.rows] == ["b.jpg", "c.txt", "d.jpg"]


def test_the_counts_name_each_fate_once() -> None:
    tray = filled()
    tray.add([item("e.jpg", outcome=Outcome.DUPLICATE), item("f.jpg", outcome=Outcome.QUESTIONED)])
    tray.leave_out([3])
    line = counts_line(tray.counts())
    assert line == "3 go in, 1 of them to look at again, 1 already there, 1 left out, 1 refused"


@pytest.mark.parametrize(
    "source, words",
    [
        (DateSource.EXIF_ORIGINAL, "day 64, 18:41, camera's clock"),
        (DateSource.FILE_NAME, "day 64, 18:41, date in the file name"),
        (DateSource.FILE_TIME, "day 64, 18:41, the file's own time, not sure"),
        (DateSource.TYPED, "day 64, 18:41, typed"),
    ],
)
def test_the_line_below_the_day_says_the_plant_age_and_the_source(source: DateSource, words: str) -> None:
    crop = Crop("crop", "Boxroom Gold", "cultivar", sown_on=date(2025, 11, 15))
    assert day_and_source(item("a.jpg", source=source), crop) == words


def test_the_result_names_what_was_refused_and_that_it_was_stopped() -> None:
    assert result_words(21, 1, stopped=False) == "21 photos are in the logbook. 1 file was refused; see why below."
    assert result_words(0, 0, stopped=True) == "No photo went in. It was stopped; the others are still in the tray."


def test_paths_of_the_same_name_in_two_folders_are_two_files() -> None:
    tray = filled()
    other = item("a.jpg", folder=Path("other"))
    assert tray.fresh([other]) == [other]
