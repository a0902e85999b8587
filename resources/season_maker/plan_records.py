"""What was planned: the feeds of each crop by plant age, and the lamps of the room by day."""

from statistics import median

from growlog.records.feed_plan import FeedStep
from growlog.records.light_plan import LightStep

from .events import Feed
from .identity import crop_id, identity
from .room_records import ROOM_ID, mix_id
from .season import CropSeason, Season

_WHY = {"A + B 2.0 mL/L": "Young plants", "A + B 3.0 mL/L": "From here on at full strength"}


def feed_steps(season: Season) -> tuple[FeedStep, ...]:
    """A step for each mix, from the first feed with it; the grower kept to the plan."""
    return tuple(step for crop in season.crops for step in _feed_steps(crop))


def _feed_steps(crop: CropSeason) -> list[FeedStep]:
    feeds: dict[str, list[Feed]] = {}
    for event in crop.events:
        if isinstance(event, Feed):
            feeds.setdefault(event.mix, []).append(event)
    name = crop.plan.name
    return [
        FeedStep(
            identity("feed step", name, mix),
            crop_id(name),
            (given[0].day - crop.plan.sown).days,
            mix_id(mix),
            volume_l=round(median(feed.volume_l for feed in given), 1),
            note=_WHY[mix],
        )
        for mix, given in feeds.items()
    ]


def light_steps(season: Season) -> tuple[LightStep, ...]:
    """The programme of the lamps; the light changes of the same days are what was then measured."""
    return tuple(
        LightStep(
            identity("light step", step.from_day.isoformat()),
            ROOM_ID,
            step.from_day,
            photoperiod_h=float(step.hours_on),
            on_at=step.on_at,
            dimming_percent=float(step.dimming_percent),
            canopy_ppfd_umol=float(step.ppfd_umol_m2_s),
            note=step.why[:1].upper() + step.why[1:],
        )
        for step in season.light_steps
    )
