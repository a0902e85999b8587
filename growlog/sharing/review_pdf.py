"""The crop review on paper: a few designed pages in A4 or Letter, set by the typesetter from plain facts."""

from collections.abc import Mapping, Sequence
from typing import Any

from growlog.sharing.clean_text import breakable, shareable
from growlog.sharing.svg_chart import ChartSize, YieldChart, yield_chart_svg
from growlog.sharing.typeset import page_pictures, set_pages_with_files
from growlog.words import say, say_count

TEMPLATE = "crop_review"
_ON_PAPER = {"a4": ChartSize(880, 262, 12.0), "us-letter": ChartSize(880, 188, 12.0)}
_HAPPENED, _HAPPENED_BESIDE_DECISION, _HAPPENED_IN_ALL, _REMARKS = 8, 6, 24, 24
_LONGEST, _LONGEST_ON_FIRST_PAGE = 220, 108
_FIRST_KINDS = ("problem", "treatment", "loss")  # what is left out of the first page last


def review_pdf(
    facts: Mapping[str, Any], chart: YieldChart | None, pictures: Mapping[str, bytes], paper: str
) -> bytes:  # fmt: skip
    """The PDF. paper: as the typesetter names it, a4 or us-letter."""
    return set_pages_with_files(TEMPLATE, _on_paper(facts, chart, paper), _files(chart, pictures, paper))


def review_page_pictures(
    facts: Mapping[str, Any],
    chart: YieldChart | None,
    pictures: Mapping[str, bytes],
    paper: str,
    dots_per_inch: float,
) -> list[bytes]:
    """The same pages as PNG files."""
    return page_pictures(TEMPLATE, _on_paper(facts, chart, paper), _files(chart, pictures, paper), dots_per_inch)


def _files(chart: YieldChart | None, pictures: Mapping[str, bytes], paper: str) -> dict[str, bytes]:
    drawn = {} if chart is None else {"chart.svg": yield_chart_svg(chart, _ON_PAPER[paper]).encode()}
    return {**pictures, **drawn}


def _on_paper(facts: Mapping[str, Any], chart: YieldChart | None, paper: str) -> dict[str, Any]:
    """The facts with long lists cut to what paper holds; what is left out is counted."""
    happened, remarks = list(facts["happened"]), list(facts["remarks"])
    on_first = _on_first_page(happened, _HAPPENED_BESIDE_DECISION if facts["decisions"] else _HAPPENED)
    first = [_cut(happened[i], _LONGEST_ON_FIRST_PAGE) for i in on_first]
    rest = [h for i, h in enumerate(happened) if i not in on_first]
    kept = _kept_remarks(remarks)
    told = {
        "paper": paper,
        "has_chart": chart is not None,
        "beside_words": _beside_words([one["name"] for one in facts["earlier"]]),
        "first_happened": first,
        "more_happened": [_cut(h) for h in rest[:_HAPPENED_IN_ALL]],
        "kept_remarks": [_cut(r) for r in kept],
        "left_out": _left_out(len(remarks) - len(kept)),
        "page_words": say("{n} of {all}", n="{n}", all="{all}"),
        "notes_words": _notes_words(len(facts["notes"])),
        "more_words": say("What else happened"),
    }
    return dict(breakable(shareable({**facts, **told})))


def _beside_words(earlier: Sequence[str]) -> str:
    """Which earlier crop the tables of paper show, where there is more than one."""
    if len(earlier) < 2:
        return ""
    return say("The tables have room for one earlier crop, the latest, {first}. The web page shows {others} too.",
               first=earlier[0], others=", ".join(earlier[1:]))  # fmt: skip


def _on_first_page(happened: Sequence[Mapping[str, Any]], most: int) -> list[int]:
    telling = sorted(range(len(happened)), key=lambda i: (happened[i]["kind"] not in _FIRST_KINDS, i))
    return sorted(telling[:most])


def _kept_remarks(remarks: Sequence[Mapping[str, Any]]) -> list[Mapping[str, Any]]:
    """The plain notes first, then the longest of the others; in the order of the days."""
    telling = sorted(range(len(remarks)), key=lambda i: (remarks[i]["kind"] != "note", -len(remarks[i]["text"]), i))
    return [remarks[i] for i in sorted(telling[:_REMARKS])]


def _cut(happening: Mapping[str, Any], longest: int = _LONGEST) -> dict[str, Any]:
    text = str(happening["text"])
    if len(text) > longest:
        text = (text[: longest - 1].rpartition(" ")[0].rstrip(" ;,") or text[: longest - 1]) + "…"
    return {**happening, "text": text}


def _left_out(count: int) -> str:
    if count <= 0:
        return ""
    return say_count("{n} shorter note is in the logbook.", "{n} shorter notes are in the logbook.", count)


def _notes_words(count: int) -> str:
    if not count:
        return ""
    return say_count(
        "Note 1 on the last page says how the figure was worked out and how sure it is.",
        "Notes 1 to {n} on the last pages say how each figure was worked out and how sure it is.",
        count,
    )
