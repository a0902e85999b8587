"""The board's tests read days and numbers as they are written in British English."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale


@pytest.fixture(autouse=True)
def british_english() -> Iterator[None]:
    """Whatever the developer's own locale is."""
    before = QLocale()
    QLocale.setDefault(QLocale("en_GB"))
    yield
    QLocale.setDefault(before)
