"""The one table of limits: quantity, unit, range, reason, and the range outside which one is asked.

Records check against it, the database's CHECK constraints are made from it and forms show it.
"""

from dataclasses import dataclass

from growlog.words import mark


@dataclass(frozen=True)
class Limit:
    """Lowest and highest value that is accepted, and the narrower range that raises a question.

    key: the field's name everywhere. unit: as shown ("" for counts). decimals: as measured.
    whole: a count, never a fraction.
    """

    key: str
    label: str
    unit: str
    lowest: float
    highest: float
    reason: str
    ask_below: float | None = None
    ask_above: float | None = None
    decimals: int = 0
    whole: bool = False


_COUNT = mark("a count is never negative, and more than this in a day is a slip of the keys")
_VOLUME = mark("a volume is never negative, and no tank of a room holds more")
_EC = mark("a meter reads from 0, and a nutrient solution above this is not a feed")
_PH = mark("the pH scale of meters runs from 0 to 14")
_WEIGHT = mark("a weight is more than 0 g, and a kitchen scale ends here")


def _count(key: str, label: str, highest: int = 999) -> Limit:
    return Limit(key, label, "", 0, highest, _COUNT, whole=True)


_ALL = (
    Limit("volume_l", mark("Volume"), "L", 0, 2000, _VOLUME, ask_above=200, decimals=2),
    Limit("ec_ms_per_cm", mark("EC"), "mS/cm", 0, 20, _EC, ask_above=5, decimals=2),
    Limit("ph", mark("pH"), "", 0, 14, _PH, ask_below=4.5, ask_above=7.5, decimals=1),
    Limit("drain_l", mark("Drain"), "L", 0, 2000, _VOLUME, ask_above=200, decimals=2),
    Limit("drain_ec_ms_per_cm", mark("Drain EC"), "mS/cm", 0, 20, _EC, ask_above=7, decimals=2),
    Limit("drain_ph", mark("Drain pH"), "", 0, 14, _PH, ask_below=4.5, ask_above=7.5, decimals=1),
    Limit("air_temperature_c", mark("Air temperature"), "°C", -30, 60,
          mark("no room with plants is colder or hotter"), ask_below=5, ask_above=40, decimals=1),
    Limit("relative_humidity_percent", mark("Relative humidity"), "%", 0, 100,
          mark("relative humidity runs from 0 to 100 %"), ask_below=5, decimals=0),
    Limit("solution_temperature_c", mark("Solution temperature"), "°C", 0, 50,
          mark("a solution below 0 is ice and above 50 scalds roots"), ask_below=10, ask_above=30, decimals=1),
    Limit("plant_height_cm", mark("Plant height"), "cm", 0, 1000,
          mark("no plant in a room is taller"), ask_above=300, decimals=1),
    Limit("container_weight_g", mark("Container weight"), "g", 0, 500000,
          mark("a container that can be lifted weighs less"), ask_above=60000, decimals=0),
    Limit("canopy_ppfd_umol", mark("Light at the canopy"), "µmol/m²/s", 0, 3000,
          mark("full sun gives about 2000"), ask_above=1500, decimals=0),
    _count("old_leaves_removed", mark("Old leaves removed")),
    _count("side_shoots_removed", mark("Side shoots removed")),
    _count("shoots_stopped", mark("Growing tips stopped")),
    _count("stems_tied", mark("Stems tied")),
    _count("plants_staked", mark("Plants staked")),
    _count("females_pollinated", mark("Females pollinated")),
    _count("males_open", mark("Males open")),
    _count("trusses_vibrated", mark("Trusses vibrated")),
    _count("females_open", mark("Females open")),
    _count("fruit_set", mark("Set")),
    _count("dropped", mark("Dropped")),
    _count("thinned", mark("Thinned")),
    _count("hanging", mark("Fruit hanging")),
    _count("fruit_count", mark("Fruit"), 9999),
    Limit("total_weight_g", mark("Total weight"), "g", 0.1, 200000, _WEIGHT, ask_above=20000, decimals=1),
    Limit("weight_g", mark("Weight of a fruit"), "g", 0.1, 20000, _WEIGHT, ask_above=5000, decimals=1),
    Limit("cull_count", mark("Culled"), "", 1, 9999, mark("a cull is at least one fruit"), whole=True),
    Limit("severity", mark("Severity"), "", 1, 3, mark("1 slight, 2 moderate, 3 severe"), whole=True),
    Limit("re_entry_h", mark("Re-entry interval"), "h", 0, 720, mark("as the label states it"), decimals=0),
    Limit("harvest_interval_days", mark("Harvest interval"), "d", 0, 365,
          mark("as the label states it"), decimals=0, whole=True),
    Limit("photoperiod_h", mark("Hours of light"), "h", 0, 24, mark("a day has 24 hours"), decimals=2),
    Limit("dimming_percent", mark("Lamp output"), "%", 0, 100,
          mark("a lamp gives between nothing and its full light"), decimals=0),
    Limit("container_l", mark("Container"), "L", 0.01, 2000,
          mark("a container has a volume"), ask_above=200, decimals=2),
    Limit("reference_value", mark("Reference"), "", 0, 20, mark("as the reference's label states it"), decimals=2),
    Limit("reading_before", mark("Read before"), "", 0, 20, mark("as the meter showed it"), decimals=2),
    Limit("labour_minutes", mark("Labour"), "min", 0, 1440,
          mark("a day has 1440 minutes"), ask_above=480, decimals=0, whole=True),
    Limit("packet_days", mark("Days to maturity"), "d", 1, 400,
          mark("packets print between a few days and a year"), ask_below=20, ask_above=200, whole=True),
    Limit("seeds_sown", mark("Seeds sown"), "", 0, 9999, _COUNT, whole=True),
    Limit("seeds_emerged", mark("Emerged"), "", 0, 9999, _COUNT, whole=True),
    Limit("floor_m2", mark("Floor"), "m²", 0.01, 10000, mark("a room has a floor"), ask_above=200, decimals=2),
    Limit("floor_share", mark("Share of the floor"), "", 0, 1, mark("a share runs from 0 to 1"), decimals=2),
    Limit("tank_l", mark("Tank"), "L", 0.1, 5000, mark("a tank has a volume"), ask_above=500, decimals=1),
    Limit("rated_w", mark("Rated power"), "W", 0, 20000, mark("as the lamp's plate states it"),
          ask_above=2000, decimals=1),
    Limit("wall_w", mark("Power at the wall"), "W", 0, 25000, mark("as a meter at the wall shows it"),
          ask_above=2400, decimals=1),
    Limit("efficacy_umol_per_j", mark("Photon efficacy"), "µmol/J", 0, 6,
          mark("no lamp turns a joule into more photons"), ask_above=3.6, decimals=2),
    Limit("lamp_count", mark("Lamps"), "", 1, 200, mark("at least one"), whole=True),
    Limit("dose_per_l", mark("Dose"), "", 0, 200, mark("more is a concentrate, not a feed"), ask_above=20, decimals=2),
)  # fmt: skip

LIMITS: dict[str, Limit] = {limit.key: limit for limit in _ALL}


def limit(key: str) -> Limit:
    """The limit of a field; KeyError for a field that has none (our mistake, not the user's)."""
    return LIMITS[key]
