"""Care of a tank: topping up by mass balance, its record, what the plants took up, and the pH learned."""

from growlog.calculations.tank import Tank
from growlog.services.tank_care.ph_learned import PhLearnedView, ph_learned
from growlog.services.tank_care.top_up import TopUpAsked, TopUpProposal, care_of, log_tank_care, top_up_proposal
from growlog.services.tank_care.uptake import (
    TankReading,
    UptakeView,
    latest_uptake,
    tank_readings,
    uptake_between,
    uptake_of,
)

__all__ = [
    "PhLearnedView",
    "Tank",
    "TankReading",
    "TopUpAsked",
    "TopUpProposal",
    "UptakeView",
    "care_of",
    "latest_uptake",
    "log_tank_care",
    "ph_learned",
    "tank_readings",
    "top_up_proposal",
    "uptake_between",
    "uptake_of",
]
