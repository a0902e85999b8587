"""The nutrient mixer: what each bottle brings, what the tank holds, and what the meter will read."""

from growlog.desktop.mixer.mixer_dialog import MixerDialog

__all__ = ["MixerDialog"]
