"""The review of a crop: put together from its figures, its photos and the grower's earlier crops of its kind."""

from collections.abc import Sequence
from datetime import date

from growlog.calculations.milestones import Milestone, milestone_ages
from growlog.calculations.plant_age import day_at
from growlog.records.cultivar import FloweringHabit
from growlog.services.open_logbook import OpenLogbook
from growlog.services.review.crop_figures import CropFigures, crop_figures
from growlog.services.review.decided import decisions_in
from growlog.services.review.happened import happenings, remarks, troubles
from growlog.services.review.input_lines import cost_lines, feed_lines, light_lines, took_lines, training_lines
from growlog.services.review.lead import about_line, first_pick, lead_of
from growlog.services.review.lines import LineOf, NoteBook, section
from growlog.services.review.model import (
    CropReview,
    EarlierCrop,
    ReviewCurve,
    ReviewOptions,
    ReviewSection,
    StoryPhoto,
)
from growlog.services.review.plant_lines import (
    climate_lines,
    flower_words,
    growing_lines,
    milestone_lines,
    pollination_lines,
    quality_lines,
)
from growlog.services.review.story import story_of
from growlog.services.review.wording import day_of_crop, days
from growlog.services.review.yield_lines import gave_lines, production_lines
from growlog.services.yield_view.usual_days import table_name
from growlog.services.yield_view.view import begun
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count

MOST_EARLIER = 3
_TOLD_IN_PHOTOS = (Milestone.FIRST_PICK, Milestone.FIRST_FEMALE, Milestone.FIRST_MALE, Milestone.EMERGENCE,
                   Milestone.PEAK_WEEK, Milestone.LAST_PICK)  # fmt: skip


def review_of(
    log: OpenLogbook, crop_id: str, as_of: date | None = None, options: ReviewOptions | None = None
) -> CropReview:
    """A crop from day 0 to a day, today if none is said, beside up to three earlier crops of the same kind.

    Takes a while: not for the window's thread. LogbookProblem where the crop is not there, or begins later than the
    day.
    """
    chosen, day = options or ReviewOptions(), as_of or log.today()
    with log.unit() as unit:
        begun(unit.crops.get(crop_id), day)
        own = crop_figures(unit, crop_id, day)
        earlier = [crop_figures(unit, other, until) for other, until in _earlier(unit, own)]
        return _put_together(unit, own, earlier, chosen)


def _put_together(
    unit: UnitOfWork, own: CropFigures, earlier: Sequence[CropFigures], options: ReviewOptions
) -> CropReview:
    notes = NoteBook()
    photos = story_of(unit, own.crop, own.age, _captions(own), options.photo_count)
    return CropReview(
        crop_id=own.crop.id,
        name=own.crop.name,
        about=about_line(own),
        as_of=own.as_of,
        day_zero=own.crop.day_zero,
        last_age=own.age,
        growing=own.crop.growing,
        lead=lead_of(own, with_money=options.money),
        photos=photos,
        photo_note=_photo_note(photos),
        curve=_curve(own),
        by_weight=own.facts.weight_g > 0,
        packet_age=own.packet_age,
        earlier=tuple(EarlierCrop(e.crop.id, e.crop.name, _old(own, e), _curve(e)) for e in earlier),
        sections=tuple(_sections(own, earlier, notes, options)),
        happened=happenings(unit, own, with_notes=options.notes),
        remarks=remarks(own) if options.notes else (),
        trying=own.crop.trying.strip(),
        decisions=decisions_in(unit, own.crop.id, own.as_of, money=options.money, notes=options.notes),
        notes=tuple(notes.found),
        options=options,
    )


