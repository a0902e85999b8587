"""What stands on the shelf and what comes out of the tap: labels and an analysis, all invented, in figures that agree.

Both concentrates together hold as many cations as anions, in meq, and 3 mL of each in a litre of this water make the EC
that the feeds measured.
"""

from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct
from growlog.records.source_water import SourceWater

from . import scenario
from .identity import identity

CALCIUM_PART = "Concentrate A (calcium)"
SULFATE_PART = "Concentrate B (sulfate, phosphate)"
ACID = "Phosphoric acid, diluted"
EPSOM = "Magnesium sulfate"
WATER_ID = identity("water", "tap")


def product_id(name: str) -> str:
    """The identity of a product."""
    return identity("product", name)


def shelf_products() -> tuple[ShelfProduct, ...]:
    """The bottles and the bag."""
    return (_calcium_part(), _sulfate_part(), _acid(), _epsom())


def tap_water() -> SourceWater:
    """The tap: moderately soft, a little alkaline."""
    return SourceWater(
        WATER_ID,
        "Tap",
        analysed_on=scenario.LIGHT_STEPS[0].from_day,
        ec_ms_per_cm=scenario.TAP_WATER_EC_MS_CM,
        ph=7.4,
        alkalinity_mg_per_l_caco3=70.0,
        ca_mg_per_l=24.0,
        mg_mg_per_l=4.5,
        na_mg_per_l=8.0,
        cl_mg_per_l=11.0,
        so4_mg_per_l=12.0,
        k_mg_per_l=1.5,
        no3_n_mg_per_l=1.5,
        note="From the supplier's yearly sheet; EC by the grower's own meter",
    )


def feed_targets() -> tuple[FeedTarget, ...]:
    """What the grower wants a feed to hold while squash bears; figures of the grower's own."""
    wanted = {"N": (140, 180), "NH4-N": (None, 18), "P": (35, 55), "K": (200, 260), "Ca": (150, 190), "Mg": (35, 50),
              "S": (50, 90), "Fe": (1.5, 3)}  # fmt: skip
    ranges = tuple(TargetRange(element, low, high) for element, (low, high) in wanted.items())
    return (FeedTarget(identity("feed target", "squash"), "Squash in fruit", ranges),)


def _calcium_part() -> ShelfProduct:
    analysis = {"n_nitrate": 4.15, "n_ammonium": 0.23, "k2o": 4.7, "cao": 4.9, "fe": 0.055}
    return _concentrate(CALCIUM_PART, analysis, 1.19, 420, chelate="DTPA")


def _sulfate_part() -> ShelfProduct:
    analysis = {"p2o5": 2.9, "k2o": 2.9, "mgo": 1.7, "s": 1.65, "mn": 0.012, "zn": 0.005, "cu": 0.002, "b": 0.008,
                "mo": 0.001}  # fmt: skip
    return _concentrate(SULFATE_PART, analysis, 1.12, 450)


def _concentrate(
    name: str, analysis: dict[str, float], density_g_per_ml: float, price_minor: int, chelate: str = ""
) -> ShelfProduct:
    return ShelfProduct(
        product_id(name),
        name,
        density_g_per_ml=density_g_per_ml,
        analysis=_shares(analysis),
        chelate=chelate,
        maker_dose=3.0,
        label_max_per_l=5.0,
        pack_amount=500.0,
        pack_price_minor=price_minor,
        note="Never joined undiluted with the other concentrate",
    )


def _acid() -> ShelfProduct:
    # 10 % phosphoric acid is 7.2 % P2O5 and weighs 1.05 g/mL (from memory).
    return ShelfProduct(
        product_id(ACID),
        ACID,
        density_g_per_ml=1.05,
        analysis=_shares({"p2o5": 7.2}),
        maker_dose=0.3,
        label_max_per_l=1.5,
        pack_amount=250.0,
        pack_price_minor=590,
        note="Takes the pH down, last of all and drop by drop; gloves and eye cover, as its label says",
    )


def _epsom() -> ShelfProduct:
    # The heptahydrate: 16 % MgO, 13 % S, rounded as bags state it.
    return ShelfProduct(
        product_id(EPSOM),
        EPSOM,
        ProductForm.SOLID,
        LabelBasis.BY_WEIGHT,
        density_g_per_ml=1.0,
        analysis=_shares({"mgo": 16.0, "s": 13.0}),
        maker_dose=0.15,
        maker_dose_unit="g/L",
        pack_amount=1000.0,
        pack_price_minor=450,
        note="Kept for leaves that turn pale between the veins; not needed so far",
    )


def _shares(analysis: dict[str, float]) -> tuple[LabelShare, ...]:
    return tuple(LabelShare(nutrient, per_cent) for nutrient, per_cent in analysis.items())
