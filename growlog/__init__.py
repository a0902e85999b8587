"""Growing-room Logbook: a crop under lamps from seed to clearing, in one place."""

__version__ = "0.1.0"
