"""Readings of an air logger brought into a room."""
