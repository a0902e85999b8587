"""The words of the program all stand in the catalogue, and are words."""

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

pytestmark = pytest.mark.slow

SCRIPT = Path(__file__).parents[2] / "resources" / "translations" / "make_catalogue.py"


@pytest.fixture
def maker() -> ModuleType:
    """The script that writes the template."""
    spec = importlib.util.spec_from_file_location("make_catalogue", SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_template_holds_the_words_of_the_sources(maker: ModuleType) -> None:
    assert maker.TEMPLATE.read_bytes() == maker.template(), "run resources/translations/make_catalogue.py"


def test_no_sentence_shouts(maker: ModuleType) -> None:
    lines = maker.template().decode("utf-8").splitlines()
    shown = [line for line in lines if line.startswith(("msgid", '"'))]
    assert len(shown) > 300
    assert [line for line in shown if "!" in line] == []
