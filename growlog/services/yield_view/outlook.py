"""What the season board draws ahead of the day: coming picks and the fitted curve's band, without costs."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.coming_picks import ComingPicks
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_forecast import YieldForecast
from growlog.services.as_it_stood import known_on
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.season import season_of


@dataclass(frozen=True)
class Outlook:
    """A crop's coming picks and forecasts by count and by weight as of a day, each or why there is none."""

    crop_id: str
    as_of: date
    coming: ComingPicks | NotYet
    fruit: YieldForecast | NotYet
    grams: YieldForecast | NotYet

    @property
    def has_band(self) -> bool:
        """Whether there is anything to draw."""
        return not all(isinstance(part, NotYet) for part in (self.coming, self.fruit, self.grams))

    @property
    def last_age(self) -> int | None:
        """The last plant age that anything is said of."""
        ends = [f.to_age for f in (self.fruit, self.grams) if isinstance(f, YieldForecast)]
        if isinstance(self.coming, ComingPicks):
            ends.append(self.coming.days[-1].age)
        return max(ends, default=None)

    @property
    def sentence(self) -> str:
        """The coming picks in words, or why nothing is said of them."""
        return self.coming.sentence if isinstance(self.coming, ComingPicks) else self.coming.reason

    @property
    def reason(self) -> str:
        """Why no curve is drawn, "" where one is."""
        return self.fruit.reason if isinstance(self.fruit, NotYet) else ""


def outlook_of(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> Outlook:
    """The outlook of a crop on a day, today if none is said. Not for the window's thread."""
    day = as_of or log.today()
    with log.unit() as unit:
        crop = known_on(unit.crops.get(crop_id), day)
        season = season_of(unit, crop, unit.cultivars.get(crop.cultivar_id), day)
    return Outlook(crop_id, day, season.coming, season.forecast_fruit, season.forecast_grams)
