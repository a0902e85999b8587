"""The dialog of tagged flowers."""
