"""The season's records beside its entries and photos: logbook, room, mixes, crops and where they stood."""

from datetime import date, timedelta

from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.logbook import LogbookFacts
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.room import Lamp, Room

from . import scenario
from .identity import crop_id, identity
from .money_facts import CURRENCY, LABOUR_RATE_MINOR_PER_H, SHOP_PRICE_MINOR_PER_KG, WATER_PRICE_MINOR_PER_M3
from .quality import QUALITIES, UNKNOWN
from .scenario import CropPlan
from .season import Season
from .seed_packets import PACKETS
from .shelf_products import CALCIUM_PART, SULFATE_PART, WATER_ID, product_id

ROOM_ID = identity("room")
LAMP_LIFE_H, LAMP_PRICE_MINOR = 40_000.0, 14_900  # of one lamp


def facts_of(season: Season) -> LogbookFacts:
    """The logbook itself: named as its room, with its currency and what an hour and water are worth."""
    return LogbookFacts(
        identity("logbook"), season.room.name, CURRENCY, LABOUR_RATE_MINOR_PER_H, WATER_PRICE_MINOR_PER_M3
    )


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
        kind="white-led",
        rated_life_h=LAMP_LIFE_H,
        bulb_from_day=first.from_day,
        price_minor=LAMP_PRICE_MINOR,
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
            (_part(CALCIUM_PART, mix.dose_a_ml_per_l), _part(SULFATE_PART, mix.dose_b_ml_per_l)),
            "A first, stirred in, then B: undiluted they would fall out of solution",
            (WaterShare(WATER_ID, 1.0),),
        )
        for mix in (scenario.WEAK_MIX, scenario.FULL_MIX)
    )


def _part(product: str, dose_ml_per_l: float) -> MixPart:
    return MixPart(product, dose_ml_per_l, product_id=product_id(product))


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


def crop_of(plan: CropPlan) -> Crop:
    """The crop with all its dates; first flower and first pick are left to be read from the entries."""
    packet, quality = PACKETS[plan.name], QUALITIES.get(plan.name, UNKNOWN)
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
        taste=quality.taste,
        fruit_shape=quality.fruit_shape,
        keeping=quality.keeping,
        shop_price_minor_per_kg=SHOP_PRICE_MINOR_PER_KG[plan.name],
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
