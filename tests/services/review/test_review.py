"""The review of a crop: what it says, what it does not know, and what is left out."""

from dataclasses import replace
from datetime import date

import pytest

from growlog.records.entry import Feed, LightChange, Note, OwnerKind, Pick
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.review.model import CropReview, ReviewOptions
from growlog.services.review.review import review_of
from growlog.services.rooms import place_crop
from tests.logbooks import SOWN, furnish, plant_crop, write, write_for
from tests.services.review.grown import day, grown, priced

pytestmark = pytest.mark.slow


def value(review: CropReview, section: str, key: str) -> str:
    """A line's value without its thin and unbroken spaces."""
    found = next(line.value for line in review.section(section).lines if line.key == key)
    return " ".join(found.split())


def lead(review: CropReview) -> str:
    return " ".join(" ".join(review.lead).split())


def test_the_lead_tells_what_came_and_what_it_took(log: OpenLogbook) -> None:
    crop = grown(log)
    priced(log, crop)
    clear_crop(log, crop.id, day(70))
    review = review_of(log, crop.id)
    assert review.lead[0].split() == ["20", "fruit,", "2.00", "kg,", "in", "70", "days."]
    assert "The first was picked on day 44, 14 days before the packet said." in lead(review)
    assert "21 fruit were picked, culls counted, of 25 flowers pollinated." in lead(review)
    # 71 days of 16 h at 100 W; two hours and a half of work at 6.00; a kWh at 0.25; coir for 5.00.
    assert "It took 114 kWh, 2 h 30 min of work and 48.40 EUR in all: 2.42 EUR a fruit." in lead(review)


def test_lines_say_what_the_entries_add_up_to(log: OpenLogbook) -> None:
    review = review_of(log, grown(log).id)
    assert value(review, "gave", "best-week") == "days 44 to 50, 1.00 kg"
    assert value(review, "gave", "culled") == "1 fruit, 5 % by count"
    assert value(review, "gave", "mean-fruit") == "100 g"
    assert value(review, "took", "feed") == "10 L"
    assert value(review, "took", "pollinating") == "2 rounds, 1 h"
    assert value(review, "feed", "concentrates") == "20 mL of Part A, 20 mL of Part B"
    assert value(review, "milestones", "emergence") == "day 4, 19 November"
    assert value(review, "pollination", "picked-of") == "84"


def test_lines_without_data_are_marked_and_none_are_made_up(log: OpenLogbook) -> None:
    review = review_of(log, plant_crop(log).id)
    unknown = {line.key for s in review.sections for line in s.lines if not line.known}
    assert {"early", "best-week", "power", "feed", "all-costs", "taste-keeping", "first-pick", "vpd"} <= unknown
    assert lead(review) == "In 112 days nothing was picked."
    assert review.photo_note == "There are no photos of this crop."
    assert not any(line.note for s in review.sections for line in s.lines if not line.known)


def test_a_crop_of_one_day_has_a_review(log: OpenLogbook) -> None:
    crop = plant_crop(log, sown=date(2026, 3, 7))
    review = review_of(log, crop.id)
    assert review.last_age == 0
    assert lead(review).startswith("It has just begun.")


