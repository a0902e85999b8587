"""How the fruit of the cleared crops were, and what was decided about growing one of them again."""

from dataclasses import dataclass
from datetime import date

from growlog.records.decision import Decision, QuotedFigure, Verdict

from .identity import crop_id, identity


@dataclass(frozen=True)
class Quality:
    """The grower's words on the fruit."""

    taste: str = ""
    fruit_shape: str = ""
    keeping: str = ""


QUALITIES = {
    "Boxroom Gold": Quality(
        taste="very good, nutty; best below 9 cm",
        fruit_shape="flat and even, a few one-sided",
        keeping="fair, five days in the cold",
    ),
    "Skylight Round": Quality(
        taste="good, milder",
        fruit_shape="round; lopsided where a leaf leaned on them",
        keeping="good, nine days in the cold",
    ),
}
UNKNOWN = Quality()
DECIDED_ON = date(2025, 11, 2)


# As the logbook showed them on the day of the decision.
FIGURES = (
    QuotedFigure("fruit-count", "Marketable fruit picked", "46"),
    QuotedFigure("yield-weight", "Weight of the marketable fruit", "3391\u2009g"),
    QuotedFigure("mean-fruit-weight", "Mean weight of a weighed fruit", "73.72\u2009g"),
    QuotedFigure("first-pick-age", "Plant age of the first pick", "44\u2009d"),
    QuotedFigure("kwh-per-kg", "Electricity for a kg of marketable fruit", "45.57\u2009kWh/kg"),
    QuotedFigure("cost-per-kg", "Cost of a kg of marketable fruit", "40.84\u2009EUR/kg"),
)


def decisions() -> tuple[Decision, ...]:
    """The verdict on Skylight Round, the day after it was cleared."""
    return (
        Decision(
            identity("decision", "Skylight Round"),
            crop_id("Skylight Round"),
            DECIDED_ON,
            Verdict.REGROW_WITH_CHANGES,
            reasons="Sets without a hand and gave from early September on; the taste is mild and the last weeks "
            "brought little for the light they took",
            changes="Clear it at 85 days, and tie the leaves back before they lean on the fruit",
            figures=FIGURES,
        ),
    )
