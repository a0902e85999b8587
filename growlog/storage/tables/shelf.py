"""Tables of the shelf: products by their labels, what came to and went from each, and source waters."""

from datetime import date

from sqlalchemy import ForeignKey, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.product import LabelBasis, ProductForm, StockMoveSort
from growlog.records.source_water import WATER_ELEMENTS
from growlog.storage.tables.base import Base, Identified, Word, column_within, is_word, link, within_limits


class ShelfProductRow(Identified, Base):
    """A product as its label states it; its analysis is rows of its own."""

    __tablename__ = "shelf_product"
    name: Mapped[str] = mapped_column(String(200))
    form: Mapped[ProductForm] = mapped_column(Word(ProductForm))
    basis: Mapped[LabelBasis] = mapped_column(Word(LabelBasis))
    density_g_per_ml: Mapped[float | None]
    chelate: Mapped[str] = mapped_column(String(64))
    maker_dose: Mapped[float | None]
    maker_dose_unit: Mapped[str] = mapped_column(String(16))
    label_max_per_l: Mapped[float | None]
    pack_amount: Mapped[float | None]
    pack_price_minor: Mapped[int | None]
    note: Mapped[str]
    __table_args__ = (
        *within_limits("density_g_per_ml", "maker_dose", "label_max_per_l", "pack_amount", "pack_price_minor"),
        is_word("form", ProductForm),
        is_word("basis", LabelBasis),
    )


class LabelShareRow(Base):
    """One line of a guaranteed analysis."""

    __tablename__ = "label_share"
    product_id: Mapped[str] = mapped_column(String(36), ForeignKey("shelf_product.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    nutrient: Mapped[str] = mapped_column(String(32))
    label_percent: Mapped[float]
    __table_args__ = (*within_limits("label_percent"),)


class StockMoveRow(Identified, Base):
    """What came to or went from a product."""

    __tablename__ = "stock_move"
    product_id: Mapped[str] = link("shelf_product")
    day: Mapped[date]
    sort: Mapped[StockMoveSort] = mapped_column(Word(StockMoveSort))
    amount: Mapped[float]
    price_minor: Mapped[int | None]
    entry_id: Mapped[str | None] = link("entry", nullable=True)
    note: Mapped[str]
    __table_args__ = (
        column_within("amount", "stock_amount"),
        *within_limits("price_minor"),
        is_word("sort", StockMoveSort),
    )


class SourceWaterRow(Identified, Base):
    """An analysis of source water."""

    __tablename__ = "source_water"
    name: Mapped[str] = mapped_column(String(200))
    analysed_on: Mapped[date | None]
    ec_ms_per_cm: Mapped[float | None]
    ph: Mapped[float | None]
    alkalinity_mg_per_l_caco3: Mapped[float | None]
    ca_mg_per_l: Mapped[float | None]
    mg_mg_per_l: Mapped[float | None]
    na_mg_per_l: Mapped[float | None]
    cl_mg_per_l: Mapped[float | None]
    so4_mg_per_l: Mapped[float | None]
    k_mg_per_l: Mapped[float | None]
    no3_n_mg_per_l: Mapped[float | None]
    note: Mapped[str]
    __table_args__ = (
        *within_limits("ec_ms_per_cm", "ph", "alkalinity_mg_per_l_caco3"),
        *(column_within(f"{element}_mg_per_l", "water_mg_per_l") for element in WATER_ELEMENTS),
    )


class MixWaterRow(Base):
    """A source water and its share in a mix."""

    __tablename__ = "mix_water"
    mix_id: Mapped[str] = mapped_column(String(36), ForeignKey("mix.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    water_id: Mapped[str] = link("source_water")
    water_share: Mapped[float]
    __table_args__ = (*within_limits("water_share"),)


class FeedTargetRow(Identified, Base):
    """A target of the grower's own."""

    __tablename__ = "feed_target"
    name: Mapped[str] = mapped_column(String(200))
    note: Mapped[str]


class TargetRangeRow(Base):
    """The range of one element of a target."""

    __tablename__ = "target_range"
    target_id: Mapped[str] = mapped_column(String(36), ForeignKey("feed_target.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    element: Mapped[str] = mapped_column(String(16))
    low_mg_per_l: Mapped[float | None]
    high_mg_per_l: Mapped[float | None]
    __table_args__ = (
        column_within("low_mg_per_l", "water_mg_per_l"),
        column_within("high_mg_per_l", "water_mg_per_l"),
    )
