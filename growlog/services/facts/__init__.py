"""Every computed figure of a crop, each with how it is worked out, in families that register their keys."""
