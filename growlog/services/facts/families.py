"""The register of families. Another family of figures is one more line here."""

from growlog.services.facts.climate_facts import CLIMATE_FACTS
from growlog.services.facts.crop_facts import CROP_FACTS
from growlog.services.facts.energy_facts import ENERGY_FACTS
from growlog.services.facts.family import FactFamily
from growlog.services.facts.forecast_facts import FORECAST_FACTS
from growlog.services.facts.fruit_set_facts import FRUIT_SET_FACTS
from growlog.services.facts.keep_facts import KEEP_FACTS
from growlog.services.facts.labour_facts import LABOUR_FACTS
from growlog.services.facts.light_facts import LIGHT_FACTS
from growlog.services.facts.milestone_facts import MILESTONE_FACTS
from growlog.services.facts.money_facts import MONEY_FACTS
from growlog.services.facts.pick_facts import PICK_FACTS
from growlog.services.facts.yield_facts import YIELD_FACTS

FAMILIES: tuple[FactFamily, ...] = (
    CROP_FACTS,
    YIELD_FACTS,
    LIGHT_FACTS,
    CLIMATE_FACTS,
    ENERGY_FACTS,
    MONEY_FACTS,
    LABOUR_FACTS,
    MILESTONE_FACTS,
    PICK_FACTS,
    FRUIT_SET_FACTS,
    FORECAST_FACTS,
    KEEP_FACTS,
)
