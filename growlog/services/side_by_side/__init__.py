"""Crops beside each other: their curves, their facts and their photos of the same age."""
