"""Whose share of a room's energy it is: by floor, equally or by hand."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from growlog.records.change import Change
from growlog.records.crop import Crop, Placement
from growlog.records.problems import Problem, refuse
from growlog.records.room import EnergySharing
from growlog.services.light.statements import stands
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import floor_problems
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

Standing = Sequence[tuple[Crop, Placement]]


def shares_on(standing: Standing, sharing: EnergySharing, day: date) -> dict[str, float]:
    """The share of each crop that stands in a room on a day, 0 to 1 together.

    By floor, what no crop stands on is nobody's; crops without a stated share have the rest of the floor between them.
    By hand, a crop without a stated share has none.
    """
    here = {crop.id: placement for crop, placement in standing if stands(crop, placement, day)}
    if not here:
        return {}
    if sharing is EnergySharing.EQUALLY:
        return dict.fromkeys(here, 1 / len(here))
    if sharing is EnergySharing.BY_HAND:
        return {crop_id: p.energy_share or 0.0 for crop_id, p in here.items()}
    stated = {crop_id: p.floor_share for crop_id, p in here.items() if p.floor_share is not None}
    without = [crop_id for crop_id in here if crop_id not in stated]
    rest = max(0.0, 1 - sum(stated.values()))
    return stated | {crop_id: rest / len(without) for crop_id in without}


def energy_share_problems(unit: UnitOfWork, placement: Placement) -> list[Problem]:
    """A problem where shares by hand would at any time be more than all of the room's energy."""
    if not placement.energy_share:
        return []
    crops = {c.id: c for c in unit.crops.all()}
    others = [
        p
        for p in unit.placements.all(room_id=placement.room_id)
        if p.crop_id != placement.crop_id and p.crop_id in crops
    ]
    days = [placement.from_day, *(p.from_day for p in others if placement.covers(p.from_day))]
    taken = max(sum(p.energy_share or 0 for p in others if stands(crops[p.crop_id], p, day)) for day in days)
    if taken + placement.energy_share <= 1 + 1e-9:
        return []
    sentence = say("The other crops have {share} % of the energy already.", share=round(taken * 100))
    return [Problem("energy_share", sentence)]


def save_shares(log: OpenLogbook, placements: Sequence[Placement]) -> Change:
    """Writes changed floor and energy shares together; RecordRefused where either comes to more than the whole."""
    group = new_id()
    with log.unit() as unit:
        for placement in placements:
            current = unit.placements.get(placement.id)
            floor, energy = placement.floor_share, placement.energy_share
            unit.change(group, replace(current, version=placement.version, floor_share=floor, energy_share=energy))
        # Held against each other after all are written, so that one may give what another takes.
        for placement in placements:
            refuse(floor_problems(unit, placement) + energy_share_problems(unit, placement))
        unit.commit()
    ids = tuple(p.id for p in placements)
    return Change(group, say("Change the shares"), ids, None)
