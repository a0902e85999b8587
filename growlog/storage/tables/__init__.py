"""The logbook's tables as typed models."""

from growlog.storage.tables import entries, history, money, plans, read_files, review, shelf, things
from growlog.storage.tables.base import Base

__all__ = ["Base", "entries", "history", "money", "plans", "read_files", "review", "shelf", "things"]
