"""All that the review says of one crop, read once as of a day: its own, and of each earlier crop beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from growlog.calculations.explained_figure import Figure
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.light_programme import LightDay
from growlog.calculations.milestones import PeakWeek, SeenAges, peak_week
from growlog.calculations.yield_curve import CurvePoint, PickPoint, cumulative_yield
from growlog.calculations.yield_facts import YieldFacts, YieldRatios, yield_ratios
from growlog.records.crop import Crop, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.entry import Entry, Feed, FruitCheck, Pollination
from growlog.records.recipe import Mix
from growlog.services.board import packet_age_of
from growlog.services.facts.climate_facts import CLIMATE_FACTS
from growlog.services.facts.crop_facts import CROP_FACTS
from growlog.services.facts.energy_facts import ENERGY_FACTS
from growlog.services.facts.family import FactFamily
from growlog.services.facts.labour_facts import LABOUR_FACTS
from growlog.services.facts.light_facts import LIGHT_FACTS
from growlog.services.facts.money_facts import MONEY_FACTS
from growlog.services.facts.source import FactSource, fact_source
from growlog.services.facts.yield_facts import YIELD_FACTS
from growlog.services.flower_tags import tag_stories
from growlog.services.money.costs import CropCosts
from growlog.services.money.labour import LabourOfCrop
from growlog.services.money.whose import Placed
from growlog.services.yield_view.milestones_seen import seen_ages
from growlog.services.yield_view.used import used_so_far
from growlog.storage.unit_of_work import UnitOfWork

# Forecasts are no part of a review, and take long.
_FAMILIES: tuple[FactFamily, ...] = (
    CROP_FACTS, YIELD_FACTS, LIGHT_FACTS, CLIMATE_FACTS, ENERGY_FACTS, MONEY_FACTS, LABOUR_FACTS,
)  # fmt: skip


@dataclass(frozen=True)
class CropFigures:
    """A crop as of a day. age: days since day 0, at clearing the last. figures: by their keys.

    entries: its own and those of room and tank that count for it. shares: how much of a feed is the crop's, by the
    entry's id. floor_m2: the floor that it stood on last, None where it is not known.
    """

    crop: Crop
    cultivar: Cultivar
    as_of: date
    age: int
    entries: tuple[Entry, ...]
    figures: Mapping[str, Figure]
    facts: YieldFacts
    ratios: YieldRatios
    picks: tuple[PickPoint, ...]
    seen: SeenAges
    fruit_set: FruitSet | None
    peak: PeakWeek | None
    costs: CropCosts
    labour: LabourOfCrop
    light: tuple[LightDay, ...]
    mixes: Mapping[str, Mix]
    plants: tuple[Plant, ...]
    rooms: tuple[str, ...]
    floor_m2: float | None
    packet_age: int | None
    days_to_pick: tuple[int, ...]
    shares: Mapping[str, float]

    @property
    def currency(self) -> str:
        """The logbook's, "" where none is named."""
        return self.costs.currency

    @property
    def curve(self) -> tuple[CurvePoint, ...]:
        """The cumulative yield."""
        return tuple(cumulative_yield(self.picks))

    def figure(self, key: str) -> Figure | None:
        """A figure that has a value."""
        found = self.figures.get(key)
        return found if found is not None and found.value is not None else None

    def number(self, key: str) -> float | None:
        """The value of a figure as a number."""
        found = self.figure(key)
        return None if found is None or isinstance(found.value, str) else float(found.value or 0)

    def of_kind(self, kind: str) -> list[Entry]:
        """The entries of a kind, in the order of the days."""
        return [e for e in self.entries if e.kind == kind]

    def age_of(self, day: date) -> int:
        """The plant age on a day."""
        return (day - self.crop.day_zero).days

    @property
    def flowers_pollinated(self) -> int:
        """Females pollinated by hand."""
        return sum(d.females_pollinated or 0 for d in self.pollinations)

    @property
    def pollinations(self) -> list[Pollination]:
        """Rounds of pollination."""
        return [e.detail for e in self.entries if isinstance(e.detail, Pollination)]

    @property
    def fruit_checks(self) -> list[FruitCheck]:
        """Looks at flowers and fruitlets."""
        return [e.detail for e in self.entries if isinstance(e.detail, FruitCheck)]

    @property
    def feeds(self) -> list[Feed]:
        """Feeds and plain water."""
        return [e.detail for e in self.entries if isinstance(e.detail, Feed)]

    @property
    def litres(self) -> float:
        """The crop's part of the volume of its feeds."""
        return sum((feed.volume_l or 0.0) * share for feed, share in self.shared_feeds)

    @property
    def shared_feeds(self) -> list[tuple[Feed, float]]:
        """Each feed with the crop's part of it."""
        return [(e.detail, self.shares.get(e.id, 1.0)) for e in self.entries if isinstance(e.detail, Feed)]


def crop_figures(unit: UnitOfWork, crop_id: str, as_of: date) -> CropFigures:
    """A crop as it could be known on a day, day 0 or later; LogbookProblem if it is not there."""
    source = fact_source(unit, crop_id, as_of)
    crop, season = source.crop, source.season
    used = used_so_far(unit, season, source.costs)
    placed = Placed.of(unit)
    stories, _ = tag_stories(source.entries)
    fruit_set = season.fruit_set
    return CropFigures(
        crop=crop,
        cultivar=source.cultivar,
        as_of=as_of,
        age=source.age,
        entries=tuple(source.entries),
        figures={figure.key: figure for family in _FAMILIES for figure in family.work(source)},
        facts=season.facts,
        ratios=yield_ratios(season.facts, used),
        picks=tuple(season.points),
        seen=seen_ages(season),
        fruit_set=fruit_set if isinstance(fruit_set, FruitSet) else None,
        peak=peak_week(season.points),
        costs=source.costs,
        labour=source.labour,
        light=tuple(source.light),
        mixes={m.id: m for m in unit.mixes.all(removed=True)},
        plants=tuple(season.plants),
        rooms=_rooms(unit, source),
        floor_m2=used.floor_m2,
        packet_age=packet_age_of(crop, source.cultivar),
        days_to_pick=tuple(s.days_to_pick for s in stories if s.days_to_pick is not None),
        shares={e.id: placed.share(crop, e) for e in source.entries if isinstance(e.detail, Feed)},
    )


def _rooms(unit: UnitOfWork, source: FactSource) -> tuple[str, ...]:
    """The names of the rooms that it stood in, in order."""
    placements = sorted(unit.placements.all(crop_id=source.crop.id), key=lambda p: p.from_day)
    rooms = {r.id: r.name for r in unit.rooms.all(removed=True)}
    stood = [p.room_id for p in placements if p.from_day <= source.as_of]
    return tuple(dict.fromkeys(rooms[id_] for id_ in stood if id_ in rooms))
