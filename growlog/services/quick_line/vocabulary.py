"""The words of the quick line: what each means, longest phrase first. They are the trade's plain words."""

from dataclasses import dataclass
from enum import StrEnum

from growlog.records.entry import CullCause, PollinationWay


class Role(StrEnum):
    """What a phrase does in the line."""

    HEAD = "head"  # begins an entry of a kind
    COUNT = "count"  # what was counted; stands behind its number or before it
    LABEL = "label"  # what was measured; stands before its number or behind it
    CAUSE = "cause"  # why fruit was culled
    WAY = "way"  # how pollen was brought
    ECHO = "echo"  # repeats what the number before it was taken for
    CULL = "cull"
    DRAIN = "drain"
    TOTAL = "total"
    NOTE = "note"
    AT = "at"
    JOIN = "join"  # binds words together and means nothing by itself


@dataclass(frozen=True)
class Meaning:
    """A phrase's role; the kind and the field it speaks of, and a value that it states by itself."""

    role: Role
    kind: str = ""
    field: str = ""
    value: object = None


WITHIN = "within"  # a word that is clear only in an entry of its kind: twelve leaves may hang, or be removed

PHRASES: dict[str, Meaning] = {}


def _means(meaning: Meaning, *phrases: str) -> None:
    for phrase in phrases:
        PHRASES[phrase] = meaning


def _count(kind: str, field: str, *phrases: str) -> None:
    _means(Meaning(Role.COUNT, kind, field), *phrases)


def _label(kind: str, field: str, *phrases: str) -> None:
    _means(Meaning(Role.LABEL, kind, field), *phrases)


_means(Meaning(Role.HEAD, "pick", "fruit_count"), "pick", "picks", "picked", "picking", "harvest", "harvested")
_count("pick", "fruit_count", "fruit", "fruits", "fruit picked", "fruits picked", "marketable", "marketable fruit",
       "tomato", "tomatoes", "cucumber", "cucumbers", "pepper", "peppers", "chilli", "chillies", "aubergine",
       "aubergines", "courgette", "courgettes", "squash", "squashes", "pattypan", "pattypans")  # fmt: skip
_means(Meaning(Role.CULL, "pick"), "cull", "culls", "culled", "fruit culled", "unmarketable")
_means(Meaning(Role.CAUSE, "pick", value=CullCause.MISSHAPEN), "misshapen", "deformed")
_means(Meaning(Role.CAUSE, "pick", value=CullCause.BLOSSOM_END_ROT), "blossom end rot", "end rot", "ber")
_means(Meaning(Role.CAUSE, "pick", value=CullCause.CRACKED), "cracked", "split")
_means(Meaning(Role.CAUSE, "pick", value=CullCause.OVERSIZE), "oversize", "oversized", "too large")
_means(Meaning(Role.CAUSE, "pick", value=CullCause.DAMAGED), "damaged")
_means(Meaning(Role.TOTAL, "pick", "total_weight_g"), "total", "in total", "in all", "together", "altogether")

_means(Meaning(Role.HEAD, "feed", "volume_l"), "feed", "fed", "feeding", "nutrient solution")
_means(Meaning(Role.HEAD, "feed", "volume_l", True), "water", "watered", "plain water", "water only", "only water")
_means(Meaning(Role.DRAIN, "feed", "drain_l"), "drain", "drained", "runoff", "run off")
_label("feed", "ec_ms_per_cm", "ec")
_label("feed", "ph", "ph")
_label("feed", "strength_percent", "strength")

_means(Meaning(Role.HEAD, "pollination", "females_pollinated"), "pollinated", "pollinate", "pollination", "pollinating")
_count("pollination", "females_pollinated", "female", "females", "female pollinated", "females pollinated",
       "female flower", "female flowers", "female flowers pollinated", "female flower pollinated",
       "flower pollinated", "flowers pollinated")  # fmt: skip
_count("pollination", "males_open", "male", "males", "male open", "males open", "male flowers open",
       "open male", "open males", "open male flowers")  # fmt: skip
_count("pollination", "trusses_vibrated", "truss vibrated", "trusses vibrated", "vibrated", "truss shaken",
       "trusses shaken", "vibrated trusses")  # fmt: skip
_means(Meaning(Role.ECHO, "pollination", "females_pollinated"), "flower", "flowers")
_means(Meaning(Role.ECHO, "pollination", "trusses_vibrated"), "truss", "trusses", "flower truss", "flower trusses")
_means(Meaning(Role.WAY, "pollination", value=PollinationWay.BRUSH), "brush", "brushed")
_means(Meaning(Role.WAY, "pollination", value=PollinationWay.MALE_FLOWER), "male flower", "male flowers")
_means(Meaning(Role.WAY, "pollination", value=PollinationWay.SWAB), "swab", "cotton swab", "cotton bud")
_means(
    Meaning(Role.WAY, "pollination", value=PollinationWay.SHAKEN), "shaken", "shaking", "vibration", "shaken by hand"
)
_means(Meaning(Role.WAY, "pollination", value=PollinationWay.OTHER), "another way")

