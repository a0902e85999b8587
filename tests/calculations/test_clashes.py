"""Order, clashes and cautions."""

from growlog.calculations.clashes import (
    cautions,
    coir_note,
    concentrate_clashes,
    mixing_order,
    precipitation_warnings,
)
from growlog.calculations.products import LIQUID, Product
from growlog.services.mixing import ready_salts

SALTS = {salt.formula: salt.product for salt in ready_salts()}
SILICATE = Product("silicate", LIQUID, "w/v", {"sio2": 10, "k2o": 5})
HOAGLAND = {"Ca": 200.4, "P": 31.0, "S": 64.2}


def test_silicate_goes_first_and_ph_last() -> None:
    given = [SALTS["HNO3"], SALTS["MgSO4.7H2O"], SALTS["Ca(NO3)2.4H2O"], SILICATE]
    named = [name for step in mixing_order(given) for name in step.products]
    assert named == [p.name for p in (SILICATE, SALTS["Ca(NO3)2.4H2O"], SALTS["MgSO4.7H2O"], SALTS["HNO3"])]


def test_calcium_never_meets_sulfate_phosphate_or_silicate_undiluted() -> None:
    # UC ANR: calcium nitrate with potassium sulfate forms gypsum though both are soluble alone.
    clashes = concentrate_clashes([SALTS["Ca(NO3)2.4H2O"], SALTS["K2SO4"], SALTS["KH2PO4"], SILICATE])
    assert [any(word in c for c in clashes) for word in ("gypsum", "phosphate", "gels")] == [True] * 3
    assert concentrate_clashes([SALTS["KNO3"], SALTS["K2SO4"]]) == ()
    assert len(concentrate_clashes([SILICATE, SALTS["HNO3"]])) == 1


def test_gypsum_is_warned_of_in_a_stock_and_not_in_a_feed() -> None:
    # PHREEQC: the salts of Hoagland-1 in one tank reach saturation at about 8 times, and are far over it at 100.
    assert precipitation_warnings(HOAGLAND) == ()
    assert any("gypsum" in w for w in precipitation_warnings({e: 100 * mg for e, mg in HOAGLAND.items()}))
    assert any("jar" in w for w in precipitation_warnings({e: 6 * mg for e, mg in HOAGLAND.items()}))


def test_calcium_phosphate_is_warned_of_at_high_ph_only() -> None:
    assert precipitation_warnings(HOAGLAND, ph=5.8) == ()
    assert any("phosphate" in w for w in precipitation_warnings(HOAGLAND, ph=6.8))


def test_acids_and_caustics_come_with_their_cautions() -> None:
    # NIST Center for Neutron Research, How to work with acids: acid into water, gloves, eye protection.
    assert "Acid into water" in cautions([SALTS["HNO3"]])[0]
    assert any("caustic" in c for c in cautions([SILICATE]))
    plain = cautions([SALTS["KNO3"]])  # its pH is set with bottles that the mix does not name
    assert "acid into water" in plain[0]
    assert plain[1:] == ("Wear gloves and eye cover; the label of each product rules.",)
    assert cautions([]) == ()
    assert "calcium" in coir_note()
