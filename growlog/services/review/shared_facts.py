"""A review as the plain words of a page, and its curve as a chart: what both the shared page and paper are made of."""

from collections.abc import Callable, Sequence
from typing import Any

from babel import Locale

from growlog import words
from growlog.calculations.explained_figure import DEFINITION
from growlog.records.display import in_shown_unit
from growlog.services.review.model import CropReview, DecisionMade, Happening, ReviewNote, ReviewSection
from growlog.services.review.shared_pictures import SharedPicture
from growlog.services.review.wording import day_of_crop, joined, shortened
from growlog.sharing.svg_chart import ChartCurve, YieldChart
from growlog.words import say, say_count, show_day, show_number

SHORT = ("gave", "took")
_PICTURE_NAME = "photo-{number}.jpg"


def page_facts(review: CropReview, pictures: Sequence[SharedPicture]) -> dict[str, Any]:
    """All words of the page. Photos name their picture; see `picture_files`."""
    return {
        **_language(),
        "name": review.name,
        "about": review.about,
        "lead": list(review.lead),
        "photos": [_photo(review, i, picture) for i, picture in enumerate(pictures)],
        "photos_in_a_row": _in_a_row(len(review.photos)),
        "photo_notes": _photo_notes(review, pictures),
        "portrait": _portrait(pictures),
        "chart_title": _chart_title(review),
        "chart_about": _chart_about(review),
        "earlier": [{"name": e.name, "about": e.about} for e in review.earlier],
        "short": [_section(review.section(key)) for key in SHORT],
        "full": [_section(s) for s in review.sections if s.key not in SHORT],
        "trying": review.trying,
        "happened": [_happening(h) for h in review.happened],
        "decisions": [_decision(d) for d in review.decisions],
        "remarks": [_happening(h) for h in review.remarks],
        "notes": [_note(n) for n in review.notes],
        "words": _own_words(),
        "footer": _footer(review),
    }


def picture_files(pictures: Sequence[SharedPicture]) -> dict[str, bytes]:
    """The pictures by the names that the facts give them."""
    return {_name(i): picture.jpeg for i, picture in enumerate(pictures) if picture.jpeg is not None}


def chart_of(review: CropReview) -> YieldChart | None:
    """The curve beside those of earlier crops; None before the first pick of any."""
    curves = [review.curve, *(e.curve for e in review.earlier)]
    if not any(c.points for c in curves):
        return None
    scale = in_shown_unit(1.0, "kg")[0] / 1000 if review.by_weight else 1.0

    def values(curve_points: Sequence[Any]) -> tuple[tuple[int, float], ...]:
        return tuple((p.age, scale * p.weight_g if review.by_weight else float(p.fruit_count)) for p in curve_points)

    own, *others = (ChartCurve(c.name, values(c.points), c.last_age) for c in curves)
    title = _chart_title(review)
    return YieldChart(own, tuple(others), review.packet_age, _tick(review), title, say("day"), say("packet maturity"))


def _tick(review: CropReview) -> Callable[[float], str]:
    unit = in_shown_unit(1.0, "kg")[1] if review.by_weight else ""

    def words_of(value: float) -> str:
        decimals = next((d for d in range(3) if abs(value - round(value, d)) < 1e-9), 3)
        number = show_number(value, decimals)
        return f"{number}\u2009{unit}" if unit and value else number

    return words_of


def _language() -> dict[str, str]:
    locale = words.locale_name()
    direction = "rtl" if Locale.parse(locale).character_order == "right-to-left" else "ltr"
    return {"language": locale.split("_")[0], "direction": direction}


def _photo(review: CropReview, index: int, picture: SharedPicture) -> dict[str, Any]:
    photo = review.photos[index]
    alt = joined(say("{crop} on day {age}", crop=review.name, age=photo.age), photo.caption)
    return {
        "name": "" if picture.jpeg is None else _name(index),
        "width": picture.width_px,
        "height": picture.height_px,
        "gone": picture.gone,
        "day": say("{age} d", age=photo.age),
        "caption": photo.caption,
        "alt": alt,
    }


