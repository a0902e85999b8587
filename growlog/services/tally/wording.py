"""A tally in a few words: what was done at a crop, and where the minutes went."""

from collections.abc import Iterable

from growlog.calculations.yield_curve import YieldSoFar
from growlog.records.display import weight
from growlog.records.entry import FruitCheck
from growlog.services.tally.crop_tally import CropTally
from growlog.words import say, say_count


def crop_line(crop: CropTally) -> str:
    """What was done at a crop, such as "2 picked, 171 g; 2 pollinated"; "" if nothing."""
    leaves = say_count("{n} old leaf off", "{n} old leaves off", crop.old_leaves_removed)
    shoots = say_count("{n} side shoot off", "{n} side shoots off", crop.side_shoots_removed)
    parts = (
        _picked(crop),
        say("{n} culled", n=crop.culled_count) if crop.culls else "",
        say("{n} pollinated", n=crop.females_pollinated) if crop.females_pollinated else "",
        say_count("{n} truss vibrated", "{n} trusses vibrated", crop.trusses_vibrated) if crop.trusses_vibrated else "",
        say_count("{n} male open", "{n} males open", crop.males_open) if crop.males_open else "",
        leaves if crop.old_leaves_removed else "",
        shoots if crop.side_shoots_removed else "",
        say("fruit check") if crop.fruit_check != FruitCheck() else "",
        say("note") if crop.note.strip() else "",
        minutes_text(crop.minutes * 60) if crop.minutes else "",
    )
    return "; ".join(p for p in parts if p)


def running_line(crop: CropTally) -> str:
    """The pick as it runs: "2 fruit, 171 g, mean 86 g"."""
    if not crop.fruit:
        return say("No fruit yet")
    count = say_count("{n} fruit", "{n} fruit", len(crop.fruit))
    if crop.mean_g is None:
        return say("{count}, not weighed", count=count)
    weighed = say("{count}, {total}, mean {mean}", count=count, total=weight(crop.total_g), mean=weight(crop.mean_g))
    if not crop.unweighed_count:
        return weighed
    return say("{line} ({n} of them not weighed)", line=weighed, n=crop.unweighed_count)


def so_far_line(so_far: YieldSoFar) -> str:
    """The crop before this session: "crop so far 14 fruit, 1.20 kg"."""
    if not so_far.fruit_count:
        return say("nothing picked before")
    count = say_count("{n} fruit", "{n} fruit", so_far.fruit_count)
    if not so_far.weight_g:
        return say("crop so far {count}", count=count)
    line = mark_estimate(weight(so_far.weight_g), so_far.estimated_g > 0)
    return say("crop so far {count}, {weight}", count=count, weight=line)


def mark_estimate(text: str, is_estimate: bool) -> str:
    """A weight, said to be about so much where part of it was never on a scale."""
    return say("about {weight}", weight=text) if is_estimate else text


def minutes_line(crops: Iterable[tuple[str, CropTally]], here: str, left_over_s: int | None) -> str:
    """Where the minutes went: "8 min here, 3 min Landing Light, 1:40 not given to a crop". crops: with their names."""
    parts = [
        say("{minutes} here", minutes=minutes_text(c.minutes * 60))
        if c.crop_id == here
        else f"{minutes_text(c.minutes * 60)} {name}"
        for name, c in crops
        if c.minutes
    ]
    if left_over_s is not None and left_over_s > 0:
        parts.append(say("{minutes} not given to a crop", minutes=minutes_text(left_over_s)))
    elif left_over_s is not None and left_over_s < 0:
        parts.append(say("{minutes} more than was measured", minutes=minutes_text(-left_over_s)))
    return ", ".join(parts)


def minutes_text(seconds: int) -> str:
    """Whole minutes as "8 min", others as minutes and seconds "1:40", hours as "13 h 20 min"."""
    minutes, rest = divmod(seconds, 60)
    if minutes >= 60:
        return say("{hours} h {minutes} min", hours=minutes // 60, minutes=minutes % 60)
    return f"{minutes}:{rest:02d}" if rest else say("{n} min", n=minutes)


def _picked(crop: CropTally) -> str:
    if not crop.fruit:
        return ""
    count = say("{n} picked", n=len(crop.fruit))
    return f"{count}, {weight(crop.total_g)}" if crop.weights_g else count
