"""What the picks of a crop say: its dialog, and the reader behind the bands on the board."""
