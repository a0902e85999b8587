"""Which photos were taken, when, and what the camera wrote into them."""

from dataclasses import dataclass
from datetime import date, datetime

from .drawing.space import Camera
from .growth_curves import organ_chance
from .plant_state import Species
from .scenario import CropPlan
from .times import at_about

EVENING_SHARE = 0.06
TURNED_SHARE = 0.05
NO_OFFSET_SHARE = 0.12


@dataclass(frozen=True)
class PhotoPlan:
    """One photo to be drawn. Orientation is the EXIF value; taken_at is the camera's wall clock."""

    crop: str
    age: int
    taken_at: datetime
    subsecond: str
    utc_offset: str  # "" where the camera kept none
    orientation: int
    camera: Camera

    @property
    def evening(self) -> bool:
        """After the day's pick, flowers closed."""
        return self.taken_at.hour >= 18


def plan_photos(plan: CropPlan, away: frozenset[date]) -> tuple[PhotoPlan, ...]:
    """The photos of one crop. A crop that was cleared has none on its last day."""
    return tuple(_plan_photo(plan, age, away) for age in photo_ages(plan, away))


def photo_ages(plan: CropPlan, away: frozenset[date]) -> list[int]:
    """Plant ages with a photo: every day but the missing ones, or about twice a week."""
    end = plan.last_age - 1 if plan.cleared else plan.last_age
    if plan.photo_every_days == 1:
        return [age for age in range(end + 1) if age not in plan.missing_photo_ages]
    ages, due = [], 0.0
    while round(due) <= end:
        ages.append(round(due))
        due += plan.photo_every_days
    moved = [age + 2 if plan.day(age) in away else age for age in ages]
    return sorted({*moved, end})


def _plan_photo(plan: CropPlan, age: int, away: frozenset[date]) -> PhotoPlan:
    chance = organ_chance(plan.name, "photo", age)
    day = plan.day(age)
    evening = chance.random() < EVENING_SHARE and age > 2
    at = at_about(18, 41, plan.name, "photo", age) if evening else at_about(8, 4, plan.name, "photo", age, spread_min=6)
    turned = chance.random() < TURNED_SHARE
    return PhotoPlan(
        crop=plan.name,
        age=age,
        taken_at=datetime.combine(day, at).replace(second=chance.randrange(60)),
        subsecond=f"{chance.randrange(1000):03d}",
        utc_offset="" if chance.random() < NO_OFFSET_SHARE else "+00:00",
        orientation=chance.choice((6, 8)) if turned else 1,
        camera=_camera(plan, age, evening),
    )


def _camera(plan: CropPlan, age: int, evening: bool) -> Camera:
    chance = organ_chance(plan.name, "camera", age)
    near = plan.transplanted_at_age is not None and age < plan.transplanted_at_age
    frame_cm, aim_cm, away_cm, above_cm = _stand(plan.species, near)
    hand = frame_cm / 77
    return Camera(
        frame_width_cm=frame_cm * (1 + chance.gauss(0, 0.0025)),
        aim_height_cm=aim_cm,
        distance_cm=away_cm,
        height_cm=above_cm,
        shift_x_cm=hand * chance.gauss(0, 0.22),
        shift_y_cm=hand * chance.gauss(0, 0.18),
        roll_deg=chance.gauss(0, 0.14),
        exposure=(0.95 if evening else 1.0) + chance.gauss(0, 0.014),
        warmth=(0.022 if evening else 0.0) + chance.gauss(0, 0.004),
        tint=0.004 + chance.gauss(0, 0.0025),
        noise_seed=chance.randrange(2**31),
    )


def _stand(species: Species, near: bool) -> tuple[float, float, float, float]:
    """Frame width, height aimed at, distance, height above the aim: the tripod's two places."""
    if near:
        return 21.0, 5.2, 85.0, 28.0
    return {
        Species.PATTYPAN: (77.0, 22.0, 170.0, 62.0),
        Species.CHILLI: (58.0, 15.0, 170.0, 62.0),
        Species.AUBERGINE: (62.0, 15.0, 170.0, 62.0),
    }[species]
