"""What is seen before a logbook is open."""

from growlog.desktop.welcome.welcome import Welcome

__all__ = ["Welcome"]
