"""The words by which columns of old notes are known: which heading means which field.

The lists are of our own making: words that growers write, common practice, no source.
"""

import re
import unicodedata

# Every word of a phrase must stand in the heading; the phrase with the most words wins, then the earlier one.
# A field "" is a column that is left out: it repeats or sums up what others state.
_PHRASES: tuple[tuple[str, str], ...] = (
    ("", "average|avg|mean|per plant|per fruit|yield per|rolling|week|weekday|weather|photo|picture|file|id|row|nr|no"),
    ("day", "date|day|when|datum|picked on|day of month|date time|datetime|timestamp|date picked|harvest date|"
     "log date"),
    ("at", "time|clock|hour|uhrzeit|time of day"),
    ("age", "age|day|plant age|das|day number|day no|day nr|days after sowing|days since sowing|days from seed|dap"),
    ("crop", "crop|crop name|cultivar|variety|plant name|plant"),
    ("note", "note|notes|remark|remarks|comment|comments|observation|memo|notiz"),
    ("labour_minutes", "labour|labor|minutes|work min|time spent|min spent|work minutes|labour min"),
    ("pick.total_weight_g", "weight|wt|total weight|"
     "picked g|pick g|harvest g|harvested g|yield|yield g|gram|kg|lb|oz|g|"
     "weight picked|harvest weight|fruit weight|mass|gewicht|total g|picked weight|harvest|"
     "picked lb|picked kg|picked oz"),
    ("pick.weight_g", "each|weight each|g each|fruit each|weight of each|weight of fruit|single weight|each g"),
    ("pick.weights_g", "weights|single weights|each weights|individual weights|fruit weights"),
    ("pick.fruit_count", "fruit|fruits|count|# fruit|number|number of fruit|no fruit|nr fruit|fruit count|picked|qty|"
     "quantity|how many|pieces|pcs|fruit picked|picked count|picked fruit|num fruit|harvested|pods|total fruit|#|"
     "picked number|picked nr|picked no|total picked|pick|anzahl|früchte"),
    ("pick.cull_count", "cull|culled|culls|rejected|discarded|thrown away|unmarketable|waste"),
    ("pick.cull_cause", "cull cause|cause|cause of cull|why culled|reason culled"),
    ("pick.culled_misshapen", "misshapen"),
    ("pick.culled_cracked", "cracked|split"),
    ("pick.culled_blossom-end-rot", "blossom end rot|ber"),
    ("pick.culled_oversize", "oversize|oversized"),
    ("pick.culled_damaged", "damaged"),
    ("feed.volume_l", "volume|feed volume|water given|litres|liters|l|ml|fed|feed|feed l|water l|watered|given|"
     "irrigation|gal|gallons|feed ml|water ml|amount fed|water"),
    ("feed.ec_ms_per_cm", "ec|feed ec|ec in|ec feed|input ec|ec given|conductivity|ec ms|tank ec"),
    ("feed.ph", "ph|feed ph|ph in|ph feed|input ph|ph given|tank ph"),
    ("feed.drain_l", "drain|runoff|run off|drain l|drain volume|runoff volume|runoff l|drain ml|runoff ml|leachate"),
    ("feed.drain_ec_ms_per_cm", "ec out|drain ec|runoff ec|run off ec|ec drain|ec runoff|leachate ec|output ec"),
    ("feed.drain_ph", "ph out|drain ph|runoff ph|run off ph|ph drain|ph runoff|leachate ph|output ph"),
    ("feed.strength_percent", "strength|feed strength|mix strength"),
    ("reading.air_temperature_c", "temp|temperature|room|air|°|air temp|air temperature|room temp|t air|"
     "room temperature|canopy temp|temperatur"),
    ("reading.relative_humidity_percent", "rh|humidity|relative humidity|hum|rh%|air humidity"),
    ("reading.solution_temperature_c", "water temp|solution temp|tank temp|water temperature|solution temperature|"
     "tank temperature|feed temp|reservoir temp|root temp"),
    ("reading.plant_height_cm", "height|plant height|hgt|tall"),
    ("reading.container_weight_g", "pot weight|container weight|weight of pot|pot kg|pot g"),
    ("reading.canopy_ppfd_umol", "ppfd|canopy ppfd|par|µmol|umol|canopy light"),
    ("reading.canopy_lux", "lux|lx|canopy lux"),
    ("training.old_leaves_removed", "leaves removed|leaves off|old leaves|leaf removed|defoliated|leaves"),
    ("training.side_shoots_removed", "side shoots|sideshoots|side shoots removed|suckers|shoots removed|"
     "suckers removed"),
    ("training.shoots_stopped", "stopped|tips stopped|shoots stopped|topped|pinched|growing tips"),
    ("training.stems_tied", "tied|stems tied|tied in"),
    ("training.plants_staked", "staked|plants staked"),
    ("pollination.females_pollinated", "pollinated|females pollinated|pollinations|hand pollinated|flowers pollinated|"
     "female pollinated|# pollinated|pollination"),
    ("pollination.males_open", "males|males open|male flowers|male open|male flowers open"),
    ("pollination.trusses_vibrated", "vibrated|trusses vibrated|trusses|shaken|trusses shaken"),
    ("fruit-check.females_open", "females|females open|female flowers|female flowers open|flowers open|open flowers"),
    ("fruit-check.fruit_set", "set|fruit set|fruits set|# set"),
    ("fruit-check.dropped", "dropped|fruit dropped|aborted|fell|fallen|fruit aborted"),
    ("fruit-check.thinned", "thinned|fruit thinned"),
    ("fruit-check.hanging", "hanging|fruit hanging|fruits hanging|on plant|fruit on plant|fruit left"),
    ("stage.codes", "stage|growth stage|bbch|bbch code"),
    ("problem.name", "problem|pest|disease|problem seen|pests|issue|issues|disorder"),
    ("problem.severity", "severity|problem severity"),
    ("treatment.product", "treatment|sprayed|product|treated with|spray|applied"),
    ("treatment.target", "against|target|treated against"),
    ("treatment.dose", "dose|treatment dose|spray dose"),
    ("treatment.harvest_interval_days", "phi|harvest interval|days to harvest"),
    ("light.photoperiod_h", "photoperiod|hours of light|light hours|light h|lamp hours|hours light"),
    ("light.dimming_percent", "dimming|dimmer|lamp output|light output"),
    ("potting-on.container_l", "pot size|container size|potted into|pot l|container l"),
    ("potting-on.medium", "medium|potting mix|substrate"),
    ("calibration.reading_before", "read before|meter before"),
    ("calibration.reference_value", "reference|reference value|buffer"),
)  # fmt: skip
_CUMULATIVE = ("total", "cum", "cumulative", "cumul", "running", "sum", "so far", "to date", "ytd")
_WORD = re.compile(r"[^\W_]+|[#%°]")


