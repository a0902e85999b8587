"""All that the picks of a crop say, as one value for a screen."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.coming_picks import ComingPicks
from growlog.calculations.explained_figure import Figure
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_facts import Inputs, YieldFacts, explain_facts, explain_ratios
from growlog.calculations.yield_forecast import YieldForecast
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar
from growlog.services.facts.source import fact_source
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.yield_view.milestones_seen import Maturity, MilestoneSeen, maturity, milestones_seen
from growlog.services.yield_view.season import CropSeason
from growlog.services.yield_view.used import used_so_far
from growlog.words import say, show_day


@dataclass(frozen=True)
class YieldView:
    """A crop's yield as of a day. What cannot be told is a NotYet with its reason.

    figures: facts and ratios with their explanations. notes: what to know of weights and forecasts.
    """

    crop: Crop
    cultivar: Cultivar
    as_of: date
    age: int
    milestones: tuple[MilestoneSeen, ...]
    maturity: Maturity
    facts: YieldFacts
    used: Inputs
    figures: tuple[Figure, ...]
    forecast_fruit: YieldForecast | NotYet
    forecast_grams: YieldForecast | NotYet
    fruit_set: FruitSet | NotYet
    coming: ComingPicks | NotYet
    notes: tuple[str, ...]


def yield_of(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> YieldView:
    """What the picks of a crop said on a day, today if none is given. Takes a while: not for the window's thread.

    LogbookProblem where the crop is not there, or was not yet sown on that day.
    """
    day = as_of or log.today()
    with log.unit() as unit:
        source = fact_source(unit, crop_id, day)
        begun(source.crop, day)
        season, costs = source.season, source.costs
        used = used_so_far(unit, season, costs)
    return view_of(season, used)


def view_of(season: CropSeason, used: Inputs) -> YieldView:
    """The same from what was read."""
    facts = season.facts
    return YieldView(
        crop=season.crop,
        cultivar=season.cultivar,
        as_of=season.as_of,
        age=season.age,
        milestones=milestones_seen(season),
        maturity=maturity(season),
        facts=facts,
        used=used,
        figures=explain_facts(facts) + explain_ratios(facts, used),
        forecast_fruit=season.forecast_fruit,
        forecast_grams=season.forecast_grams,
        fruit_set=season.fruit_set,
        coming=season.coming,
        notes=facts.notes + season.notes,
    )


def begun(crop: Crop, day: date) -> None:
    """LogbookProblem where the crop begins later than a day."""
    if day < crop.day_zero:
        raise LogbookProblem(say("{crop} begins on {day}.", crop=crop.name, day=show_day(crop.day_zero)))
