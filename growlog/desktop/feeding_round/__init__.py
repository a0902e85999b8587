"""The dialog of a feeding round."""