def words_of(heading: str) -> frozenset[str]:
    """The words of a heading, case-folded, without accents' variants, a plural's s off words of some length."""
    plain = unicodedata.normalize("NFKC", heading).casefold().replace("μ", "µ")
    return frozenset(_singular(word) for word in _WORD.findall(plain))


def fields_meant(heading: str) -> list[tuple[int, str]]:
    """What a heading may mean: score and field, best first; no more than the fields whose phrase it holds."""
    words = words_of(heading)
    found: dict[str, int] = {}
    for field, phrases in _SPLIT:
        for phrase in phrases:
            if phrase <= words:
                # Words beyond the phrase make the guess weaker, so that "weight" alone beats "pot weight".
                score = len(phrase) * 10 - len(words - phrase)
                found[field] = max(score, found.get(field, -99))
    return sorted(((score, field) for field, score in found.items()), key=lambda pair: -pair[0])


def sounds_cumulative(heading: str) -> bool:
    """Whether a heading speaks of a sum so far."""
    words = words_of(heading)
    return any(words_of(phrase) <= words for phrase in _CUMULATIVE)


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 2 and word.endswith("s") and not word.endswith("ss") else word


_SPLIT = tuple((field, tuple(words_of(p) for p in phrases.split("|"))) for field, phrases in _PHRASES)
