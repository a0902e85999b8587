"""A crop as it stood on the evening of a day: what came later is not seen, and nothing stored is changed."""

from dataclasses import replace
from datetime import date
from typing import Any

from growlog.records.crop import Crop

_STATED = ("emerged_on", "first_flower_on", "first_pick_on", "cleared_on")


def known_on(crop: Crop, day: date) -> Crop:
    """The crop without dates that had not come on a day. To be shown, never to be written."""
    names = [*_STATED, "transplanted_on"] if crop.day_zero != crop.transplanted_on else list(_STATED)
    later: dict[str, Any] = {name: None for name in names if (stated := getattr(crop, name)) and stated > day}
    return replace(crop, **later) if later else crop
