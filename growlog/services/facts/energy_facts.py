"""The electricity of a crop."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.per_figures import explain_ratio
from growlog.records.money import money_of
from growlog.services.energy.meter import room_meter_checks
from growlog.services.facts.family import COMMON_PRACTICE, DEFINITION, FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.words import mark, say


def _work(source: FactSource) -> Iterator[Figure]:
    energy, as_of = source.costs.energy, source.as_of
    days = energy.days
    lamps = sum(d.room_day.lamps_kwh * d.share for d in days)
    devices = sum(d.room_day.devices_kwh * d.share for d in days)
    mean_share = sum(d.share for d in days) / len(days) if days else 0.0
    given = (Input("days", len(days), "d"), Input("mean share of the room", round(100 * mean_share, 4), "%"))
    method = say("Watts at the wall times the hours of programme and devices, day by day, times the crop's share of "
                 "the room on that day.")  # fmt: skip
    method = " ".join((method, *energy.notes))  # such as lamps without a programme, which count for nothing
    known = bool(days)
    for key, kwh in (("kwh", energy.kwh), ("kwh-lamps", lamps), ("kwh-devices", devices)):
        yield of_definition(key, kwh if known else None, "kWh", given, method, as_of, sure=Sure.ESTIMATE)
    day_count = Input("days", source.age + 1, "d")
    method = say("The crop's electricity over the days that it stood.")
    a_day = explain_ratio("kwh-per-day", Input("kwh", energy.kwh, "kWh"), day_count, "kWh/d", method, decimals=6,
                          estimate=True, as_of=as_of)  # fmt: skip
    yield a_day if known else replace(a_day, value=None)
    yield source.costs.per.kwh_per_kg
    yield _cost(source)
    yield _meter(source)


def _cost(source: FactSource) -> Figure:
    energy = source.costs.energy
    priced = sum(d.cost is not None for d in energy.days)
    given = (Input("kwh", round(energy.kwh, 6), "kWh"), Input("days with a tariff", priced, "d"),
             Input("days", len(energy.days), "d"))  # fmt: skip
    method = say("Each day's kWh in each band of its tariff times the band's price, with the daily charge, times the "
                 "crop's share, rounded to the smallest coin.")  # fmt: skip
    cost = energy.cost
    value = None if cost is None else money_of(cost, energy.currency).amount
    return of_definition("energy-cost", value, energy.currency, given, method, source.as_of, sure=Sure.ESTIMATE)


def _meter(source: FactSource) -> Figure:
    rooms = list(dict.fromkeys(d.room_id for d in source.costs.energy.days))
    checks = [c for room in rooms for c in room_meter_checks(source.unit, room, source.as_of) if not c.problem]
    metered, estimated = sum(c.meter_kwh for c in checks), sum(c.estimate_kwh for c in checks)
    given = (Input("meter", round(metered, 6), "kWh"), Input("estimate", round(estimated, 6), "kWh"))
    method = say("By how much the estimate of the crop's rooms lies above what their meters counted between readings.")
    value = 100 * (estimated - metered) / metered if metered > 0 else None
    return of_definition("meter-difference", value, "%", given, method, source.as_of,
                         source=DEFINITION if checks else COMMON_PRACTICE)  # fmt: skip


ENERGY_FACTS = FactFamily(
    "energy",
    mark("Electricity"),
    (
        FactKey("kwh", "kWh", mark("The crop's share of the room's electricity")),
        FactKey("kwh-lamps", "kWh", mark("That of the lamps")),
        FactKey("kwh-devices", "kWh", mark("That of fans, pumps and other devices")),
        FactKey("kwh-per-day", "kWh/d", mark("Electricity a day")),
        FactKey("kwh-per-kg", "kWh/kg", mark("Electricity for a kg of marketable fruit")),
        FactKey("energy-cost", "", mark("Cost of the electricity")),
        FactKey("meter-difference", "%", mark("The estimate against the meter")),
    ),
    _work,
)
