"""Bases of degree days: what was read stands before what is from memory, and each says which it is."""

from growlog.calculations.degree_day_bases import DEGREE_DAY_BASES, degree_day_bases
from growlog.calculations.degree_days import DegreeDayMethod, degree_days


def test_the_base_of_cucumber_is_the_published_one() -> None:
    # Perry, K. and Wehner, T. (1996) HortTechnology 6(1): 27: 60 °F, maximum only, mirrored above 90 °F.
    base = degree_day_bases("Cucumber")[0]
    assert (base.base_f, base.ceiling_f, base.method) == (60, 90, DegreeDayMethod.MAXIMUM_MIRRORED)
    assert base.method is not None
    assert degree_days(base.method, 95, 70, base.base_f, base.ceiling_f) == 25  # the rule of the paper, by hand


def test_what_is_from_memory_says_so_and_stands_last() -> None:
    assert all(("from memory" in base.source) == base.from_memory for base in DEGREE_DAY_BASES)
    assert [base.from_memory for base in degree_day_bases("cucumber")] == [False, True]
    assert degree_day_bases("basil") == ()
