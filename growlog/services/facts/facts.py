"""All figures of a crop, or one of them."""

from collections.abc import Sequence
from datetime import date

from growlog.calculations.explained_figure import Figure
from growlog.services.facts.families import FAMILIES
from growlog.services.facts.family import FactFamily, FactKey
from growlog.services.facts.source import fact_source
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import say, show_day


def facts_of(
    log: OpenLogbook, crop_id: str, as_of: date | None = None, families: Sequence[FactFamily] = FAMILIES
) -> list[Figure]:
    """Every figure of a crop as it could be known on a day, today if none is said, in the order of the families.

    LogbookProblem where the crop is not there, or was not yet sown on that day.
    """
    day = as_of or log.today()
    with log.unit() as unit:
        source = fact_source(unit, crop_id, day)
        if day < source.crop.day_zero:
            sentence = say("{crop} begins on {day}.", crop=source.crop.name, day=show_day(source.crop.day_zero))
            raise LogbookProblem(sentence)
        return [figure for family in families for figure in family.work(source)]


def fact_of(log: OpenLogbook, crop_id: str, key: str, as_of: date | None = None) -> Figure:
    """One figure of a crop; KeyError for a key that no family has."""
    family = next((f for f in FAMILIES if key in {k.key for k in f.keys}), None)
    if family is None:
        raise KeyError(key)
    return next(f for f in facts_of(log, crop_id, as_of, (family,)) if f.key == key)


def fact_keys(families: Sequence[FactFamily] = FAMILIES) -> list[tuple[FactFamily, FactKey]]:
    """Every key with its family, in order."""
    return [(family, key) for family in families for key in family.keys]
