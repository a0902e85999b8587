"""Draws a plant state as a photo: surfaces in space, lit by a lamp above, painted from back to front."""