def _sections(
    own: CropFigures, earlier: Sequence[CropFigures], notes: NoteBook, options: ReviewOptions
) -> list[ReviewSection]:
    def put(key: str, title: str, lines: Sequence[LineOf], sentences: Sequence[str] = ()) -> ReviewSection:
        wanted = [line for line in lines if options.money or not line.is_money]
        return section(key, title, wanted, own, earlier, notes, sentences)

    found = [
        put("gave", say("What it gave"), gave_lines()),
        put("took", say("What it took"), took_lines()),
        put("milestones", say("Milestones"), milestone_lines(own)),
        put("growing", say("Medium and system"), growing_lines()),
        put("feed", say("Feed"), feed_lines()),
        put("light", say("Light and power"), light_lines()),
        put("training", say("Training and work"), _worked(training_lines(), own, earlier)),
        put("pollination", say("Pollination and set"), pollination_lines(), _set_sentences(own)),
        put("production", say("Production"), production_lines(), own.facts.notes),
        put("troubles", say("Problems and treatments"), (), _troubles(own, options)),
        put("climate", say("Climate of the room"), climate_lines()),
        put("quality", say("Quality"), quality_lines()),
    ]
    if options.money:
        costs = put("cost", say("Cost"), _worked(cost_lines(), own, earlier), own.costs.notes)
        found.insert(10, costs)
    return found


def _worked(lines: Sequence[LineOf], own: CropFigures, earlier: Sequence[CropFigures]) -> list[LineOf]:
    """Kinds of work or of cost that no crop had would only be a long list of nothing."""
    listed = ("work-", "cost-")
    kept_anyway = ("work-per-fruit", "cost-per-fruit", "cost-per-kg", "cost-per-day")
    return [
        line for line in lines
        if not line.key.startswith(listed) or line.key in kept_anyway or any(line.show(c) for c in (own, *earlier))
    ]  # fmt: skip


def _set_sentences(own: CropFigures) -> tuple[str, ...]:
    return () if own.fruit_set is None else own.fruit_set.sentences


def _troubles(own: CropFigures, options: ReviewOptions) -> tuple[str, ...]:
    seen = troubles(own, with_notes=options.notes)
    return tuple(f"{day_of_crop(t.age)}: {t.text}" for t in seen) or (say("None was noted."),)


def _earlier(unit: UnitOfWork, own: CropFigures) -> list[tuple[str, date]]:
    """The latest earlier crops of the kind; a finished one whole, for a crop that grows up to the same age."""
    kinds = {
        c.id for c in unit.cultivars.all(removed=True) if table_name(c.species) == table_name(own.cultivar.species)
    }
    before = [
        c for c in unit.crops.all()
        if c.id != own.crop.id and c.cultivar_id in kinds and c.day_zero <= own.crop.day_zero
    ]  # fmt: skip
    latest = sorted(before, key=lambda c: (c.day_zero, c.name), reverse=True)[:MOST_EARLIER]
    until = {c.id: own.as_of if not own.crop.growing else day_at(c.day_zero, own.age) for c in latest}
    return [(c.id, min(until[c.id], own.as_of)) for c in latest]


def _old(own: CropFigures, other: CropFigures) -> str:
    """How old the other crop is where its figures hold: at the same age while this one grows, else its whole life."""
    if own.crop.growing and other.age == own.age:
        return say("at {days}", days=days(other.age))
    return days(other.age)


def _curve(crop: CropFigures) -> ReviewCurve:
    return ReviewCurve(crop.crop.name, crop.curve, crop.age)


def _captions(own: CropFigures) -> dict[int, str]:
    """Milestones in words by age; of two on one day the more telling one stands."""
    ages = milestone_ages(own.seen, own.picks) | {Milestone.FIRST_PICK: first_pick(own)}
    separate = own.cultivar.habit is FloweringHabit.SEPARATE
    found: dict[int, str] = {}
    for which in _TOLD_IN_PHOTOS:
        age = ages[which]
        if age is not None:
            found.setdefault(age, flower_words(which, separate))
    if own.packet_age is not None and own.packet_age <= own.age:
        found.setdefault(own.packet_age, say("packet day"))
    return found


def _photo_note(photos: Sequence[StoryPhoto]) -> str:
    if not photos:
        return say("There are no photos of this crop.")
    if photos[0].chosen:
        return say_count("{n} photo, chosen by hand", "{n} photos, chosen by hand", len(photos))
    return ""
