"""What was paid for, in cents of an invented household; nutrients are bought for the shelf and stand there."""

from datetime import date

from growlog.records.purchase import Purchase, PurchaseSort

from .identity import crop_id, identity

SUMMER, AUTUMN, WINTER = date(2025, 7, 26), date(2025, 10, 28), date(2025, 11, 14)


def purchases() -> tuple[Purchase, ...]:
    """Seed and medium of one crop each; pots, meters and scale serve many."""
    seed, medium = PurchaseSort.SEED, PurchaseSort.MEDIUM
    return (
        _of_crop("Pattypan seed, packet", SUMMER, seed, 320, "Skylight Round"),
        _of_crop("Aubergine seed, packet", date(2025, 12, 20), seed, 290, "Porch Violet"),
        _of_crop("Coir, 12 L", SUMMER, medium, 260, "Skylight Round"),
        _of_crop("Coir, 12 L", WINTER, medium, 260, "Boxroom Gold"),
        _of_crop("Coir, 7 L", AUTUMN, medium, 170, "Landing Light"),
        _of_crop("Coir, 7 L", date(2026, 1, 25), medium, 170, "Porch Violet"),
        _serving("Pots and saucers", SUMMER, PurchaseSort.CONTAINERS, 1840, life_crops=8),
        _serving("EC meter", SUMMER, PurchaseSort.GEAR, 3900, life_days=1095),
        _serving("pH meter", SUMMER, PurchaseSort.GEAR, 2900, life_days=730),
        _serving("Kitchen scale", SUMMER, PurchaseSort.GEAR, 1500, life_days=1825),
        _serving("Air logger", SUMMER, PurchaseSort.GEAR, 1900, life_days=1460),
        _serving("Fan", SUMMER, PurchaseSort.GEAR, 2400, life_days=1825),
        _serving("Heater", date(2025, 11, 1), PurchaseSort.GEAR, 3200, life_days=1825),
        _serving("Calibration solutions", date(2025, 8, 1), PurchaseSort.OTHER, 1250, life_days=365),
    )


def _of_crop(name: str, day: date, sort: PurchaseSort, price_minor: int, crop: str) -> Purchase:
    return Purchase(identity("purchase", name, crop), name, day, sort, price_minor, crop_id(crop))


def _serving(
    name: str, day: date, sort: PurchaseSort, price_minor: int,
    life_days: int | None = None, life_crops: int | None = None,
) -> Purchase:  # fmt: skip
    return Purchase(
        identity("purchase", name), name, day, sort, price_minor, life_days=life_days, life_crops=life_crops
    )
