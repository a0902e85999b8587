"""The season's records beside its entries and photos: logbook, room, mixes, crops and where they stood."""

from datetime import date, timedelta

from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.logbook import LogbookFacts
from growlog.records.recipe import Mix, MixPart
from growlog.records.room import Lamp, Room

from . import scenario
from .identity import identity
from .scenario import CropPlan
from .season import Season
from .seed_packets import PACKETS

CALCIUM_PART = "Concentrate A (calcium)"
SULFATE_PART = "Concentrate B (sulfate, phosphate)"
ROOM_ID = identity("room")


def facts_of(season: Season) -> LogbookFacts:
    """The logbook itself: named as its room, without a currency."""
    return LogbookFacts(identity("logbook"), season.room.name)


def room_of(season: Season) -> Room:
    """The box room."""
    return Room(ROOM_ID, season.room.name, season.room.floor_m2, "UTC")


def lamp_of(season: Season) -> Lamp:
    """The lamps, with the watts that a meter at the wall shows."""
    lamps, first = season.room.lamps, season.light_steps[0]
    return Lamp(
        identity("lamp"),
        ROOM_ID,
        "Lamp over the crops",
        lamp_count=lamps.count,
        wall_w=lamps.watts_each,
        efficacy_umol_per_j=lamps.efficacy_umol_per_j,
        from_day=first.from_day,
    )


def mix_id(name: str) -> str:
    """The identity of a mix."""
    return identity("mix", name)


def mixes() -> tuple[Mix, ...]:
    """Both strengths of the feed. Concentrates with calcium and with sulfate or phosphate stay apart."""
    return tuple(
        Mix(
            mix_id(mix.name),
            mix.name,
            1,
            (MixPart(CALCIUM_PART, mix.dose_a_ml_per_l), MixPart(SULFATE_PART, mix.dose_b_ml_per_l)),
            "A first, stirred in, then B: undiluted they would fall out of solution",
        )
        for mix in (scenario.WEAK_MIX, scenario.FULL_MIX)
    )


def cultivar_of(plan: CropPlan) -> Cultivar:
    """What the packet says."""
    packet = PACKETS[plan.name]
    return Cultivar(
        identity("cultivar", plan.name),
        plan.species.value,
        plan.name,
        FloweringHabit(packet.habit),
        plan.packet_days,
        CountsFrom(plan.packet_counts_from),
        packet.about,
    )


def crop_id(name: str) -> str:
    """The identity of a crop."""
    return identity("crop", name)


def crop_of(plan: CropPlan) -> Crop:
    """The crop with all its dates; first flower and first pick are left to be read from the entries."""
    packet = PACKETS[plan.name]
    transplanted = None if plan.transplanted_at_age is None else plan.day(plan.transplanted_at_age)
    return Crop(
        crop_id(plan.name),
        plan.name,
        identity("cultivar", plan.name),
        sown_on=plan.sown,
        emerged_on=plan.day(plan.emerges_at_age),
        transplanted_on=transplanted,
        planned_clearing_on=packet.planned_clearing_on,
        cleared_on=plan.ends if plan.cleared else None,
        medium="coir",
        system="pot, fed by hand, drain thrown away",
        container_l=plan.pot(plan.last_age).volume_l,
        seed_lot=packet.seed_lot,
        seeds_sown=packet.seeds_sown,
        seeds_emerged=packet.seeds_emerged,
        trying=packet.trying,
    )


def plant_of(plan: CropPlan) -> Plant:
    """The one plant that was kept."""
    return Plant(identity("plant", plan.name), crop_id(plan.name), "1", plan.sown)


def placements_of(plan: CropPlan) -> list[Placement]:
    """Its shares of the floor one after another; a growing crop's last one is open."""
    starts = [plan.day(place.from_age) for place in plan.placements]
    ends: list[date | None] = [start - timedelta(days=1) for start in starts[1:]]
    ends.append(plan.ends if plan.cleared else None)
    return [
        Placement(
            identity("placement", plan.name, start.isoformat()),
            crop_id(plan.name),
            ROOM_ID,
            start,
            end,
            floor_share=place.floor_share,
        )
        for place, start, end in zip(plan.placements, starts, ends, strict=True)
    ]
