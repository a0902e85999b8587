"""The command that works out a mix."""

import json

from tests.command_line.commands import Terminal

PRODUCT = '[[product]]\nname = "Saltpetre"\nform = "solid"\nanalysis = {n_nitrate = 13.854, k = 38.672}\n'
DOSED = 'tank_l = 50\n[[dose]]\nproduct = "Saltpetre"\namount = 0.5\nunit = "g/L"\n' + PRODUCT
WISHED = "[target]\nK = 300\nN = 50\n" + PRODUCT


def write(terminal: Terminal, text: str) -> str:
    """A mix file in the terminal's folder."""
    path = terminal.folder / "mix.toml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_a_mix_prints_one_document_in_json(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, DOSED), "--json") == 0
    found = json.loads(terminal.out)
    assert list(found) == ["elements_mg_per_l", "ec_ms_per_cm", "doses", "warnings", "unmet"]
    assert found["elements_mg_per_l"] == {"N": 69.27, "K": 193.36}
    assert list(found["ec_ms_per_cm"]) == ["estimate", "low", "high"]
    assert found["doses"] == [
        {"product": "Saltpetre", "amount": 0.5, "unit": "g/L", "tank_amount": 25, "tank_unit": "g"}
    ]
    assert found["unmet"] == []


def test_a_target_prints_doses_and_what_they_miss(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, WISHED), "--json") == 0
    found = json.loads(terminal.out)
    assert found["doses"][0]["amount"] > 0
    assert {miss["element"] for miss in found["unmet"]} == {"K", "N"}


def test_a_mix_prints_plain_lines(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, DOSED)) == 0
    assert "Saltpetre: 0.500\u2009g/L, 25.00\u2009g for the tank" in terminal.out
    assert "2. Saltpetre 25\u2009g, dissolved first. Stir." in terminal.out
    assert "EC at 25 °C, estimated: 0.68 mS/cm (685 µS/cm)" in terminal.out
    assert "342 (500), 438 (640), 479 (700)" in terminal.out
    assert terminal("mix", write(terminal, WISHED)) == 0
    assert "Every product with K here also brings N." in terminal.out


def test_found_doses_are_rounded_to_the_scale_of_the_file_or_of_the_command(terminal: Terminal) -> None:
    file = write(terminal, "tank_l = 50\nsmallest_g = 5\n" + WISHED.replace("N = 50\n", ""))
    assert terminal("mix", file, "--json") == 0
    found = json.loads(terminal.out)
    assert found["doses"][0]["tank_amount"] == 40  # 38.8 g would meet it
    assert "Rounding" in found["unmet"][0]["reason"]
    assert terminal("mix", file, "--scale", "0.5", "--json") == 0
    assert json.loads(terminal.out)["doses"][0]["tank_amount"] == 39
    assert terminal("mix", write(terminal, WISHED), "--syringe", "0.5") == 1
    assert "volume of the tank" in terminal.err
    assert terminal("mix", file, "--scale", "0") == 1


def test_a_strength_beside_a_target_is_left_out_and_that_is_said(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, WISHED), "--json") == 0
    plain = json.loads(terminal.out)
    assert terminal("mix", write(terminal, "strength = 0.5\n" + WISHED), "--json") == 0
    halved = json.loads(terminal.out)
    assert halved["doses"] == plain["doses"]
    assert "full strength" in halved["warnings"][0]


def test_a_gallon_of_neither_kind_is_asked_about(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, DOSED.replace("g/L", "g/gal"))) == 1
    assert terminal.err == "Say which gallon: g/gal_us or g/gal_imp.\n"
    assert terminal("mix", write(terminal, DOSED.replace("g/L", "G/l"))) == 0


def test_an_acid_with_its_density_is_dosed_in_ml(terminal: Terminal) -> None:
    acid = '[[product]]\nname = "Acid"\nform = "liquid"\nbasis = "w/w"\ndensity_g_per_ml = 1.2\n'
    assert terminal("mix", write(terminal, "[target]\nN = 20\n" + acid + "analysis = {n_nitrate = 8}\n"), "--json") == 0
    found = json.loads(terminal.out)
    assert (found["doses"][0]["unit"], found["doses"][0]["amount"]) == ("mL/L", 0.208333)
    assert any("Acid into water" in warning for warning in found["warnings"])


def test_what_a_product_without_analysis_brings_is_told_as_unknown_never_as_nothing(terminal: Terminal) -> None:
    tonic = '[[product]]\nname = "Tonic"\nform = "liquid"\n[[dose]]\nproduct = "Tonic"\namount = 1\nunit = "mL/L"\n'
    assert terminal("mix", write(terminal, tonic.replace("[[dose]]", 'basis = "w/v"\n[[dose]]'))) == 0
    assert "and what Tonic brings, which is not known" in terminal.out
    assert "EC without Tonic:" in terminal.out


def test_an_impossible_dose_and_an_unknown_word_of_the_water_are_named(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, DOSED.replace("0.5", "1e6"))) == 1
    assert terminal.err == "The dose of Saltpetre is more than a litre holds.\n"
    assert terminal("mix", write(terminal, DOSED + "[water]\nXy = 3\n")) == 1
    assert "The water states Xy" in terminal.err


def test_a_wrong_mix_is_refused_in_one_sentence(terminal: Terminal) -> None:
    assert terminal("mix", write(terminal, DOSED.replace("50", "0", 1))) == 1
    assert terminal.err == "The volume of the tank is not above 0 L.\n"
    assert terminal("mix", terminal.folder / "none.toml") == 1
    assert "none.toml" in terminal.err
