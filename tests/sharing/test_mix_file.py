"""Mix files: read, refused with the field, written and read again."""

import pytest

from growlog.calculations.products import LIQUID, Product
from growlog.calculations.water import Water
from growlog.sharing.mix_file import MixDose, MixFile, MixFileProblem, mix_text, parse_mix
from growlog.sharing.tables import table_rows

WHOLE = """
tank_l = 60
[water]
Ca = 40
SO4 = 30
N = 2
alkalinity_mg_per_l_caco3 = 100
[[product]]
name = "Leaf part"
form = "liquid"
basis = "w/w"
density_g_per_ml = 1.2
[product.analysis]
n_nitrate = 2
p2o5 = 3
[[dose]]
product = "Leaf part"
amount = 10
unit = "mL/gal_us"
"""


def test_a_file_gives_its_mix() -> None:
    mix = parse_mix(WHOLE)
    assert mix.tank_l == 60
    assert mix.products == (Product("Leaf part", LIQUID, "w/w", {"n_nitrate": 2, "p2o5": 3}, 1.2),)
    assert mix.doses == (MixDose("Leaf part", 10, "mL/gal_us"),)
    assert mix.water is not None
    assert mix.water.nutrients_mg_per_l == pytest.approx({"Ca": 40, "S": 30 * 0.33376, "NO3-N": 2}, rel=1e-4)


def test_a_written_mix_is_read_the_same() -> None:
    mix = MixFile(
        tank_l=50.5,
        water=Water({"Ca": 40.0, "NO3-N": 2.0}, 0.4, 7.5, 120.0),
        products=(Product('A "quoted"\tname\\', LIQUID, "w/v", {"k2o": 5.0}, None, 4.0), Product("bare")),
        doses=(MixDose("bare", 1.5, "g/tank"),),
        strength=0.5,
        ph=5.8,
        name="Weekday",
        smallest_ml=0.5,
        smallest_g=0.1,
    )
    assert parse_mix(mix_text(mix)) == mix
    target = MixFile(target_mg_per_l={"N": 100.0, "NH4-N": 5.0})
    assert parse_mix(mix_text(target)) == target


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("tank_l = ", ""),
        ('tank_l = "much"', "tank_l"),
        ("tank_l = nan", "tank_l"),
        ("[water]\nGold = 1", "water: Gold"),
        ("[water]\nCa = 1\nca = 2", "water: ca"),
        ('[[product]]\nname = "a"', "a: form"),
        ('[[product]]\nform = "solid"', "product: name"),
        ('[[product]]\nname = "a"\nform = "solid"\nanalysis = {gold = 1}', "a: gold"),
        ('[[dose]]\nproduct = "a"\nunit = "g/L"', "a: amount"),
        ("[target]\nGold = 1", "target: Gold"),
        ("product = 3", "product"),
        ("water = 3", "water"),
    ],
)
def test_an_unreadable_file_names_the_field(text: str, field: str) -> None:
    with pytest.raises(MixFileProblem) as caught:
        parse_mix(text)
    assert caught.value.field == field
    assert str(caught.value)


def test_capitals_do_not_matter() -> None:
    product = '[[product]]\nname = "a"\nform = "Liquid"\nbasis = "W/V"\nanalysis = {P2O5 = 3, N_nitrate = 2}\n'
    mix = parse_mix(product + "[water]\nca = 40\nhco3 = 61.02\nno3-n = 3\n[target]\nca = 100\n")
    assert mix.products == (Product("a", LIQUID, "w/v", {"p2o5": 3, "n_nitrate": 2}),)
    assert mix.water is not None
    assert mix.water.nutrients_mg_per_l == {"Ca": 40, "NO3-N": 3}
    assert mix.target_mg_per_l == {"Ca": 100}


def test_words_that_mean_nothing_are_kept_to_be_told() -> None:
    assert parse_mix('colour = "red"\n[[product]]\nname = "a"\nform = "solid"\nprice = 3').ignored == (
        "colour",
        "price",
    )


def test_bicarbonate_stands_for_alkalinity() -> None:
    water = parse_mix("[water]\nHCO3 = 61.02").water
    assert water is not None
    assert water.alkalinity_mg_per_l_caco3 == pytest.approx(50.04, rel=1e-3)


def test_the_tables_that_come_with_the_program_are_found() -> None:
    assert len(table_rows("salts")) == 40
    with pytest.raises(FileNotFoundError):
        table_rows("no such table")
