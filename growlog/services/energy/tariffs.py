"""What a kWh costs, from when on."""

from datetime import date, time

from growlog.records.change import Change
from growlog.records.problems import Problem, refuse
from growlog.records.tariff import Tariff, TariffBand
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


def tariffs_of(log: OpenLogbook) -> list[Tariff]:
    """All tariffs in the order in which they begin."""
    with log.unit() as unit:
        return sorted(unit.tariffs.all(), key=lambda t: t.from_day)


def new_tariff(day: date, price_per_kwh: str = "") -> Tariff:
    """A tariff with one price for the whole day, not yet written."""
    return Tariff(new_id(), say("Tariff"), day, (TariffBand(time(0), time(0), price_per_kwh),))


def check_tariff(log: OpenLogbook, tariff: Tariff) -> list[Problem]:
    """All that is wrong with a tariff, beside the others too. Writes nothing."""
    with log.unit() as unit:
        return tariff.problems() + _clashes(unit, tariff)


def save_tariff(log: OpenLogbook, tariff: Tariff) -> Change:
    """Writes a tariff, new or changed; RecordRefused where another begins on the same day."""
    group = new_id()
    with log.unit() as unit:
        refuse(tariff.problems() + _clashes(unit, tariff))
        if unit.tariffs.find(tariff.id) is None:
            unit.add(group, tariff)
        else:
            unit.change(group, tariff)
        unit.commit()
    return Change(group, say("Save {name}", name=tariff.name), (tariff.id,), None)


def remove_tariff(log: OpenLogbook, tariff: Tariff) -> Change:
    """Puts a tariff into the bin."""
    group = new_id()
    with log.unit() as unit:
        unit.remove(group, tariff)
        unit.commit()
    return Change(group, say("Remove {name}", name=tariff.name), (tariff.id,), None)


def _clashes(unit: UnitOfWork, tariff: Tariff) -> list[Problem]:
    """A tariff runs until the next one begins, so two overlap only where they begin on one day."""
    for other in unit.tariffs.all(from_day=tariff.from_day):
        if other.id != tariff.id:
            sentence = say("{name} begins on {day} too, and two tariffs cannot hold at once. Choose another day, or "
                           "change that one.", name=other.name, day=show_day(other.from_day))  # fmt: skip
            return [Problem("from_day", sentence)]
    return []
