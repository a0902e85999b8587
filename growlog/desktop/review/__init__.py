"""The crop review on the screen, and what is decided, asked and shared from it."""