def _name(index: int) -> str:
    return _PICTURE_NAME.format(number=index + 1)


def _in_a_row(count: int) -> int:
    """Photos in a row of paper: up to nine in one, more in two; few are no larger than one of six."""
    return max(6, count if count <= 9 else -(-count // 2))


def _portrait(pictures: Sequence[SharedPicture]) -> bool:
    tall = sum(p.height_px > p.width_px for p in pictures)
    return 2 * tall >= max(1, len(pictures))


def _photo_notes(review: CropReview, pictures: Sequence[SharedPicture]) -> list[str]:
    gone = [day_of_crop(p.age) for p, shown in zip(review.photos, pictures, strict=True) if shown.gone]
    missing = say_count(
        "{n} photo cannot be shown, its original is missing or damaged: {days}.",
        "{n} photos cannot be shown, their originals are missing or damaged: {days}.",
        len(gone),
        days=shortened(gone, 15),
    )
    return [t for t in (review.photo_note, missing if gone else "") if t]


def _chart_title(review: CropReview) -> str:
    if not any(c.points for c in (review.curve, *(e.curve for e in review.earlier))):
        return ""
    if review.by_weight:
        return say("Cumulative marketable yield by plant age")
    return say("Cumulative marketable fruit by plant age")


def _chart_about(review: CropReview) -> str:
    beside = [say("{crop}, {age}", crop=e.name, age=e.about) for e in review.earlier if e.curve.points]
    if review.packet_age is not None:
        beside.append(say("the packet"))
    return say("beside {others}", others="; ".join(beside)) if beside else ""


def _section(section: ReviewSection) -> dict[str, Any]:
    return {
        "key": section.key,
        "title": section.title,
        "sentences": list(section.sentences),
        "lines": [
            {
                "label": line.label,
                "value": line.value,
                "beside": list(line.beside),
                "packet": say("packet: {words}", words=line.packet) if line.packet else "",
                "note": line.note or 0,
            }
            for line in section.lines
        ],
    }


def _happening(happening: Happening) -> dict[str, str]:
    return {"day": day_of_crop(happening.age), "kind": happening.kind, "text": happening.text}


def _decision(decision: DecisionMade) -> dict[str, Any]:
    return {
        "head": say("Decision, {day}", day=show_day(decision.day)),
        "title": decision.title,
        "reasons": decision.reasons,
        "changes": say("Next time: {changes}", changes=decision.changes) if decision.changes else "",
        "figures": [{"label": f.label, "text": f.value_text} for f in decision.figures],
    }


def _note(note: ReviewNote) -> dict[str, Any]:
    by_definition = note.source == say(DEFINITION)
    source = say("By definition.") if by_definition else say("Source: {source}.", source=note.source.rstrip("."))
    inputs = say("From: {inputs}.", inputs=note.inputs) if note.inputs else ""
    sure = note.sure[:1].upper() + note.sure[1:] + "." if note.sure else ""
    text = " ".join(t for t in (note.method, inputs, source, sure) if t)
    return {"number": note.number, "title": note.title, "text": text}


def _own_words() -> dict[str, str]:
    return {
        "no_data": say("no data"),
        "happened": say("What happened"),
        "remarks": say("Notes of the grower"),
        "notes": say("How each figure was worked out"),
        "trying": say("What was tried"),
    }


def _footer(review: CropReview) -> str:
    first, last = show_day(review.day_zero), show_day(review.as_of)
    span = say("From the growing-room logbook, {first} to {last}.", first=first, last=last)
    left_out = [w for w, shown in ((say("money"), review.options.money), (say("notes"), review.options.notes))
                if not shown]  # fmt: skip
    without = say("Left out: {what}.", what=", ".join(left_out)) if left_out else ""
    return " ".join(t for t in (span, without) if t)
