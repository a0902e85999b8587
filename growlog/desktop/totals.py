"""The lines of totals in the window's head and foot."""

from growlog.records.display import weight
from growlog.records.entry.wording import joined
from growlog.services.board import Board
from growlog.services.crops import CropSummary
from growlog.words import say, say_count


def counts_line(crops: list[CropSummary]) -> str:
    """How many crops grow and how many were cleared."""
    growing = sum(c.crop.growing for c in crops)
    cleared = len(crops) - growing
    if not crops:
        return ""
    return joined(
        say_count("{n} crop growing", "{n} crops growing", growing),
        say_count("{n} cleared", "{n} cleared", cleared) if cleared else "",
    )


def totals_line(board: Board) -> str:
    """The crop in one line: fruit, weight, first pick, labour."""
    total = board.total
    parts = [_fruit(board), _first_pick(board), _labour(board.labour_minutes)]
    if not total.fruit_count:
        parts = [say("no fruit yet"), _first_flower(board), _labour(board.labour_minutes)]
    return "; ".join(p for p in parts if p)


def _fruit(board: Board) -> str:
    total = board.total
    count = say("{n} fruit", n=total.fruit_count)
    if total.culled_count:
        count = say("{count} and {n} culled", count=count, n=total.culled_count)
    heavy = weight(total.weight_g)
    if total.estimated_g:
        heavy = say("about {weight}, {part} of it estimated", weight=heavy, part=weight(total.estimated_g))
    if total.unknown_count:
        heavy = say("not weighed")
    mean = "" if total.mean_fruit_g is None else say("{weight} each", weight=weight(round(total.mean_fruit_g)))
    return joined(count, heavy, mean)


def _first_pick(board: Board) -> str:
    return "" if board.first_pick_age is None else say("first pick day {age}", age=board.first_pick_age)


def _first_flower(board: Board) -> str:
    return "" if board.first_flower_age is None else say("first flower day {age}", age=board.first_flower_age)


def _labour(minutes: int) -> str:
    if not minutes:
        return ""
    hours, rest = divmod(minutes, 60)
    spent = f"{hours}\u2009h {rest}\u2009min" if hours else f"{rest}\u2009min"
    return say("labour {time}", time=spent)
