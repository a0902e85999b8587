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
_TOTAL = mark("a weight is more than 0 g, and more than this from one room in a day is a slip of the keys")


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
          mark("relative humidity runs from 0 to 100 %"), ask_below=5, decimals=1),
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
    Limit("total_weight_g", mark("Total weight"), "g", 0.1, 200000, _TOTAL, ask_above=20000, decimals=1),
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
    Limit("every_days", mark("Days between"), "d", 1, 366, mark("a routine comes again within a year"), whole=True),
    Limit("at_age", mark("Plant age"), "d", 0, 3650, mark("plant age counts from day 0"), ask_above=500, whole=True),
    Limit("label_percent", mark("Guaranteed analysis"), "%", 0, 100, mark("per cent run from 0 to 100"), decimals=3),
    Limit("density_g_per_ml", mark("Density"), "g/mL", 0.2, 4,
          mark("no product of a shelf is lighter or heavier"), ask_below=0.5, ask_above=2, decimals=3),
    Limit("maker_dose", mark("Dose of the label"), "", 0, 100000, mark("as the label states it"), decimals=2),
    Limit("label_max_per_l", mark("Highest dose of the label"), "", 0, 1000,
          mark("as the label states it"), ask_above=50, decimals=2),
    Limit("pack_amount", mark("Pack"), "", 0.1, 1000000, mark("a pack holds something"), decimals=1),
    Limit("pack_price_minor", mark("Price of a pack"), "", 0, 100000000, mark("a price is never negative"), whole=True),
    Limit("price_minor", mark("Price"), "", 0, 1000000000, mark("a price is never negative"), whole=True),
    Limit("stock_amount", mark("Amount"), "", 0, 10000000, mark("an amount is never negative"), decimals=1),
    Limit("alkalinity_mg_per_l_caco3", mark("Alkalinity"), "mg/L", 0, 2000,
          mark("no drinking water holds more"), ask_above=500, decimals=0),
    Limit("water_mg_per_l", mark("In the water"), "mg/L", 0, 20000,
          mark("no source water holds more"), ask_above=1000, decimals=1),
    Limit("water_share", mark("Share of the water"), "", 0.001, 1, mark("a share runs up to 1"), decimals=3),
    Limit("strength_percent", mark("Strength"), "%", 0, 400,
          mark("a feed is a few times its mix at most"), ask_above=200, decimals=0),
    Limit("volume_before_l", mark("In the tank before"), "L", 0, 5000, _VOLUME, ask_above=500, decimals=2),
    Limit("water_added_l", mark("Water added"), "L", 0, 5000, _VOLUME, ask_above=500, decimals=2),
    Limit("drained_l", mark("Let out"), "L", 0, 5000, _VOLUME, ask_above=500, decimals=2),
    Limit("ec_before_ms_per_cm", mark("EC before"), "mS/cm", 0, 20, _EC, ask_above=7, decimals=2),
    Limit("ec_after_ms_per_cm", mark("EC after"), "mS/cm", 0, 20, _EC, ask_above=5, decimals=2),
    Limit("ph_before", mark("pH before"), "", 0, 14, _PH, ask_below=3.5, ask_above=9, decimals=1),
    Limit("ph_after", mark("pH after"), "", 0, 14, _PH, ask_below=4.5, ask_above=7.5, decimals=1),
    Limit("tank_dose", mark("Added"), "", 0, 100000, mark("an amount is never negative"), ask_above=5000, decimals=2),
    Limit("meter_kwh", mark("Meter"), "kWh", 0, 100000000, mark("as the meter shows it"), decimals=1),
    Limit("canopy_lux", mark("Light at the canopy, lux"), "lx", 0, 200000,
          mark("full sun gives about 100 000"), ask_above=120000, decimals=0),
    Limit("ballast_loss_percent", mark("Loss in the ballast"), "%", 0, 60,
          mark("a ballast takes a part of the rated power"), ask_above=30, decimals=0),
    Limit("rated_life_h", mark("Rated life"), "h", 1, 200000, mark("as the maker states it"), decimals=0),
    Limit("device_w", mark("Power at the wall"), "W", 0, 25000, mark("as its plate states it"),
          ask_above=3600, decimals=1),
    Limit("hours_per_day", mark("Hours a day"), "h", 0, 24, mark("a day has 24 hours"), decimals=2),
    Limit("duty_percent", mark("Share of the time"), "%", 0, 100, mark("a share runs from 0 to 100 %"), decimals=0),
    Limit("energy_share", mark("Share of the energy"), "", 0, 1, mark("a share runs from 0 to 1"), decimals=2),
    Limit("labour_rate_minor_per_h", mark("Worth of an hour"), "", 0, 10000000,
          mark("a rate is never negative"), whole=True),
    Limit("water_price_minor_per_m3", mark("Price of water"), "", 0, 10000000,
          mark("a price is never negative"), whole=True),
    Limit("shop_price_minor_per_kg", mark("Shop price of a kilogram"), "", 0, 10000000,
          mark("a price is never negative"), whole=True),
    Limit("shop_price_minor_per_fruit", mark("Shop price of a fruit"), "", 0, 10000000,
          mark("a price is never negative"), whole=True),
    Limit("life_days", mark("Life in days"), "d", 1, 36500, mark("what serves less than a day is used up"), whole=True),
    Limit("life_crops", mark("Life in crops"), "", 1, 1000, mark("at least one"), whole=True),
)  # fmt: skip

LIMITS: dict[str, Limit] = {limit.key: limit for limit in _ALL}


def limit(key: str) -> Limit:
    """The limit of a field; KeyError for a field that has none (our mistake, not the user's)."""
    return LIMITS[key]
