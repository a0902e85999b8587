"""What the picks of a crop say: milestones, yield, fruit set, forecast, and whether it is worth its place."""
