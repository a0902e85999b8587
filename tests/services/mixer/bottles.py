"""Products for the tests of the mixer, and the shelf that most of them use."""

from dataclasses import dataclass, replace

from growlog.records.crop import Crop
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct
from growlog.records.room import Tank
from growlog.services.mixer import MixerDose, MixerState
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf import add_product, bought
from tests.logbooks import SOWN, furnish


def bottle(name: str, basis: str = "w/v", density: float | None = None, **analysis: float) -> ShelfProduct:
    """A liquid with an analysis."""
    shares = tuple(LabelShare(word, per_cent) for word, per_cent in analysis.items())
    return ShelfProduct(new_id(), name, ProductForm.LIQUID, LabelBasis(basis), density, shares)


def salt(name: str, **analysis: float) -> ShelfProduct:
    """A solid with an analysis."""
    return replace(bottle(name, "w/w", **analysis), form=ProductForm.SOLID, maker_dose_unit="g/L")


@dataclass(frozen=True)
class Shelf:
    """Two concentrates and a salt, the crop and its tank."""

    part_a: ShelfProduct
    part_b: ShelfProduct
    epsom: ShelfProduct
    crop: Crop
    tank: Tank

    @property
    def state(self) -> MixerState:
        """20 L with all three."""
        doses = (
            MixerDose(self.part_a.name, 3.0, "mL/L", self.part_a.id),
            MixerDose(self.part_b.name, 3.0, "mL/L", self.part_b.id),
            MixerDose(self.epsom.name, 0.15, "g/L", self.epsom.id),
        )
        return MixerState(20.0, doses=doses, mix_name="Everyday", crop_id=self.crop.id, tank_id=self.tank.id)


def make_shelf(log: OpenLogbook, crop: Crop) -> Shelf:
    """The shelf, written, each bottle bought full for 9.00, and the crop placed by its tank."""
    part_a = bottle("Concentrate A", n_nitrate=4.6, n_ammonium=0.3, ca=4.7)
    part_b = bottle("Concentrate B", p2o5=3.0, k2o=9.2, mg=0.9, s=1.2)
    epsom = salt("Magnesium sulfate", mg=9.8, s=13.0)
    for product in (part_a, part_b, epsom):
        add_product(log, product)
        bought(log, product.id, SOWN, 1000, 900)
    _, tank = furnish(log, crop)
    return Shelf(part_a, part_b, epsom, crop, tank)
