"""The crop review as one page of HTML that needs nothing beside itself: pictures, charts, styles and font are in it."""

from base64 import b64encode
from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from growlog.sharing.clean_text import shareable
from growlog.sharing.own_files import resources_folder
from growlog.sharing.svg_chart import NARROW, WIDE, YieldChart, yield_chart_svg

if TYPE_CHECKING:  # imported where a page is made: it takes long, and most starts of the program make none
    from jinja2 import Template
    from markupsafe import Markup

_FACES = {400: "LogbookSans-Regular.otf", 600: "LogbookSans-SemiBold.otf"}


def review_html(facts: Mapping[str, Any], chart: YieldChart | None, pictures: Mapping[str, bytes]) -> bytes:
    """The page as UTF-8. facts: as the template names them; every text in them is escaped. pictures: JPEG files by the
    names that the facts give to photos."""
    from markupsafe import Markup

    page = _template().render(
        facts=shareable(dict(facts)),
        chart_wide=_drawing(chart, narrow=False),
        chart_narrow=_drawing(chart, narrow=True),
        pictures={name: Markup(_data_uri("image/jpeg", jpeg)) for name, jpeg in pictures.items()},
        faces=_faces(),
    )
    return page.encode()


def load_tools() -> None:
    """Imports what the page is made with."""
    _template()


def _drawing(chart: YieldChart | None, *, narrow: bool) -> "Markup":
    from markupsafe import Markup

    # The module that draws escapes every word; nothing else is passed over by the escaping of the template.
    return Markup("" if chart is None else yield_chart_svg(chart, NARROW if narrow else WIDE))


@cache
def _template() -> "Template":
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    loader = FileSystemLoader(resources_folder() / "sheets")
    made = Environment(loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return made.get_template("crop_review.html")


@cache
def _faces() -> "dict[int, Markup]":
    from markupsafe import Markup

    folder = resources_folder() / "font"
    return {weight: Markup(_data_uri("font/otf", (folder / name).read_bytes())) for weight, name in _FACES.items()}


def _data_uri(media_type: str, content: bytes) -> str:
    return f"data:{media_type};base64,{b64encode(content).decode()}"
