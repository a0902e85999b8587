"""The shelf that the tests of tank care use."""

import pytest

from growlog.records.crop import Crop
from growlog.services.open_logbook import OpenLogbook
from tests.services.mixer.bottles import Shelf, make_shelf


@pytest.fixture
def furnished(log: OpenLogbook, crop: Crop) -> Shelf:
    return make_shelf(log, crop)
