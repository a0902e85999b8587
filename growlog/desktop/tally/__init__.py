"""The session tally: one dialog for "I have just been in the room"."""

from growlog.desktop.tally.session_tally import SessionTally

__all__ = ["SessionTally"]
