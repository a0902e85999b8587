"""What the form of each kind of entry asks for: the one place where a new kind is added."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any

from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import PollinationWay, ProblemSort, TankWork
from growlog.records.entry.health import severity_word
from growlog.words import mark


class Sort(Enum):
    """Which editor a field has."""

    MEASURE = auto()  # a number of the table of limits
    WORDS = auto()
    TICK = auto()
    CHOICE = auto()  # from a list
    FEW = auto()  # a few words side by side
    TIME = auto()
    MIX = auto()
    WEIGHTS = auto()
    CULLS = auto()
    CODES = auto()
    TAGS = auto()
    TAGS_SEEN = auto()
    TAGGED = auto()
    LUX = auto()
    LAMP_KIND = auto()


@dataclass(frozen=True)
class FieldSpec:
    """A field of a detail. label "" takes the one of the table of limits. span: columns it takes.

    choices: pairs of key and words to be translated. none: words for no choice, "" where one must be chosen.
    hint: shown in the empty field. empty: what the record holds where nothing stands. read: from the editor's
    value to the record's, where they differ.
    """

    name: str
    sort: Sort = Sort.MEASURE
    label: str = ""
    span: int = 1
    choices: tuple[tuple[str, str], ...] = ()
    none: str = ""
    hint: str = ""
    empty: object = None
    read: Callable[[Any], Any] | None = None


@dataclass(frozen=True)
class KindForm:
    """The fields of a kind in their order, and the caution that stands above them.

    What an entry holds in a field that the form does not ask for stays as it is.
    """

    fields: tuple[FieldSpec, ...]
    caution: str = ""


_WAYS = tuple((way.value, way.label) for way in PollinationWay)
_WORKS = tuple((work.value, work.label) for work in TankWork)
_SORTS = tuple((sort.value, sort.label) for sort in ProblemSort)
_SEVERITIES = tuple((str(n), severity_word(n)) for n in (1, 2, 3))

_TREATMENT_CAUTION = mark(
    "Follow the product's label and your local rules, and wear the gloves it asks for. The re-entry and harvest "
    "intervals are those of the label."
)
_TANK_CAUTION = mark(
    "The product's label rules. Wear gloves and eye protection with acids and alkalis; pour them into water, never "
    "water into them, and never mix undiluted products."
)
_LAMP_CAUTION = mark(
    "Never look into a lamp that is on. Switch off at the mains before work on it; fixed wiring is for a licensed "
    "electrician."
)


def _measures(*names: str) -> tuple[FieldSpec, ...]:
    return tuple(FieldSpec(name) for name in names)


KIND_FORMS: dict[str, KindForm] = {
    "feed": KindForm((
        FieldSpec("mix_id", Sort.MIX, mark("Mix"), 2, none=mark("no mix stated")),
        FieldSpec("water_only", Sort.TICK, mark("Water only"), empty=False),
        *_measures(
            "volume_l", "ec_ms_per_cm", "ph", "drain_l", "drain_ec_ms_per_cm", "drain_ph", "strength_percent",
        ),
    )),
    "reading": KindForm((
        *_measures(
            "air_temperature_c", "relative_humidity_percent", "canopy_ppfd_umol",
            "solution_temperature_c", "plant_height_cm", "container_weight_g",
        ),
        FieldSpec("canopy_lux", Sort.LUX),
        FieldSpec(
            "lamp_kind", Sort.LAMP_KIND, mark("Under what lamps, with your own factor if you have one"), 2, empty=""
        ),
    )),
    "training": KindForm(_measures(
        "old_leaves_removed", "side_shoots_removed", "shoots_stopped", "stems_tied", "plants_staked",
    )),
    "pollination": KindForm((
        *_measures("females_pollinated", "males_open", "trusses_vibrated"),
        FieldSpec("way", Sort.CHOICE, mark("How"), choices=_WAYS, none=mark("not stated"), read=PollinationWay),
        FieldSpec("tags", Sort.TAGS, mark("Tags"), hint=mark("such as 11, 12"), empty=()),
    )),
    "fruit-check": KindForm((
        *_measures("females_open", "fruit_set", "dropped", "thinned", "hanging"),
        FieldSpec("tags_seen", Sort.TAGS_SEEN, span=3, empty=()),
    )),
    "pick": KindForm((
        FieldSpec("fruit_count", empty=0),
        FieldSpec("total_weight_g", hint=mark("not weighed"), span=2),
        FieldSpec("weights_g", Sort.WEIGHTS, mark("Fruit by fruit"), 3, empty=()),
        FieldSpec("culls", Sort.CULLS, mark("Culls"), 3, empty=()),
        FieldSpec("tagged", Sort.TAGGED, mark("Tags"), 3, empty=()),
    )),
    "stage": KindForm((FieldSpec("codes", Sort.CODES, mark("BBCH codes"), 3, empty=()),)),
    "problem": KindForm((
        FieldSpec("name", Sort.WORDS, mark("What was seen"), 2, hint=mark("a name or a description"), empty=""),
        FieldSpec("sort", Sort.CHOICE, mark("Sort"), choices=_SORTS, read=ProblemSort),
        FieldSpec("severity", Sort.FEW, mark("Severity"), 3, choices=_SEVERITIES, read=int),
    )),
    "treatment": KindForm((
        FieldSpec("product", Sort.WORDS, mark("What was applied"), 2, empty=""),
        FieldSpec("dose", Sort.WORDS, mark("Dose"), hint=mark("as the label states it"), empty=""),
        FieldSpec("target", Sort.WORDS, mark("Against"), empty=""),
        *_measures("re_entry_h", "harvest_interval_days"),
    ), _TREATMENT_CAUTION),
    "light": KindForm((
        FieldSpec("photoperiod_h"),
        FieldSpec("on_at", Sort.TIME, mark("Lamps on at")),
        *_measures("dimming_percent", "canopy_ppfd_umol"),
    ), _LAMP_CAUTION),
    "potting-on": KindForm((
        FieldSpec("container_l"),
        FieldSpec("medium", Sort.WORDS, mark("Medium"), 2, empty=""),
    )),
    "calibration": KindForm((
        FieldSpec("meter", Sort.CHOICE, mark("Meter"), choices=(("EC", mark("EC")), ("pH", mark("pH")))),
        *_measures("reference_value", "reading_before"),
    )),
    "tank-care": KindForm((
        FieldSpec("work", Sort.CHOICE, mark("What was done"), choices=_WORKS, read=TankWork),
        *_measures(
            "volume_before_l", "water_added_l", "drained_l", "ec_before_ms_per_cm", "ec_after_ms_per_cm",
            "ph_before", "ph_after",
        ),
    ), _TANK_CAUTION),
    "meter": KindForm((
        FieldSpec("meter_kwh"),
        FieldSpec("starts_anew", Sort.TICK, mark("Counting starts anew"), 2, empty=False),
    )),
    "note": KindForm(()),
}  # fmt: skip


def kind_form(kind: str, habit: FloweringHabit | None = None) -> KindForm:
    """The form of a kind; of a pollination, what the flowering habit counts stands first."""
    form = KIND_FORMS[kind]
    if kind != "pollination" or habit is not FloweringHabit.PERFECT:
        return form
    return KindForm(tuple(sorted(form.fields, key=_trusses_first)), form.caution)


def _trusses_first(spec: FieldSpec) -> int:
    return ("trusses_vibrated", "way").index(spec.name) if spec.name in ("trusses_vibrated", "way") else 2
