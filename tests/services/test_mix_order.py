"""The steps at the tank."""

from growlog.calculations.products import LIQUID, SOLID, Product
from growlog.services.mix_order import Portion, order_steps

SILICATE = Product("silicate", LIQUID, "w/v", {"sio2": 10, "k2o": 5})
CALCIUM = Product("calcium part", LIQUID, "w/v", {"n_nitrate": 4, "ca": 5})
SALT = Product("sulfate", SOLID, "w/w", {"mg": 9.8, "s": 13})
ACID = Product("acid", LIQUID, "w/v", {"n_nitrate": 8})


def test_each_goes_in_in_its_turn_whatever_the_order_asked() -> None:
    steps = order_steps([Portion(p, 5.0, "mL") for p in (ACID, SALT, CALCIUM, SILICATE)], 100)
    assert [next((n for n in ("silicate", "calcium", "sulfate", "acid") if n in s), "") for s in steps] == [
        "",
        "silicate",
        "calcium",
        "sulfate",
        "",
        "acid",
    ]
    assert steps[0] == "Fill 90\u2009L of water."
    assert steps[4] == "Fill to 100\u2009L. Stir."
    assert "at most acid 5.0\u2009mL" in steps[5]


def test_one_product_alone_is_not_one_after_another_and_a_small_tank_is_not_full_at_once() -> None:
    steps = order_steps([Portion(CALCIUM, 1.5, "mL"), Portion(SALT, 1.0, "g")], 0.5)
    assert steps[0] == "Fill 0.45\u2009L of water."
    assert steps[2] == "sulfate 1.0\u2009g, dissolved first. Stir."
    assert steps[3] == "Fill to 0.5\u2009L. Stir."


def test_without_a_tank_there_are_no_amounts() -> None:
    steps = order_steps([Portion(CALCIUM, None, "mL")], None)
    assert steps[1] == "calcium part. Stir until even."
    assert "nine tenths" in steps[0]


def test_amounts_have_as_many_decimals_as_can_be_measured() -> None:
    amounts = [0.0123, 0.25, 3, 42.4, 60]
    assert [Portion(SALT, a, "g").words for a in amounts] == [
        f"sulfate {text}\u2009g" for text in ("0.012", "0.25", "3.0", "42.4", "60")
    ]
