"""Identities that stay the same on every run, so that the same season gives the same bytes."""

from uuid import UUID, uuid5

_NAMESPACE = UUID("5d0b1f6e-6c1b-4f0e-9a57-2f1f6f1b7c41")


def identity(*what: object) -> str:
    """The identity of what is named."""
    return str(uuid5(_NAMESPACE, "/".join(str(part) for part in what)))


def crop_id(name: str) -> str:
    """The identity of a crop."""
    return identity("crop", name)
