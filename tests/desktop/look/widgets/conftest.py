"""Fields speak the locale that is set; each test starts from one and gives it back."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale


@pytest.fixture(autouse=True)
def british() -> Iterator[None]:
    """Day before month, a decimal point."""
    before = QLocale()
    QLocale.setDefault(QLocale("en_GB"))
    yield
    QLocale.setDefault(before)


@pytest.fixture
def german(british: None) -> None:
    """Day before month with points, a decimal comma."""
    QLocale.setDefault(QLocale("de_DE"))


@pytest.fixture
def american(british: None) -> None:
    """Month before day."""
    QLocale.setDefault(QLocale("en_US"))


@pytest.fixture
def swedish(british: None) -> None:
    """Year before month before day."""
    QLocale.setDefault(QLocale("sv_SE"))
