"""The light programme in words."""

from datetime import datetime, time, timedelta

from growlog.calculations.crop_light import UsualLight
from growlog.calculations.light_programme import LightDay
from growlog.records.display import THIN, fixed, plain
from growlog.services.light.plan_book import LitCrop
from growlog.words import say, show_number


def midnight_rule() -> str:
    """The rule for light past midnight."""
    return say(
        "Light that goes on past midnight belongs to the day on which the lamps go on; "
        "electricity is counted by the clock."
    )


def span_words(hours: float | None, on_at: time | None) -> str:
    """From when to when the lamps are on."""
    if hours is None:
        return ""
    if on_at is None:
        return say("{hours}, the time is not stated", hours=plain(hours, "h"))
    off = datetime(2001, 1, 1, on_at.hour, on_at.minute) + timedelta(hours=hours)  # noqa: DTZ001 - the wall clock
    if hours >= 24:
        return say("around the clock")
    words = say("{on} to {off}", on=f"{on_at:%H:%M}", off=f"{off:%H:%M}")
    return words if off.day == 1 else say("{span} on the next day", span=words)


def lit_words(lit: LitCrop) -> str:
    """A crop's light of today against its usual range."""
    if lit.today is None:
        return say("{crop}: nothing is known of its light today.", crop=lit.crop.name)
    return f"{lit.crop.name}: {day_words(lit.today)}{usual_words(lit.usual)}"


def day_words(light: LightDay) -> str:
    """A day's light: hours, light at the canopy, and the daily light integral with its range."""
    setting = light.setting
    parts = [plain(setting.photoperiod_h, "h")]
    if setting.canopy is not None:
        about = say("about {value}", value=fixed(setting.canopy.ppfd_umol, 0, "µmol/m²/s"))
        exact = fixed(setting.canopy.ppfd_umol, 0, "µmol/m²/s")
        parts.append(about if setting.canopy.way.is_estimate else exact)
    if light.dli_mol is None:
        parts.append(say("light at the canopy not known"))
    else:
        parts.append(dli_words(light))
    return ", ".join(parts)


def dli_words(light: LightDay) -> str:
    """The daily light integral with its range and how the canopy's light is known."""
    text = f"{show_number(light.dli_mol or 0, 1)}{THIN}mol/m²"
    canopy = light.setting.canopy
    if light.dli_low_mol is not None and light.dli_high_mol is not None:
        low, high = show_number(light.dli_low_mol, 1), show_number(light.dli_high_mol, 1)
        text = say("{value} ({low} to {high})", value=text, low=low, high=high)
    return text if canopy is None else f"{text}, {say(canopy.way.label)}"


def usual_words(usual: UsualLight | None) -> str:
    """The range to hold it against, with what it means and its source."""
    if usual is None:
        return ""
    low = show_number(usual.dli_low, 0)
    span = low if usual.dli_high is None else say("{low} to {high}", low=low, high=show_number(usual.dli_high, 0))
    values = {"meaning": say(usual.meaning), "span": span, "source": say(usual.source)}
    return "; " + say("{meaning} {span} mol/m² a day ({source})", **values)
