"""Electricity: what a room takes by day, whose share it is, what it costs, and whether the meter agrees."""
