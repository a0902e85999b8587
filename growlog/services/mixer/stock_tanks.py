"""Whether a mix could stand as a concentrate in one stock tank."""

from growlog.calculations.clashes import precipitation_warnings
from growlog.calculations.nutrients import scaled
from growlog.calculations.products import Mixture
from growlog.services.mixer.bench import bench_of, content_of
from growlog.services.mixer.state import MixerState
from growlog.services.mixing import result_of
from growlog.services.open_logbook import OpenLogbook


def stock_tank_warnings(log: OpenLogbook, state: MixerState, times: float, ph: float | None = None) -> tuple[str, ...]:
    """Sentences on what would fall out if all doses stood together so many times (1 and more) as strong as the feed.

    ValueError outside, and for a state with problems.
    """
    if not 1 <= times < float("inf"):
        raise ValueError(f"times {times:g} is outside 1 and above")
    content = content_of(bench_of(log, state), state)
    found: Mixture = Mixture(result_of(content).nutrients_mg_per_l)
    return precipitation_warnings(scaled(found.nutrients_mg_per_l, times), ph)