def test_the_day_before_day_0_has_none(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    with pytest.raises(LogbookProblem, match="begins on"):
        review_of(log, crop.id, date(2025, 11, 14))


def test_nothing_of_later_days_is_told(log: OpenLogbook) -> None:
    crop = grown(log)
    review = review_of(log, crop.id, day(46))
    assert value(review, "production", "fruit") == "5"
    assert [h.age for h in review.remarks] == []


def test_each_line_stands_beside_the_earlier_crop_of_the_kind(log: OpenLogbook) -> None:
    earlier = grown(log, "Skylight Round", date(2025, 7, 28), taste="good")
    clear_crop(log, earlier.id, date(2025, 11, 1))
    grown(log, "Hall Chilli", date(2025, 6, 1))
    crop = grown(log)
    with log.unit() as unit:
        hall = next(c for c in unit.crops.all() if c.name == "Hall Chilli")
        cultivar = unit.cultivars.get(hall.cultivar_id)
        unit.change("g", replace(cultivar, species="chilli"))
        unit.commit()
    review = review_of(log, crop.id)
    assert [(e.name, e.about) for e in review.earlier] == [("Skylight Round", "96 days")]
    taste = next(line for line in review.section("gave").lines if line.key == "taste-keeping")
    assert (taste.value, taste.beside) == ("", ("good",))


def test_a_growing_crop_stands_beside_earlier_ones_at_the_same_age(log: OpenLogbook) -> None:
    grown(log, "Skylight Round", date(2025, 7, 28))
    young = plant_crop(log, sown=day(62))
    review = review_of(log, young.id)
    fruit = next(line for line in review.section("production").lines if line.key == "fruit")
    assert review.earlier[0].about == "at 50 days"
    assert fruit.beside[0] == "10"


def test_the_packet_stands_by_the_first_pick(log: OpenLogbook) -> None:
    review = review_of(log, grown(log).id)
    first = next(line for line in review.section("milestones").lines if line.key == "first-pick")
    assert first.packet == "day 58"


def test_what_happened_is_told_in_the_order_of_the_days(log: OpenLogbook) -> None:
    review = review_of(log, grown(log).id)
    assert [(h.age, h.kind) for h in review.happened] == [(0, "light"), (10, "feed"), (50, "problem")]
    assert "Four leaves taken, no spread" in review.happened[-1].text


def test_light_set_on_the_day_of_clearing_is_not_this_crops(log: OpenLogbook) -> None:
    crop = grown(log)
    write(log, crop, day(70), LightChange(12.0))
    clear_crop(log, crop.id, day(70))
    assert [h.age for h in review_of(log, crop.id).happened if h.kind == "light"] == [0]


def test_notes_are_those_of_the_crop_and_not_of_its_room(log: OpenLogbook) -> None:
    crop = grown(log)
    room, _ = furnish(log, crop)
    entry = write_for(log, OwnerKind.ROOM, room.id, day(20), Note())
    with log.unit() as unit:
        unit.change("g", replace(unit.entries.get(entry.id), note="Fan cleaned"))
        unit.commit()
    texts = [h.text for h in review_of(log, crop.id).remarks]
    assert "Small fruit taste best" in texts
    assert "Fan cleaned" not in texts


def test_without_money_no_figure_of_money_is_left(log: OpenLogbook) -> None:
    crop = grown(log, shop_price_minor_per_fruit=450)
    priced(log, crop)
    whole, without = review_of(log, crop.id), review_of(log, crop.id, options=ReviewOptions(money=False))
    assert "EUR" in str(whole)
    assert "EUR" not in str(replace(without, notes=()))
    assert not any(s.key == "cost" for s in without.sections)
    with pytest.raises(KeyError):
        without.section("cost")


def test_without_notes_no_free_text_of_entries_is_left(log: OpenLogbook) -> None:
    crop = grown(log)
    review = review_of(log, crop.id, options=ReviewOptions(notes=False))
    assert review.remarks == ()
    assert "no spread" not in str(review)
    assert "powdery mildew" in str(review)


def test_each_number_of_a_note_has_its_note(log: OpenLogbook) -> None:
    crop = grown(log)
    priced(log, crop)
    review = review_of(log, crop.id)
    used = {line.note for s in review.sections for line in s.lines if line.note}
    assert used == {note.number for note in review.notes} == set(range(1, len(used) + 1))


def test_an_unweighed_pick_makes_the_weight_an_estimate(log: OpenLogbook) -> None:
    crop = grown(log)
    write(log, crop, day(66), Pick(2))
    review = review_of(log, crop.id)
    assert review.lead[0].split() == ["22", "fruit,", "about", "2.20", "kg,", "in", "112", "days."]
    assert "of it estimated" in value(review, "production", "weight")


def test_fruit_that_was_never_weighed_is_told_by_count(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    write(log, crop, day(50), Pick(3))
    review = review_of(log, crop.id)
    assert not review.by_weight
    assert review.lead[0] == "3 fruit, in 112 days."


def test_a_tanks_feed_is_shared_by_the_crops_that_stand_there(log: OpenLogbook) -> None:
    first, second = plant_crop(log), plant_crop(log, "Boxroom Red")
    room, tank = furnish(log, first)
    place_crop(log, second.id, room.id, SOWN, floor_share=0.5, tank_id=tank.id)
    write_for(log, OwnerKind.TANK, tank.id, day(10), Feed(volume_l=10.0))
    assert value(review_of(log, first.id), "took", "feed") == "5 L"