_means(Meaning(Role.HEAD, "training"), "training", "trained", "removed", "took off")
_count("training", "old_leaves_removed", "old leaf", "old leaves", "leaf removed", "leaves removed",
       "old leaf removed", "old leaves removed", "old leaves off", "leaves off")  # fmt: skip
_count("training", "side_shoots_removed", "side shoot", "side shoots", "sideshoot", "sideshoots", "side shoot removed",
       "side shoots removed", "side shoots off", "sideshoots removed")  # fmt: skip
_count("training", "shoots_stopped", "stopped", "tip stopped", "tips stopped", "growing tip stopped",
       "growing tips stopped", "shoot stopped", "shoots stopped")  # fmt: skip
_count("training", "stems_tied", "tied", "stem tied", "stems tied", "tie", "ties")
_count("training", "plants_staked", "staked", "plant staked", "plants staked", "stake", "stakes")
_means(Meaning(Role.ECHO, "training", "plants_staked"), "plant", "plants")
_means(
    Meaning(Role.ECHO, "training", "shoots_stopped"), "tip", "tips", "growing tip", "growing tips", "shoots", "shoot"
)
_means(Meaning(Role.ECHO, "training", "stems_tied"), "stem", "stems")
_means(Meaning(Role.COUNT, "training", "old_leaves_removed", WITHIN), "leaf", "leaves")

_label("reading", "air_temperature_c", "air", "air temperature", "air temp", "temperature", "temp", "room temperature")
_label("reading", "relative_humidity_percent", "humidity", "relative humidity", "rh")
_label("reading", "solution_temperature_c", "solution", "solution temperature", "solution temp", "water temperature",
       "water temp", "tank temperature", "feed temperature")  # fmt: skip
_label("reading", "plant_height_cm", "height", "plant height", "tall", "high")
_label("reading", "container_weight_g", "container", "container weight", "pot", "pot weight")
_label("reading", "canopy_ppfd_umol", "canopy", "canopy light", "ppfd", "light at the canopy", "canopy ppfd")
_label("reading", "canopy_lux", "lux", "canopy lux")
_means(Meaning(Role.HEAD, "reading"), "reading", "readings", "read")

_means(Meaning(Role.HEAD, "fruit-check"), "fruit check", "check", "checked", "fruit checked")
_count("fruit-check", "females_open", "females open", "female open", "open females", "female flowers open")
_count("fruit-check", "fruit_set", "set", "fruit set", "fruits set")
_count("fruit-check", "dropped", "dropped", "fruit dropped", "fruits dropped")
_count("fruit-check", "thinned", "thinned", "fruit thinned", "fruits thinned")
_count("fruit-check", "hanging", "hanging", "fruit hanging", "fruits hanging")

_means(Meaning(Role.HEAD, "stage", "codes"), "stage", "stages", "growth stage", "growth stages", "bbch", "bbch stage",
     "stage bbch", "growth stage bbch")  # fmt: skip
_means(Meaning(Role.NOTE, "note"), "note", "notes", "noted")
_label("", "labour_minutes", "labour", "labor", "work")
_means(Meaning(Role.AT), "at")
_means(Meaning(Role.JOIN), "and", "then", "also", "of", "with", "the", "a", "an", "by", "on", "in", "for", "from",
     "took", "taking", "plus", "was", "were", "is", "mix", "using", "weighing", "weighed", "gave", "given", "counted",
     "seen")  # fmt: skip

LONGEST_PHRASE = max(len(phrase.split()) for phrase in PHRASES)

MEASURES = {
    "volume_l": "volume",
    "drain_l": "volume",
    "ec_ms_per_cm": "ec",
    "drain_ec_ms_per_cm": "ec",
    "ph": "ph",
    "drain_ph": "ph",
    "strength_percent": "percent",
    "air_temperature_c": "temperature",
    "relative_humidity_percent": "percent",
    "solution_temperature_c": "temperature",
    "plant_height_cm": "length",
    "container_weight_g": "weight",
    "canopy_ppfd_umol": "ppfd",
    "canopy_lux": "illuminance",
    "labour_minutes": "duration",
    "total_weight_g": "weight",
}
NEEDS_UNIT = frozenset({"container_weight_g"})
DRAINED = {"volume_l": "drain_l", "ec_ms_per_cm": "drain_ec_ms_per_cm", "ph": "drain_ph"}


def key_of(words: list[str]) -> str:
    """Words as the table of phrases holds them: small letters, blanks for hyphens."""
    return " ".join(words).lower().replace("-", " ")
