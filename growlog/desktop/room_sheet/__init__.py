"""The dialog of the room sheet."""
