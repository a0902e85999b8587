"""The logbook's tables as typed models."""

from growlog.storage.tables import entries, history, things
from growlog.storage.tables.base import Base

__all__ = ["Base", "entries", "history", "things"]
