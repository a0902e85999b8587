"""Crops for the list, as the services summarise them."""

from datetime import date

from growlog.calculations.yield_curve import PickPoint, cumulative_yield, first_pick_age, yield_so_far
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar, FloweringHabit
from growlog.services.crops import CropSummary


def summary(
    name: str,
    species: str = "pattypan",
    age_days: int = 112,
    cleared: bool = False,
    picks: tuple[PickPoint, ...] = (),
    first_flower_age: int | None = None,
) -> CropSummary:
    """A crop sown on 15 November 2025."""
    sown = date(2025, 11, 15)
    crop = Crop(f"id of {name}", name, "cultivar", sown_on=sown, cleared_on=date(2026, 3, 7) if cleared else None)
    cultivar = Cultivar("cultivar", species, name, FloweringHabit.SEPARATE)
    return CropSummary(
        crop, cultivar, age_days, 0, len(picks), yield_so_far(picks), tuple(cumulative_yield(picks)),
        first_flower_age, first_pick_age(picks),
    )  # fmt: skip
