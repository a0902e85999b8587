"""The one way in which a calculation refuses a number that cannot be."""


def require(name: str, value: float, low: float, high: float, unit: str = "") -> None:
    """ValueError with name, value and allowed range where value is not within low to high (NaN never is)."""
    if not low <= value <= high:
        raise ValueError(f"{name} {value:g} is outside {low:g} to {high:g}{' ' if unit else ''}{unit}")


def require_above(name: str, value: float, low: float, high: float, unit: str = "") -> None:
    """As require, but low itself is refused too."""
    if not low < value <= high:
        raise ValueError(f"{name} {value:g} is outside above {low:g} to {high:g}{' ' if unit else ''}{unit}")
