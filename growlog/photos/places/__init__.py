"""Places taken out of picture files without touching a pixel: only the parts that can tell them are rewritten."""

from growlog.photos.places.taken_out import PlacesStay, without_places

__all__ = ["PlacesStay", "without_places"]
