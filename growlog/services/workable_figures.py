"""The figures that can be worked out one at a time, with what each takes."""

from collections.abc import Mapping
from typing import Any

from growlog.calculations import cost_explained, energy, lamp_light, light_needed, moist_air, plant_age
from growlog.calculations.degree_days import DegreeDayMethod, explain_degree_days
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.tariff import TariffBand
from growlog.records.money import decimals_of
from growlog.services import typed_values as typed
from growlog.services.typed_values import NotUnderstood, exact, quantity
from growlog.services.working_out import Parameter, Workable
from growlog.words import mark, say

Values = Mapping[str, Any]


def _float(key: str, unit: typed.Unit, *other_names: str, required: bool = True, default: str = "") -> Parameter:
    return Parameter(key, quantity(unit), unit, other_names, required and not default, default)


def _exact(key: str, unit: typed.Unit, *other_names: str, required: bool = True, default: str = "") -> Parameter:
    return Parameter(key, exact(unit), unit, other_names, required and not default, default)


def _other(key: str, read: typed.Reader, *other_names: str, required: bool = True, unit: str = "") -> Parameter:
    return Parameter(key, read, typed.Unit("", unit), other_names, required)


_HOURS = _float("hours", typed.HOURS, "photoperiod", "hours_per_day", "hours_a_day", "h")
_DAYS = _float("days", typed.DAYS, default="1")
_AIR = _float("temp_c", typed.CELSIUS, "temp", "temperature", "air", "air_temp", "air_temperature", "t")
_HUMIDITY = _other("humidity", typed.humidity, "rh", "relative_humidity", "humidity_percent", "rh_percent", unit="%")
_LAMP = _other("lamp", typed.words, "lamp_type", "type", "kind")
_WATTS = _float("watts", typed.WATTS, "power", "w", "power_w", "wall_w", "kw")
_FACTOR = _float("factor", typed.PLAIN, "lux_per_umol", "own_factor", required=False)
_CURRENCY = _other("currency", typed.words, required=False)
_COST_MONEY = (_other("price", typed.price, "tariff", "price_per_kwh", required=False), _CURRENCY)


def _degree_days(values: Values) -> Figure:
    temperatures = {key: values[key] for key in ("tmax", "tmin", "base", "ceiling") if key in values}
    units = {unit for _, unit in temperatures.values()}
    if "" in units and len(units) > 1:
        raise NotUnderstood(say("Write °C or °F behind each temperature, or behind none."))
    unit = temperatures["base"][1] or {"f": "degF", "°f": "degF"}.get(values.get("unit", "").casefold(), "degC")
    numbers = {key: _degrees(key, number, own, unit) for key, (number, own) in temperatures.items()}
    method = _method(values["method"])
    shown = "°F" if unit == "degF" else "°C"
    return explain_degree_days(
        method, numbers["tmax"], numbers["tmin"], numbers["base"], numbers.get("ceiling"), shown
    )  # fmt: skip


def _degrees(key: str, number: float, unit: str, wanted: str) -> float:
    return number if unit in ("", wanted) else round(typed.convert(key, number, unit, wanted), 9)


def _method(name: str) -> DegreeDayMethod:
    wanted = name.casefold().replace("_", "-").replace(" ", "-")
    alike = [m for m in DegreeDayMethod if wanted in (m.value, *m.value.split("-"))]
    if len(alike) != 1:
        known = ", ".join(DegreeDayMethod)
        raise NotUnderstood(say("There is no method {name}, only: {names}.", name=name, names=known))
    return alike[0]


def _wall_watts(values: Values) -> Figure:
    if "loss" in values:
        return energy.explain_wall_watts(values["watts"], values["loss"])
    if "lamp" not in values:
        raise NotUnderstood(say("Say what the ballast takes, such as loss=15%, or the lamp: lamp=hps."))
    return energy.explain_usual_wall_watts(lamp_light.lamp_key(values["lamp"]), values["watts"])


