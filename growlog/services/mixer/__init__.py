"""The nutrient mixer: what is asked of it, what it shows, doses for a target, saving, and mix and log."""

from growlog.services.mixer.bench import Bench, bench_of
from growlog.services.mixer.guests import keep_guests
from growlog.services.mixer.lines import line_for
from growlog.services.mixer.mix_and_log import FeedTo, Mixed, mix_and_log, split_volume
from growlog.services.mixer.saving import file_of_state, save_state, state_of_file, state_of_mix
from growlog.services.mixer.shown import (
    BatchCost,
    DoseProposal,
    DoseView,
    EcView,
    ElementLine,
    LastReading,
    MixerView,
    Ratios,
    Standing,
    TargetView,
)
from growlog.services.mixer.solve import doses_at, doses_for, strength_at, strength_for_ec
from growlog.services.mixer.starting import starting_state
from growlog.services.mixer.state import (
    DoseWishes,
    MixerDose,
    MixerState,
    MixTarget,
    OwnTarget,
    PublishedTarget,
    Range,
    Target,
)
from growlog.services.mixer.stock_tanks import stock_tank_warnings
from growlog.services.mixer.targets import TargetOffer, offers_at, target_offers
from growlog.services.mixer.view import mixer_view, view_at

__all__ = [
    "BatchCost",
    "Bench",
    "DoseProposal",
    "DoseView",
    "DoseWishes",
    "EcView",
    "ElementLine",
    "FeedTo",
    "LastReading",
    "MixTarget",
    "Mixed",
    "MixerDose",
    "MixerState",
    "MixerView",
    "OwnTarget",
    "PublishedTarget",
    "Range",
    "Ratios",
    "Standing",
    "Target",
    "TargetOffer",
    "TargetView",
    "bench_of",
    "doses_at",
    "doses_for",
    "file_of_state",
    "keep_guests",
    "line_for",
    "mix_and_log",
    "mixer_view",
    "offers_at",
    "save_state",
    "split_volume",
    "starting_state",
    "state_of_file",
    "state_of_mix",
    "stock_tank_warnings",
    "strength_at",
    "strength_for_ec",
    "target_offers",
    "view_at",
]
