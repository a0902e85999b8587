"""How a figure of the mixer is worked out: formula, source and certainty, kept beside what computes it."""

from dataclasses import dataclass

from growlog.words import say


@dataclass(frozen=True)
class Explanation:
    """formula: in words. source: author, title, year, or "common practice". certainty: how sure the figure is."""

    formula: str
    source: str
    certainty: str


def explain_elements() -> Explanation:
    """Behind mg/L of each element."""
    return Explanation(
        say(
            "Dose times content of each product, oxides turned into elements by atomic weights, all added up, and what"
            " the water brings. Per cent by weight is multiplied by the density, per cent in volume is g per 100 mL."
        ),
        "Prohaska, T. et al., Standard atomic weights of the elements 2021, 2022",
        say("As exact as the labels and the measuring."),
    )


def explain_ec() -> Explanation:
    """Behind the EC estimate."""
    return Explanation(
        say(
            "Each ion's conductivity at infinite dilution, slowed by the other ions, times its amount; calcium and"
            " magnesium that pair with sulfate carry nothing."
        ),
        "CRC Handbook of Chemistry and Physics, 95th edition, 2014; Appelo, C. A. J., Specific conductance: how to"
        " calculate, to use, and the pitfalls, 2010; Parkhurst, D. L. and Appelo, C. A. J., PHREEQC version 3, 2013",
        say("An estimate: 10 % either way, more where a label leaves ions out. The meter rules."),
    )


def explain_doses() -> Explanation:
    """Behind doses for a target."""
    return Explanation(
        say("Doses of 0 or more whose misses, each in per cent of its target, have the smallest sum of squares."),
        "Stark, P. B. and Parker, R. L., Bounded-variable least-squares: an algorithm and applications, 1995",
        say("The nearest that these products allow, not always near; what is missed stands beside it."),
    )
