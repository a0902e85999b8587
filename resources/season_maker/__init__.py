"""Makes the invented demo season: a small model of four plants, the entries a grower would write, and drawn photos."""
