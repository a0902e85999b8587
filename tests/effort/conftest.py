"""The person at the real window, as in the journeys."""

from tests.journeys.conftest import person

__all__ = ["person"]