def _cost(values: Values) -> Figure:
    currency = values.get("currency", "").upper()
    money = (currency, decimals_of(currency))
    if "bands" in values:
        needed = [key for key in ("watts", "on_at", "hours") if key not in values]
        if needed or "price" in values or "kwh" in values:
            raise NotUnderstood(say("With bands, say watts, on_at, hours and days, and neither kwh nor price."))
        energy.energy_kwh(float(values["watts"]), float(values["hours"]), float(values["days"]))
        minutes = int((values["hours"] * 60).to_integral_value())
        return cost_explained.explain_cost_by_bands(
            values["watts"], values["on_at"], minutes, values["days"], values["bands"], *money
        )  # fmt: skip
    if "price" not in values:
        raise NotUnderstood(
            say("Say the price of a kWh, such as price=0.17, or bands=07:00-22:00@0.30,22:00-07:00@0.18.")
        )
    if "kwh" in values:
        return cost_explained.explain_cost(values["kwh"], values["price"], *money)
    if "watts" not in values or "hours" not in values:
        raise NotUnderstood(say("Say the kWh, or the watts with hours a day and days."))
    energy.energy_kwh(float(values["watts"]), float(values["hours"]), float(values["days"]))
    kwh = values["watts"] * values["hours"] * values["days"] / 1000
    return cost_explained.explain_cost(kwh, values["price"], *money)


def _bands(key: str, text: str, _ending: str) -> tuple[TariffBand, ...]:
    bands = []
    for part in text.split(","):
        hours, at, price = part.partition("@")
        start, dash, end = hours.partition("-")
        if not (at and dash):
            raise NotUnderstood(say("{part} is not a band. Write it as 22:00-07:00@0.18.", part=part))
        bands.append(
            TariffBand(typed.clock_time(key, start, ""), typed.clock_time(key, end, ""), typed.price(key, price, ""))
        )
    return tuple(bands)


def _in_unit(values: Values) -> Figure:
    number, unit = typed.number_and_unit("value", values["value"])
    unit = values.get("from", unit)
    if not unit:
        raise NotUnderstood(say("Write the unit behind the value, such as value=2gal."))
    result = typed.convert("value", float(number), unit, values["to"])
    given = (Input("value", float(number), unit), Input("to", values["to"]))
    method = say("The value times the factor between the two units; for temperatures, with the shift of zero too.")
    source = "Thompson, A. and Taylor, B. N. (2008) Guide for the use of the International System of Units, NIST SP 811"
    return Figure("unit", result, values["to"], given, method, source, Sure.PUBLISHED)


def _labour(values: Values) -> Figure:
    currency = values.get("currency", "").upper()
    return cost_explained.explain_labour_cost(values["minutes"], values["rate"], currency, decimals_of(currency))


def _per_fruit(values: Values) -> Figure:
    currency = values.get("currency", "").upper()
    return cost_explained.explain_cost_per_fruit(values["cost"], values["fruit"], currency, decimals_of(currency))


