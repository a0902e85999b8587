"""All that the light programme's dialog shows, read in one go so that it can be read off the window's thread."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.crop_light import UsualLight, usual_light
from growlog.calculations.light_programme import LightDay
from growlog.records.crop import Crop
from growlog.records.room import Room
from growlog.services.light.programme import crop_light_days
from growlog.services.light.statements import standing_in, stands
from growlog.services.light.steps import LightStepView, light_steps_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.rooms import RoomView, rooms_of


@dataclass(frozen=True)
class LitCrop:
    """A crop in the room today, with its light of today (None: not known) and the questions about all its days."""

    crop: Crop
    today: LightDay | None
    usual: UsualLight | None
    questions: tuple[str, ...]


@dataclass(frozen=True)
class LightPlanBook:
    """A room's light programme. crops: all that stand or stood in it. lit: those that stand there today."""

    today: date
    rooms: tuple[Room, ...]
    view: RoomView | None
    steps: tuple[LightStepView, ...]
    crops: tuple[Crop, ...]
    lit: tuple[LitCrop, ...]


def light_plan_book(log: OpenLogbook, room_id: str = "") -> LightPlanBook:
    """The programme of a room, the first one if none is named; may take a tenth of a second."""
    today = log.today()
    views = rooms_of(log)
    rooms = tuple(view.room for view in views)
    view = next((v for v in views if v.room.id == room_id), views[0] if views else None)
    if view is None:
        return LightPlanBook(today, rooms, None, (), (), ())
    steps = tuple(light_steps_of(log, view.room.id))
    with log.unit() as unit:
        standing = standing_in(unit, view.room.id)
        crops = {crop.id: crop for crop, _ in standing}
        here = [crop for crop, placement in standing if stands(crop, placement, today)]
        lit = []
        for crop in here:
            days, questions = crop_light_days(unit, crop, today)
            usual = next(iter(usual_light(unit.cultivars.get(crop.cultivar_id).species)), None)
            now = days[-1] if days and days[-1].day == today else None
            lit.append(LitCrop(crop, now, usual, tuple(questions)))
    ordered = sorted(crops.values(), key=lambda c: (c.cleared_on is not None, c.name.casefold()))
    return LightPlanBook(today, rooms, view, steps, tuple(ordered), tuple(lit))
