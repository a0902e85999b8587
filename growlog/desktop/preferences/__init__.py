"""The person's preferences."""

from growlog.desktop.preferences.preferences_dialog import PreferencesDialog

__all__ = ["PreferencesDialog"]
