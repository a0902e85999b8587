"""The light programme of a room."""
