"""The answer of a calculation that has too little to go on: a sentence instead of a figure."""

from dataclasses import dataclass


@dataclass(frozen=True)
class NotYet:
    """Why there is no figure, in a sentence for the grower."""

    reason: str