WORKABLES: tuple[Workable, ...] = (
    Workable("dli", mark("Daily light integral of lamps"), (_float("ppfd", typed.PPFD, "ppfd_umol"), _HOURS),
             lambda v: light_needed.explain_dli(v["ppfd"], v["hours"]), ("daily-light-integral",)),
    Workable("ppfd-needed", mark("Canopy light that gives a daily light integral"),
             (_float("dli", typed.DLI, "dli_mol"), _HOURS),
             lambda v: light_needed.explain_ppfd_needed(v["dli"], v["hours"]), ("ppfd", "ppfd-from-dli")),
    Workable("ppfd-from-lux", mark("Canopy light from lux, by kind of lamp"),
             (_float("lux", typed.LUX), _LAMP, _FACTOR),
             lambda v: lamp_light.explain_ppfd_from_lux(v["lux"], v["lamp"], v.get("factor"))),
    Workable("ppfd-from-foot-candles", mark("Canopy light from foot-candles, by kind of lamp"),
             (_float("foot_candles", typed.FOOT_CANDLES, "fc", "footcandles", "foot_candle"), _LAMP, _FACTOR),
             lambda v: lamp_light.explain_ppfd_from_foot_candles(v["foot_candles"], v["lamp"], v.get("factor")),
             ("ppfd-from-fc", "ppfd-from-footcandles")),
    Workable("ppfd-from-lamps", mark("Canopy light that lamps can give on a floor"),
             (_WATTS, _float("efficacy", typed.EFFICACY, "efficacy_umol_per_j"),
              _float("floor_m2", typed.AREA, "floor", "area"),
              _float("dimming", typed.PERCENT, "dimming_percent", default="100")),
             lambda v: light_needed.explain_ppfd_from_lamps(v["watts"], v["efficacy"], v["dimming"], v["floor_m2"])),
    Workable("vpd", mark("Vapour pressure deficit of the air"), (_AIR, _HUMIDITY),
             lambda v: moist_air.explain_vpd(v["temp_c"], v["humidity"]), ("vpd-air", "air-vpd")),
    Workable("vpd-leaf", mark("Vapour pressure deficit from leaf to air"),
             (_AIR, _float("leaf_c", typed.CELSIUS, "leaf", "leaf_temp", "leaf_temperature"), _HUMIDITY),
             lambda v: moist_air.explain_leaf_vpd(v["temp_c"], v["leaf_c"], v["humidity"]), ("leaf-vpd",)),
    Workable("dew-point", mark("Dew point"), (_AIR, _HUMIDITY),
             lambda v: moist_air.explain_dew_point(v["temp_c"], v["humidity"]), ("dewpoint",)),
    Workable("saturation-vapour-pressure", mark("Saturation vapour pressure"), (_AIR,),
             lambda v: moist_air.explain_saturation(v["temp_c"]), ("saturation-vapor-pressure", "svp", "es")),
    Workable("degree-days", mark("Degree days of a day"),
             (*(_other(k, typed.with_its_unit, *more, unit="°C, °F") for k, more in (
                 ("tmax", ("highest", "max", "high")), ("tmin", ("lowest", "min", "low")),
                 ("base", ("lower", "tbase")))),
              _other("ceiling", typed.with_its_unit, "upper", required=False, unit="°C, °F"),
              _other("method", typed.words), _other("unit", typed.words, required=False)),
             _degree_days, ("gdd", "growing-degree-days")),
    Workable("kwh", mark("Electricity that a device takes"), (_WATTS, _HOURS, _DAYS),
             lambda v: energy.explain_kwh(v["watts"], v["hours"], v["days"]), ("energy",)),
    Workable("cost", mark("Cost of electricity, at one price or by time of day"),
             (_exact("kwh", typed.KWH, "energy", required=False),
              _exact("watts", typed.WATTS, "power", "power_w", required=False),
              _other("on_at", typed.clock_time, "on", required=False, unit="hh:mm"),
              _exact("hours", typed.HOURS, "photoperiod", "hours_per_day", required=False),
              _exact("days", typed.DAYS, default="1"),
              _other("bands", _bands, required=False), *_COST_MONEY),
             _cost, ("energy-cost", "cost-of-kwh")),
    Workable("lamp-hours", mark("Hours that lamps were on"), (_HOURS, _float("days", typed.DAYS)),
             lambda v: energy.explain_lamp_hours(v["hours"], v["days"])),
    Workable("wall-watts", mark("Watts at the wall of a lamp with its ballast"),
             (_WATTS, _float("loss", typed.PERCENT, "ballast_loss", "loss_percent", required=False),
              _other("lamp", typed.words, "lamp_type", "type", "kind", required=False)),
             _wall_watts, ("ballast", "watts-at-the-wall", "ballast-watts")),
    Workable("plant-age", mark("Plant age"),
             (_other("sown", typed.civil_day, "sowing", "from", "day_zero"),
              _other("day", typed.civil_day, "on", "date", required=False)),
             lambda v: plant_age.explain_plant_age(v["sown"], v.get("day", v["today"])), ("age",)),
    Workable("labour-cost", mark("Cost of labour"),
             (_exact("minutes", typed.MINUTES, "time"), _other("rate", typed.price, unit="/h"), _CURRENCY), _labour),
    Workable("cost-per-fruit", mark("Cost of a fruit"),
             (_other("cost", typed.price), _other("fruit", typed.whole, "count"), _CURRENCY), _per_fruit),
    Workable("unit", mark("A value in another unit"),
             (_other("value", typed.words), _other("to", typed.words), _other("from", typed.words, required=False)),
             _in_unit, ("convert", "unit-conversion")),
)  # fmt: skip
