"""Identities of stock moves, which sort by the moment they were written.

A count and a use of one day give another level in another order, and a move has no time of day. Files are written in
the order of day and identity, so that moves come back in the order they were made. Source: RFC 9562 (2024), UUID
version 7.
"""

import uuid
from datetime import datetime

_RANDOM_BITS = 80


def move_id(now: datetime) -> str:
    """A new identity for a move written now (UTC)."""
    value = int(now.timestamp() * 1000) << _RANDOM_BITS | uuid.uuid4().int & (1 << _RANDOM_BITS) - 1
    value = value & ~(0xF << 76) | 7 << 76  # the version
    return str(uuid.UUID(int=value & ~(0x3 << 62) | 0x2 << 62))  # and the variant
