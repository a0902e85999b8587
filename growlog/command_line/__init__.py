"""The commands beside the window; they ask services only."""
