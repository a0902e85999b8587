"""The forms of entries: one table of fields, one form, one dialog."""

from growlog.desktop.entry_form.dialog import EntryDialog
from growlog.desktop.entry_form.form import EntryForm

__all__ = ["EntryDialog", "EntryForm"]
