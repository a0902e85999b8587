"""What the logbook remembers, as frozen dataclasses; validation is here and only here."""
