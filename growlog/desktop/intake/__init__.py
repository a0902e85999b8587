"""The intake tray: photos on their way into the logbook."""

from growlog.desktop.intake.intake_tray import IntakeTray

__all__ = ["IntakeTray"]
