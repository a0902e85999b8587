"""Crops beside each other: curves, photos of the same age, and all facts in a table."""
