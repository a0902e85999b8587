"""The air that a crop stood in: its days, what is worth a warning, and degree days by a chosen method and base."""
