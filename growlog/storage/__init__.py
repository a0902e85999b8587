"""The logbook's database. The only place that knows SQLAlchemy and SQLite."""
