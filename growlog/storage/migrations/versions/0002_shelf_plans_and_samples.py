"""The shelf, plans, tariffs, tags of flowers, tanks and meters, loggers, decisions: new tables, and columns of old ones."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    _make_tables()
    # The rebuilding of tables cannot carry over an index of an expression: it is taken away before and made again.
    op.drop_index("uq_crop_name_kept", table_name="crop")
    _add_to_things()
    _add_to_entries()
    op.create_index(
        "uq_crop_name_kept", "crop", [sa.text("lower(name)")], unique=True, sqlite_where=sa.text("removed_at IS NULL")
    )


def _make_tables() -> None:
    op.create_table(
        "column_map",
        sa.Column("heading", sa.String(), nullable=False),
        sa.Column("date_order", sa.String(length=3), nullable=False),
        sa.Column("decimal", sa.String(length=1), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_column_map")),
    )
    op.create_table(
        "shelf_product",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("form", sa.String(length=32), nullable=False),
        sa.Column("basis", sa.String(length=32), nullable=False),
        sa.Column("density_g_per_ml", sa.Double(), nullable=True),
        sa.Column("chelate", sa.String(length=64), nullable=False),
        sa.Column("maker_dose", sa.Double(), nullable=True),
        sa.Column("maker_dose_unit", sa.String(length=16), nullable=False),
        sa.Column("label_max_per_l", sa.Double(), nullable=True),
        sa.Column("pack_amount", sa.Double(), nullable=True),
        sa.Column("pack_price_minor", sa.Integer(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("basis IN ('w/w', 'w/v')", name=op.f("ck_shelf_product_basis_word")),
        sa.CheckConstraint("form IN ('liquid', 'solid')", name=op.f("ck_shelf_product_form_word")),
        sa.CheckConstraint("density_g_per_ml BETWEEN 0.2 AND 4", name=op.f("ck_shelf_product_density_g_per_ml_range")),
        sa.CheckConstraint("label_max_per_l BETWEEN 0 AND 1000", name=op.f("ck_shelf_product_label_max_per_l_range")),
        sa.CheckConstraint("maker_dose BETWEEN 0 AND 100000", name=op.f("ck_shelf_product_maker_dose_range")),
        sa.CheckConstraint("pack_amount BETWEEN 0.1 AND 1000000", name=op.f("ck_shelf_product_pack_amount_range")),
        sa.CheckConstraint(
            "pack_price_minor BETWEEN 0 AND 100000000", name=op.f("ck_shelf_product_pack_price_minor_range")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_shelf_product")),
    )
    op.create_table(
        "source_water",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("analysed_on", sa.Date(), nullable=True),
        sa.Column("ec_ms_per_cm", sa.Double(), nullable=True),
        sa.Column("ph", sa.Double(), nullable=True),
        sa.Column("alkalinity_mg_per_l_caco3", sa.Double(), nullable=True),
        sa.Column("ca_mg_per_l", sa.Double(), nullable=True),
        sa.Column("mg_mg_per_l", sa.Double(), nullable=True),
        sa.Column("na_mg_per_l", sa.Double(), nullable=True),
        sa.Column("cl_mg_per_l", sa.Double(), nullable=True),
        sa.Column("so4_mg_per_l", sa.Double(), nullable=True),
        sa.Column("k_mg_per_l", sa.Double(), nullable=True),
        sa.Column("no3_n_mg_per_l", sa.Double(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "alkalinity_mg_per_l_caco3 BETWEEN 0 AND 2000", name=op.f("ck_source_water_alkalinity_mg_per_l_caco3_range")
        ),
        sa.CheckConstraint("ca_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_ca_mg_per_l_range")),
        sa.CheckConstraint("cl_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_cl_mg_per_l_range")),
        sa.CheckConstraint("ec_ms_per_cm BETWEEN 0 AND 20", name=op.f("ck_source_water_ec_ms_per_cm_range")),
        sa.CheckConstraint("k_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_k_mg_per_l_range")),
        sa.CheckConstraint("mg_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_mg_mg_per_l_range")),
        sa.CheckConstraint("na_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_na_mg_per_l_range")),
        sa.CheckConstraint("no3_n_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_no3_n_mg_per_l_range")),
        sa.CheckConstraint("ph BETWEEN 0 AND 14", name=op.f("ck_source_water_ph_range")),
        sa.CheckConstraint("so4_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_source_water_so4_mg_per_l_range")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_source_water")),
    )
    op.create_table(
        "feed_target",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_feed_target")),
    )
    op.create_table(
        "target_range",
        sa.Column("target_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("element", sa.String(length=16), nullable=False),
        sa.Column("low_mg_per_l", sa.Double(), nullable=True),
        sa.Column("high_mg_per_l", sa.Double(), nullable=True),
        sa.CheckConstraint("high_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_target_range_high_mg_per_l_range")),
        sa.CheckConstraint("low_mg_per_l BETWEEN 0 AND 20000", name=op.f("ck_target_range_low_mg_per_l_range")),
        sa.ForeignKeyConstraint(["target_id"], ["feed_target.id"], name=op.f("fk_target_range_target_id")),
        sa.PrimaryKeyConstraint("target_id", "position", name=op.f("pk_target_range")),
    )
    op.create_table(
        "tariff",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("from_day", sa.Date(), nullable=False),
        sa.Column("daily_charge_minor", sa.Integer(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "daily_charge_minor BETWEEN 0 AND 1000000000", name=op.f("ck_tariff_daily_charge_minor_range")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tariff")),
    )
    op.create_table(
        "derived_climate_day",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("sample_count", sa.Integer(), nullable=False),
        sa.Column("temperature_min_c", sa.Double(), nullable=True),
        sa.Column("temperature_mean_c", sa.Double(), nullable=True),
        sa.Column("temperature_max_c", sa.Double(), nullable=True),
        sa.Column("humidity_min_percent", sa.Double(), nullable=True),
        sa.Column("humidity_mean_percent", sa.Double(), nullable=True),
        sa.Column("humidity_max_percent", sa.Double(), nullable=True),
        sa.Column("night_humidity_mean_percent", sa.Double(), nullable=True),
        sa.Column("vpd_mean_kpa", sa.Double(), nullable=True),
        sa.Column("vpd_max_kpa", sa.Double(), nullable=True),
        sa.Column("dew_point_max_c", sa.Double(), nullable=True),
        sa.Column("hours_above_humidity", sa.Double(), nullable=True),
        sa.Column("longest_gap_minutes", sa.Double(), nullable=True),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_derived_climate_day_room_id")),
        sa.PrimaryKeyConstraint("room_id", "day", name=op.f("pk_derived_climate_day")),
    )
    op.create_table(
        "device",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("sort", sa.String(length=32), nullable=False),
        sa.Column("device_w", sa.Double(), nullable=True),
        sa.Column("hours_per_day", sa.Double(), nullable=True),
        sa.Column("with_lamps", sa.Boolean(), nullable=False),
        sa.Column("duty_percent", sa.Double(), nullable=True),
        sa.Column("from_day", sa.Date(), nullable=True),
        sa.Column("until_day", sa.Date(), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("sort IN ('fan', 'pump', 'heater', 'humidity', 'other')", name=op.f("ck_device_sort_word")),
        sa.CheckConstraint("device_w BETWEEN 0 AND 25000", name=op.f("ck_device_device_w_range")),
        sa.CheckConstraint("duty_percent BETWEEN 0 AND 100", name=op.f("ck_device_duty_percent_range")),
        sa.CheckConstraint("hours_per_day BETWEEN 0 AND 24", name=op.f("ck_device_hours_per_day_range")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_device_room_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_device")),
    )
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_device_room_id"), ["room_id"], unique=False)

    op.create_table(
        "label_share",
        sa.Column("product_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("nutrient", sa.String(length=32), nullable=False),
        sa.Column("label_percent", sa.Double(), nullable=False),
        sa.CheckConstraint("label_percent BETWEEN 0 AND 100", name=op.f("ck_label_share_label_percent_range")),
        sa.ForeignKeyConstraint(["product_id"], ["shelf_product.id"], name=op.f("fk_label_share_product_id")),
        sa.PrimaryKeyConstraint("product_id", "position", name=op.f("pk_label_share")),
    )
    op.create_table(
        "logger_file",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("sha256", sa.String(length=64), nullable=False),
        sa.Column("sample_count", sa.Integer(), nullable=False),
        sa.Column("first_at", sa.DateTime(), nullable=False),
        sa.Column("last_at", sa.DateTime(), nullable=False),
        sa.Column("added_at", sa.DateTime(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("last_at >= first_at", name=op.f("ck_logger_file_last_after_first")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_logger_file_room_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_logger_file")),
    )
    with op.batch_alter_table("logger_file", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_logger_file_room_id"), ["room_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_logger_file_sha256"), ["sha256"], unique=False)

    op.create_table(
        "mapped_column",
        sa.Column("map_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("column", sa.String(), nullable=False),
        sa.Column("field", sa.String(length=64), nullable=False),
        sa.Column("unit", sa.String(length=32), nullable=False),
        sa.Column("cumulative", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["map_id"], ["column_map.id"], name=op.f("fk_mapped_column_map_id")),
        sa.PrimaryKeyConstraint("map_id", "position", name=op.f("pk_mapped_column")),
    )
    op.create_table(
        "mix_water",
        sa.Column("mix_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("water_id", sa.String(length=36), nullable=False),
        sa.Column("water_share", sa.Double(), nullable=False),
        sa.CheckConstraint("water_share BETWEEN 0.001 AND 1", name=op.f("ck_mix_water_water_share_range")),
        sa.ForeignKeyConstraint(["mix_id"], ["mix.id"], name=op.f("fk_mix_water_mix_id")),
        sa.ForeignKeyConstraint(["water_id"], ["source_water.id"], name=op.f("fk_mix_water_water_id")),
        sa.PrimaryKeyConstraint("mix_id", "position", name=op.f("pk_mix_water")),
    )
    with op.batch_alter_table("mix_water", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_mix_water_water_id"), ["water_id"], unique=False)

    op.create_table(
        "tariff_band",
        sa.Column("tariff_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("from_at", sa.Time(), nullable=False),
        sa.Column("until_at", sa.Time(), nullable=False),
        sa.Column("price_per_kwh", sa.String(length=32), nullable=False),
        sa.ForeignKeyConstraint(["tariff_id"], ["tariff.id"], name=op.f("fk_tariff_band_tariff_id")),
        sa.PrimaryKeyConstraint("tariff_id", "position", name=op.f("pk_tariff_band")),
    )
    op.create_table(
        "decision",
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("decided_on", sa.Date(), nullable=False),
        sa.Column("verdict", sa.String(length=32), nullable=False),
        sa.Column("reasons", sa.String(), nullable=False),
        sa.Column("changes", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "verdict IN ('regrow', 'regrow-with-changes', 'do-not-regrow')", name=op.f("ck_decision_verdict_word")
        ),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_decision_crop_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_decision")),
    )
    with op.batch_alter_table("decision", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_decision_crop_id"), ["crop_id"], unique=False)

    op.create_table(
        "feed_step",
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("from_age", sa.Integer(), nullable=False),
        sa.Column("mix_id", sa.String(length=36), nullable=False),
        sa.Column("strength_percent", sa.Double(), nullable=False),
        sa.Column("volume_l", sa.Double(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("from_age BETWEEN 0 AND 3650", name=op.f("ck_feed_step_from_age_range")),
        sa.CheckConstraint("strength_percent BETWEEN 0 AND 400", name=op.f("ck_feed_step_strength_percent_range")),
        sa.CheckConstraint("volume_l BETWEEN 0 AND 2000", name=op.f("ck_feed_step_volume_l_range")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_feed_step_crop_id")),
        sa.ForeignKeyConstraint(["mix_id"], ["mix.id"], name=op.f("fk_feed_step_mix_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_feed_step")),
    )
    with op.batch_alter_table("feed_step", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_feed_step_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_feed_step_mix_id"), ["mix_id"], unique=False)

    op.create_table(
        "light_step",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("from_day", sa.Date(), nullable=True),
        sa.Column("crop_id", sa.String(length=36), nullable=True),
        sa.Column("from_age", sa.Integer(), nullable=True),
        sa.Column("photoperiod_h", sa.Double(), nullable=False),
        sa.Column("on_at", sa.Time(), nullable=True),
        sa.Column("dimming_percent", sa.Double(), nullable=True),
        sa.Column("canopy_ppfd_umol", sa.Double(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("(from_day IS NULL) <> (from_age IS NULL)", name=op.f("ck_light_step_one_start")),
        sa.CheckConstraint("canopy_ppfd_umol BETWEEN 0 AND 3000", name=op.f("ck_light_step_canopy_ppfd_umol_range")),
        sa.CheckConstraint("dimming_percent BETWEEN 0 AND 100", name=op.f("ck_light_step_dimming_percent_range")),
        sa.CheckConstraint("from_age BETWEEN 0 AND 3650", name=op.f("ck_light_step_from_age_range")),
        sa.CheckConstraint("photoperiod_h BETWEEN 0 AND 24", name=op.f("ck_light_step_photoperiod_h_range")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_light_step_crop_id")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_light_step_room_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_light_step")),
    )
    with op.batch_alter_table("light_step", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_light_step_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_light_step_room_id"), ["room_id"], unique=False)

    op.create_table(
        "logger_sample",
        sa.Column("file_id", sa.String(length=36), nullable=False),
        sa.Column("at_utc", sa.DateTime(), nullable=False),
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("air_temperature_c", sa.Double(), nullable=True),
        sa.Column("relative_humidity_percent", sa.Double(), nullable=True),
        sa.CheckConstraint(
            "air_temperature_c BETWEEN -30 AND 60", name=op.f("ck_logger_sample_air_temperature_c_range")
        ),
        sa.CheckConstraint(
            "relative_humidity_percent BETWEEN 0 AND 100", name=op.f("ck_logger_sample_relative_humidity_percent_range")
        ),
        sa.ForeignKeyConstraint(["file_id"], ["logger_file.id"], name=op.f("fk_logger_sample_file_id")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_logger_sample_room_id")),
        sa.PrimaryKeyConstraint("file_id", "at_utc", name=op.f("pk_logger_sample")),
        sqlite_with_rowid=False,
    )
    with op.batch_alter_table("logger_sample", schema=None) as batch_op:
        batch_op.create_index("ix_logger_sample_room_id_at_utc", ["room_id", "at_utc"], unique=False)

    op.create_table(
        "purchase",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("sort", sa.String(length=32), nullable=False),
        sa.Column("price_minor", sa.Integer(), nullable=False),
        sa.Column("crop_id", sa.String(length=36), nullable=True),
        sa.Column("life_days", sa.Integer(), nullable=True),
        sa.Column("life_crops", sa.Integer(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "sort IN ('seed', 'medium', 'nutrients', 'containers', 'gear', 'water', 'other')",
            name=op.f("ck_purchase_sort_word"),
        ),
        sa.CheckConstraint("life_crops BETWEEN 1 AND 1000", name=op.f("ck_purchase_life_crops_range")),
        sa.CheckConstraint("life_days BETWEEN 1 AND 36500", name=op.f("ck_purchase_life_days_range")),
        sa.CheckConstraint("price_minor BETWEEN 0 AND 1000000000", name=op.f("ck_purchase_price_minor_range")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_purchase_crop_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_purchase")),
    )
    with op.batch_alter_table("purchase", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_purchase_crop_id"), ["crop_id"], unique=False)

    op.create_table(
        "routine",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("who", sa.String(length=32), nullable=False),
        sa.Column("when", sa.String(length=32), nullable=False),
        sa.Column("crop_id", sa.String(length=36), nullable=True),
        sa.Column("every_days", sa.Integer(), nullable=True),
        sa.Column("at_age", sa.Integer(), nullable=True),
        sa.Column("from_day", sa.Date(), nullable=True),
        sa.Column("until_day", sa.Date(), nullable=True),
        sa.Column("entry_kind", sa.String(length=32), nullable=False),
        sa.Column("in_the_morning", sa.Boolean(), nullable=False),
        sa.Column("is_on", sa.Boolean(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("who IN ('each-crop', 'crop', 'room')", name=op.f("ck_routine_who_word")),
        sa.CheckConstraint(
            "\"when\" IN ('every-days', 'at-age', 'on-day', 'while-females-open', 'while-flowering')",
            name=op.f("ck_routine_when_word"),
        ),
        sa.CheckConstraint("at_age BETWEEN 0 AND 3650", name=op.f("ck_routine_at_age_range")),
        sa.CheckConstraint("every_days BETWEEN 1 AND 366", name=op.f("ck_routine_every_days_range")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_routine_crop_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_routine")),
    )
    with op.batch_alter_table("routine", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_routine_crop_id"), ["crop_id"], unique=False)

    op.create_table(
        "light_step_lamp",
        sa.Column("step_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("lamp_id", sa.String(length=36), nullable=False),
        sa.ForeignKeyConstraint(["lamp_id"], ["lamp.id"], name=op.f("fk_light_step_lamp_lamp_id")),
        sa.ForeignKeyConstraint(["step_id"], ["light_step.id"], name=op.f("fk_light_step_lamp_step_id")),
        sa.PrimaryKeyConstraint("step_id", "position", name=op.f("pk_light_step_lamp")),
    )
    with op.batch_alter_table("light_step_lamp", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_light_step_lamp_lamp_id"), ["lamp_id"], unique=False)

    op.create_table(
        "quoted_figure",
        sa.Column("decision_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("figure_key", sa.String(length=64), nullable=False),
        sa.Column("label", sa.String(length=200), nullable=False),
        sa.Column("value_text", sa.String(length=200), nullable=False),
        sa.ForeignKeyConstraint(["decision_id"], ["decision.id"], name=op.f("fk_quoted_figure_decision_id")),
        sa.PrimaryKeyConstraint("decision_id", "position", name=op.f("pk_quoted_figure")),
    )
    op.create_table(
        "review_photo",
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("photo_use_id", sa.String(length=36), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_review_photo_crop_id")),
        sa.ForeignKeyConstraint(["photo_use_id"], ["photo_use.id"], name=op.f("fk_review_photo_photo_use_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_review_photo")),
    )
    with op.batch_alter_table("review_photo", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_review_photo_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_review_photo_photo_use_id"), ["photo_use_id"], unique=False)

    op.create_table(
        "due_answer",
        sa.Column("due_key", sa.String(length=200), nullable=False),
        sa.Column("due_day", sa.Date(), nullable=False),
        sa.Column("outcome", sa.String(length=32), nullable=False),
        sa.Column("crop_id", sa.String(length=36), nullable=True),
        sa.Column("until_day", sa.Date(), nullable=True),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("outcome IN ('done', 'put-off', 'left-out')", name=op.f("ck_due_answer_outcome_word")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_due_answer_crop_id")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_due_answer_entry_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_due_answer")),
    )
    with op.batch_alter_table("due_answer", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_due_answer_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_due_answer_due_key"), ["due_key"], unique=False)
        batch_op.create_index(batch_op.f("ix_due_answer_entry_id"), ["entry_id"], unique=False)

    op.create_table(
        "entry_meter",
        sa.Column("meter_kwh", sa.Double(), nullable=False),
        sa.Column("starts_anew", sa.Boolean(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("meter_kwh BETWEEN 0 AND 100000000", name=op.f("ck_entry_meter_meter_kwh_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_meter_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_meter")),
    )
    op.create_table(
        "entry_tank_care",
        sa.Column("work", sa.String(length=32), nullable=False),
        sa.Column("volume_before_l", sa.Double(), nullable=True),
        sa.Column("water_added_l", sa.Double(), nullable=True),
        sa.Column("drained_l", sa.Double(), nullable=True),
        sa.Column("ec_before_ms_per_cm", sa.Double(), nullable=True),
        sa.Column("ec_after_ms_per_cm", sa.Double(), nullable=True),
        sa.Column("ph_before", sa.Double(), nullable=True),
        sa.Column("ph_after", sa.Double(), nullable=True),
        sa.Column("mix_id", sa.String(length=36), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "work IN ('top-up', 'correction', 'renewal', 'ph')", name=op.f("ck_entry_tank_care_work_word")
        ),
        sa.CheckConstraint("drained_l BETWEEN 0 AND 5000", name=op.f("ck_entry_tank_care_drained_l_range")),
        sa.CheckConstraint(
            "ec_after_ms_per_cm BETWEEN 0 AND 20", name=op.f("ck_entry_tank_care_ec_after_ms_per_cm_range")
        ),
        sa.CheckConstraint(
            "ec_before_ms_per_cm BETWEEN 0 AND 20", name=op.f("ck_entry_tank_care_ec_before_ms_per_cm_range")
        ),
        sa.CheckConstraint("ph_after BETWEEN 0 AND 14", name=op.f("ck_entry_tank_care_ph_after_range")),
        sa.CheckConstraint("ph_before BETWEEN 0 AND 14", name=op.f("ck_entry_tank_care_ph_before_range")),
        sa.CheckConstraint("volume_before_l BETWEEN 0 AND 5000", name=op.f("ck_entry_tank_care_volume_before_l_range")),
        sa.CheckConstraint("water_added_l BETWEEN 0 AND 5000", name=op.f("ck_entry_tank_care_water_added_l_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_tank_care_entry_id")),
        sa.ForeignKeyConstraint(["mix_id"], ["mix.id"], name=op.f("fk_entry_tank_care_mix_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_tank_care")),
    )
    with op.batch_alter_table("entry_tank_care", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_entry_tank_care_mix_id"), ["mix_id"], unique=False)

    op.create_table(
        "pollination_tag",
        sa.Column("tag", sa.String(length=32), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_pollination_tag_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_pollination_tag")),
    )
    op.create_table(
        "stock_move",
        sa.Column("product_id", sa.String(length=36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("sort", sa.String(length=32), nullable=False),
        sa.Column("amount", sa.Double(), nullable=False),
        sa.Column("price_minor", sa.Integer(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "sort IN ('bought', 'used', 'counted', 'thrown-away')", name=op.f("ck_stock_move_sort_word")
        ),
        sa.CheckConstraint("amount BETWEEN 0 AND 10000000", name=op.f("ck_stock_move_amount_range")),
        sa.CheckConstraint("price_minor BETWEEN 0 AND 1000000000", name=op.f("ck_stock_move_price_minor_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_stock_move_entry_id")),
        sa.ForeignKeyConstraint(["product_id"], ["shelf_product.id"], name=op.f("fk_stock_move_product_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_stock_move")),
    )
    with op.batch_alter_table("stock_move", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_stock_move_entry_id"), ["entry_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_stock_move_product_id"), ["product_id"], unique=False)

    op.create_table(
        "tag_seen",
        sa.Column("tag", sa.String(length=32), nullable=False),
        sa.Column("fate", sa.String(length=32), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("fate IN ('set', 'dropped')", name=op.f("ck_tag_seen_fate_word")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_tag_seen_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_tag_seen")),
    )
    op.create_table(
        "tagged_fruit",
        sa.Column("tag", sa.String(length=32), nullable=False),
        sa.Column("weight_g", sa.Double(), nullable=True),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("weight_g BETWEEN 0.1 AND 20000", name=op.f("ck_tagged_fruit_weight_g_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_tagged_fruit_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_tagged_fruit")),
    )
    op.create_table(
        "tank_dose",
        sa.Column("product", sa.String(length=200), nullable=False),
        sa.Column("dose_amount", sa.Double(), nullable=False),
        sa.Column("unit", sa.String(length=16), nullable=False),
        sa.Column("product_id", sa.String(length=36), nullable=True),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("dose_amount BETWEEN 0 AND 100000", name=op.f("ck_tank_dose_dose_amount_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_tank_dose_entry_id")),
        sa.ForeignKeyConstraint(["product_id"], ["shelf_product.id"], name=op.f("fk_tank_dose_product_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_tank_dose")),
    )
    with op.batch_alter_table("tank_dose", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_tank_dose_product_id"), ["product_id"], unique=False)


def _add_to_things() -> None:
    with op.batch_alter_table("logbook") as batch_op:
        for column in ("labour_rate_minor_per_h", "water_price_minor_per_m3"):
            batch_op.add_column(sa.Column(column, sa.Integer(), nullable=True))
            batch_op.create_check_constraint(op.f(f"ck_logbook_{column}_range"), f"{column} BETWEEN 0 AND 10000000")
    with op.batch_alter_table("room") as batch_op:
        batch_op.add_column(
            sa.Column("energy_sharing", sa.String(length=32), server_default="by-floor", nullable=False)
        )
        batch_op.create_check_constraint(
            op.f("ck_room_energy_sharing_word"), "energy_sharing IN ('by-floor', 'equally', 'by-hand')"
        )
    with op.batch_alter_table("lamp") as batch_op:
        batch_op.add_column(sa.Column("kind", sa.String(length=64), server_default="", nullable=False))
        batch_op.add_column(sa.Column("ballast_loss_percent", sa.Double(), nullable=True))
        batch_op.add_column(sa.Column("rated_life_h", sa.Double(), nullable=True))
        batch_op.add_column(sa.Column("bulb_from_day", sa.Date(), nullable=True))
        batch_op.add_column(sa.Column("price_minor", sa.Integer(), nullable=True))
        batch_op.create_check_constraint(
            op.f("ck_lamp_ballast_loss_percent_range"), "ballast_loss_percent BETWEEN 0 AND 60"
        )
        batch_op.create_check_constraint(op.f("ck_lamp_rated_life_h_range"), "rated_life_h BETWEEN 1 AND 200000")
        batch_op.create_check_constraint(op.f("ck_lamp_price_minor_range"), "price_minor BETWEEN 0 AND 1000000000")
    _add_to_crop()
    with op.batch_alter_table("placement") as batch_op:
        batch_op.add_column(sa.Column("energy_share", sa.Double(), nullable=True))
        batch_op.create_check_constraint(op.f("ck_placement_energy_share_range"), "energy_share BETWEEN 0 AND 1")
    with op.batch_alter_table("mix_part") as batch_op:
        batch_op.add_column(sa.Column("product_id", sa.String(length=36), nullable=True))
        batch_op.create_foreign_key(op.f("fk_mix_part_product_id"), "shelf_product", ["product_id"], ["id"])
        batch_op.create_index(op.f("ix_mix_part_product_id"), ["product_id"], unique=False)


def _add_to_crop() -> None:
    with op.batch_alter_table("crop") as batch_op:
        for column in ("taste", "fruit_shape", "keeping"):
            batch_op.add_column(sa.Column(column, sa.String(), server_default="", nullable=False))
        for column in ("shop_price_minor_per_kg", "shop_price_minor_per_fruit"):
            batch_op.add_column(sa.Column(column, sa.Integer(), nullable=True))
            batch_op.create_check_constraint(op.f(f"ck_crop_{column}_range"), f"{column} BETWEEN 0 AND 10000000")


def _add_to_entries() -> None:
    with op.batch_alter_table("entry_feed") as batch_op:
        batch_op.add_column(sa.Column("strength_percent", sa.Double(), nullable=True))
        batch_op.create_check_constraint(
            op.f("ck_entry_feed_strength_percent_range"), "strength_percent BETWEEN 0 AND 400"
        )
    with op.batch_alter_table("entry_reading") as batch_op:
        batch_op.add_column(sa.Column("canopy_lux", sa.Double(), nullable=True))
        batch_op.add_column(sa.Column("lamp_kind", sa.String(length=64), server_default="", nullable=False))
        batch_op.create_check_constraint(op.f("ck_entry_reading_canopy_lux_range"), "canopy_lux BETWEEN 0 AND 200000")
