"""Source waters of the grower, as analysed."""

from dataclasses import dataclass
from datetime import date, datetime

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import say

WATER_ELEMENTS = ("ca", "mg", "na", "cl", "so4", "k", "no3_n")
_QUANTITIES = ("ec_ms_per_cm", "ph", "alkalinity_mg_per_l_caco3")


@dataclass(frozen=True)
class SourceWater:
    """An analysis of source water; everything None is rain or reverse osmosis. mg/L of each, sulfate as SO4."""

    id: str
    name: str
    analysed_on: date | None = None
    ec_ms_per_cm: float | None = None
    ph: float | None = None
    alkalinity_mg_per_l_caco3: float | None = None
    ca_mg_per_l: float | None = None
    mg_mg_per_l: float | None = None
    na_mg_per_l: float | None = None
    cl_mg_per_l: float | None = None
    so4_mg_per_l: float | None = None
    k_mg_per_l: float | None = None
    no3_n_mg_per_l: float | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.name.strip() else [Problem("name", say("Give the water a name."))]
        found += check_line("name", self.name)
        for key in _QUANTITIES:
            found += check_quantity(key, getattr(self, key))
        for element in WATER_ELEMENTS:
            field = f"{element}_mg_per_l"
            found += check_quantity("water_mg_per_l", getattr(self, field), field)
        return found
