"""What a crop costs: purchases, prices, tariffs, the meter, and the sums by kind."""
