"""What to write instead, where a number or a word was not understood."""

from growlog.services.quick_line.tokens import THREE_FIGURES, UNREADABLE, Token
from growlog.words import say


def number_hint(token: Token, in_feed: bool) -> str:
    """The way on for a number that was not understood, "" where there is none to give."""
    if token.trouble == THREE_FIGURES:
        return say("{number} can be read in two ways: write it without a mark for the thousands.", number=token.text)
    if token.trouble == UNREADABLE:
        return say("{number} is not a number. Write it as 25 or 25.5.", number=shortened(token.text))
    measure = token.unit.measure if token.unit is not None else ""
    return _measure_hint(measure, in_feed)


def _measure_hint(measure: str, in_feed: bool) -> str:
    hints = {
        "": say("Say what the number counts, such as fruit, females or old leaves; before single weights say picked."),
        "weight": say("Say picked, culled or container before a weight."),
        "volume": say("Say feed, water or drain before a volume."),
        "ec": say("Say feed, water or drain before EC and pH."),
        "temperature": say("Say air or solution before a temperature."),
        "length": say("Say height before a length."),
        "percent": say("Say humidity before per cent."),
    }
    return hints["temperature"] if in_feed and measure == "temperature" else hints.get(measure, "")


def word_hint(word: str) -> str:
    """The way on for some words that are often written."""
    known = {
        "ppm": say("ppm depends on the meter's scale: write the EC."),
        "cf": say("Write the EC in mS/cm: CF 19 is EC 1.9."),
        "today": say("The line is written for the day that is shown."),
        "yesterday": say("Go to the other day first: the line is written for the day that is shown."),
        "each": say("Write the weights one after the other, or the weight of all together."),
    }
    return known.get(word.lower(), "")


def missing_number(phrase: str) -> str:
    """A label without its number."""
    return say("The number for {word} is missing.", word=phrase)


def unit_needed(phrase: str) -> str:
    """A label whose number wants a unit."""
    return say("Write the unit behind the number for {word}.", word=phrase)


def already_said(phrase: str) -> str:
    """A value that is said twice."""
    return say("{word} is there already.", word=phrase)


def say_removed(phrase: str) -> str:
    """Leaves that may hang or be removed."""
    return say("Say removed behind {word}.", word=phrase)


def feed_first() -> str:
    """EC and pH without a feed."""
    return say("Say feed, water or drain before EC and pH.")


def clock_needed(number: str) -> str:
    """A time of day that could be anything."""
    return say("Write the time of day as {hour}:00.", hour=number)


def time_word() -> str:
    """What is called there already, where a time is said twice."""
    return say("The time of day")


def shortened(text: str, longest: int = 24) -> str:
    """A long word with an ellipsis, for a sentence."""
    return text if len(text) <= longest else text[: longest - 1] + "…"
