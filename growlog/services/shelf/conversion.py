"""A product of the shelf as the calculations take it."""

from growlog.calculations.products import Product
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct


def calc_product(product: ShelfProduct) -> Product:
    """The same label for the calculations. Without an analysis it stays unknown there."""
    analysis = {share.nutrient: share.label_percent for share in product.analysis}
    return Product(
        product.name,
        product.form.value,
        product.basis.value,
        analysis,
        product.density_g_per_ml,
        product.label_max_per_l,
    )


def shelf_product(product: Product, product_id: str) -> ShelfProduct:
    """A product of a file as one for the shelf, not yet written; ValueError for an unknown form or basis."""
    return ShelfProduct(
        product_id,
        product.name,
        ProductForm(product.form),
        LabelBasis(product.basis),
        product.density_g_per_ml,
        tuple(LabelShare(word, per_cent) for word, per_cent in product.analysis_pct.items()),
        label_max_per_l=product.label_max_per_l,
    )


def density_from_weight(weight_g: float, volume_ml: float) -> float:
    """g/mL of a volume that was weighed, both above 0; ValueError outside."""
    if not (weight_g > 0 and volume_ml > 0):
        raise ValueError(f"volume {volume_ml:g} mL of {weight_g:g} g is outside above 0")
    return weight_g / volume_ml
