"""Entries as read before: a row that did not change need not be put together again."""

from growlog.records.entry import Entry

_MOST = 200_000  # some 100 MB; a logbook of a grower holds a few thousand a year


class EntryMemory:
    """Entries by identity and version. Each version is written once and never again, so what was read stays true.

    Only units that have written nothing may fill it: what they read is committed and cannot be rolled back.
    """

    def __init__(self) -> None:
        self._kept: dict[tuple[str, int], Entry] = {}

    def recall(self, entry_id: str, version: int) -> Entry | None:
        """The entry, None if it was not read yet."""
        return self._kept.get((entry_id, version))

    def keep(self, entries: list[Entry]) -> None:
        """Remembers entries as they were read."""
        if len(self._kept) + len(entries) > _MOST:
            self._kept.clear()
        self._kept.update({(e.id, e.version): e for e in entries})
