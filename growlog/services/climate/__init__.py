"""The air of a room: logger files brought in, days made of them, and what a crop stood in."""
