"""What figures are worked out from: a crop and its logbook as they were known on a day, each part read once."""

from dataclasses import dataclass
from datetime import date
from functools import cached_property

from growlog.calculations.light_programme import LightDay
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import YieldSoFar, yield_so_far
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar
from growlog.records.entry import Entry
from growlog.services.as_it_stood import known_on
from growlog.services.climate.of_crop import CropClimateDay, climate_days_of_crop
from growlog.services.entries import entries_of_crop
from growlog.services.light.programme import crop_light_days
from growlog.services.money.costs import CropCosts, crop_costs
from growlog.services.money.labour import LabourOfCrop, crop_labour
from growlog.services.picks import pick_points
from growlog.services.yield_view.season import CropSeason, season_of
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class FactSource:
    """A crop as of a day. unit: open as long as figures are worked out. Nothing entered for a later day is seen."""

    unit: UnitOfWork
    crop: Crop
    cultivar: Cultivar
    as_of: date

    @property
    def age(self) -> int:
        """The plant age on that day, or at clearing."""
        return age_on(self.crop.day_zero, min(self.as_of, self.crop.cleared_on or self.as_of))

    @cached_property
    def entries(self) -> list[Entry]:
        """The crop's entries, its plants', its rooms' and its tanks' up to that day."""
        return [e for e in entries_of_crop(self.unit, self.crop) if e.day <= self.as_of]

    @cached_property
    def total(self) -> YieldSoFar:
        """The yield so far."""
        return yield_so_far(pick_points(self.crop, self.entries))

    @cached_property
    def light(self) -> list[LightDay]:
        """The light of each day."""
        return crop_light_days(self.unit, self.crop, self.as_of)[0]

    @cached_property
    def climate(self) -> list[CropClimateDay]:
        """The climate of each day."""
        return climate_days_of_crop(self.unit, self.crop, self.as_of)

    @cached_property
    def costs(self) -> CropCosts:
        """Electricity and money."""
        return crop_costs(self.unit, self.crop, self.as_of)

    @cached_property
    def labour(self) -> LabourOfCrop:
        """Minutes by kind of work."""
        return crop_labour(self.unit, self.crop, self.as_of)

    @cached_property
    def season(self) -> CropSeason:
        """Picks, flowers and forecasts."""
        return season_of(self.unit, self.crop, self.cultivar, self.as_of)


def fact_source(unit: UnitOfWork, crop_id: str, as_of: date) -> FactSource:
    """The source of a crop's figures; LogbookProblem if the crop is not there."""
    crop = unit.crops.get(crop_id)
    return FactSource(unit, known_on(crop, as_of), unit.cultivars.get(crop.cultivar_id), as_of)
