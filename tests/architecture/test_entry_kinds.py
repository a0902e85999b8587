"""Every place that a kind of entry needs. A new kind that forgets one fails here, with the place named."""

from dataclasses import fields
from pathlib import Path

import pytest

from growlog.records.entry import KINDS
from growlog.records.limits import LIMITS
from growlog.storage.row_translation import DETAIL_MODELS, listed_fields

PACKAGE = Path(__file__).parents[2] / "growlog"
UNLIMITED = (str, bool, tuple)


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_has_a_table_with_a_column_for_each_field(kind: str) -> None:
    own = {f.name for f in fields(KINDS[kind])} - {f.name for f in listed_fields(kind)}
    assert {c.name for c in DETAIL_MODELS[kind].__table__.columns} == own | {"entry_id"}


@pytest.mark.parametrize("kind", KINDS)
def test_the_numbers_of_a_kind_are_in_the_limits_table(kind: str) -> None:
    numeric = [f.name for f in fields(KINDS[kind]) if "int" in str(f.type) or "float" in str(f.type)]
    plain = [n for n in numeric if "tuple" not in str(KINDS[kind].__dataclass_fields__[n].type)]
    assert [n for n in plain if n not in LIMITS] == []


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_has_a_mark_of_its_own_shape(kind: str) -> None:
    from growlog.desktop.look.marks import mark_path

    assert [k for k in KINDS if mark_path(k) == mark_path(kind)] == [kind]


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_has_a_form(kind: str) -> None:
    from growlog.desktop.entry_form.kind_fields import KIND_FORMS

    assert kind in KIND_FORMS


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_says_what_happened_in_one_line(kind: str) -> None:
    assert KINDS[kind]().label
    assert KINDS[kind].summary is not None
