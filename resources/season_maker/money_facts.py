"""What money is in the season: its currency, and what an hour, water and shop fruit are worth; all invented."""

CURRENCY = "EUR"
LABOUR_RATE_MINOR_PER_H = 500
WATER_PRICE_MINOR_PER_M3 = 420
SHOP_PRICE_MINOR_PER_KG = {"Boxroom Gold": 690, "Skylight Round": 690, "Landing Light": 1600, "Porch Violet": 450}
