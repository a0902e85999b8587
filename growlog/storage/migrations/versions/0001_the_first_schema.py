"""The first schema."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    op.create_table(
        "change",
        sa.Column("number", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("group_id", sa.String(length=36), nullable=False),
        sa.Column("at", sa.DateTime(), nullable=False),
        sa.Column("action", sa.String(length=32), nullable=False),
        sa.Column("record", sa.String(length=32), nullable=False),
        sa.Column("record_id", sa.String(length=36), nullable=False),
        sa.Column("before", sa.String(), nullable=True),
        sa.Column("after", sa.String(), nullable=True),
        sa.CheckConstraint("action IN ('add', 'change', 'remove', 'restore')", name=op.f("ck_change_action_word")),
        sa.PrimaryKeyConstraint("number", name=op.f("pk_change")),
    )
    with op.batch_alter_table("change", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_change_group_id"), ["group_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_change_record_id"), ["record_id"], unique=False)

    op.create_table(
        "cultivar",
        sa.Column("species", sa.String(length=200), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("habit", sa.String(length=32), nullable=False),
        sa.Column("packet_days", sa.Integer(), nullable=True),
        sa.Column("packet_counts_from", sa.String(length=32), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "habit IN ('separate', 'perfect', 'sets-alone', 'needs-another')", name=op.f("ck_cultivar_habit_word")
        ),
        sa.CheckConstraint(
            "packet_counts_from IN ('sowing', 'emergence', 'transplanting')",
            name=op.f("ck_cultivar_packet_counts_from_word"),
        ),
        sa.CheckConstraint("packet_days BETWEEN 1 AND 400", name=op.f("ck_cultivar_packet_days_range")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cultivar")),
    )
    op.create_table(
        "logbook",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("currency", sa.String(length=3), nullable=False),
        sa.Column("made_at", sa.DateTime(), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_logbook")),
    )
    op.create_table(
        "mix",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("edition", sa.Integer(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("edition >= 1", name=op.f("ck_mix_edition_counts")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_mix")),
    )
    op.create_table(
        "photo",
        sa.Column("sha256", sa.String(length=64), nullable=False),
        sa.Column("path", sa.String(), nullable=False),
        sa.Column("byte_count", sa.Integer(), nullable=False),
        sa.Column("width_px", sa.Integer(), nullable=False),
        sa.Column("height_px", sa.Integer(), nullable=False),
        sa.Column("media_type", sa.String(length=64), nullable=False),
        sa.Column("original_name", sa.String(), nullable=False),
        sa.Column("captured_day", sa.Date(), nullable=True),
        sa.Column("captured_at", sa.Time(), nullable=True),
        sa.Column("captured_source", sa.String(length=32), nullable=False),
        sa.Column("captured_subsecond", sa.String(), nullable=False),
        sa.Column("captured_utc_offset", sa.String(), nullable=False),
        sa.Column("added_at", sa.DateTime(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "captured_source IN ('exif-original', 'exif-other', 'file-name', 'file-time', 'typed', 'unknown')",
            name=op.f("ck_photo_captured_source_word"),
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_photo")),
        sa.UniqueConstraint("path", name=op.f("uq_photo_path")),
        sa.UniqueConstraint("sha256", name=op.f("uq_photo_sha256")),
    )
    op.create_table(
        "room",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("floor_m2", sa.Double(), nullable=True),
        sa.Column("zone", sa.String(length=64), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("floor_m2 BETWEEN 0.01 AND 10000", name=op.f("ck_room_floor_m2_range")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_room")),
    )
    op.create_table(
        "crop",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("cultivar_id", sa.String(length=36), nullable=False),
        sa.Column("started_from", sa.String(length=32), nullable=False),
        sa.Column("sown_on", sa.Date(), nullable=True),
        sa.Column("emerged_on", sa.Date(), nullable=True),
        sa.Column("transplanted_on", sa.Date(), nullable=True),
        sa.Column("first_flower_on", sa.Date(), nullable=True),
        sa.Column("first_pick_on", sa.Date(), nullable=True),
        sa.Column("planned_clearing_on", sa.Date(), nullable=True),
        sa.Column("cleared_on", sa.Date(), nullable=True),
        sa.Column("medium", sa.String(), nullable=False),
        sa.Column("system", sa.String(), nullable=False),
        sa.Column("container_l", sa.Double(), nullable=True),
        sa.Column("seed_lot", sa.String(), nullable=False),
        sa.Column("seeds_sown", sa.Integer(), nullable=True),
        sa.Column("seeds_emerged", sa.Integer(), nullable=True),
        sa.Column("trying", sa.String(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "(started_from = 'seed' AND sown_on IS NOT NULL) OR (started_from = 'bought-plant' AND transplanted_on IS NOT NULL)",
            name=op.f("ck_crop_day_zero"),
        ),
        sa.CheckConstraint("started_from IN ('seed', 'bought-plant')", name=op.f("ck_crop_started_from_word")),
        sa.CheckConstraint("container_l BETWEEN 0.01 AND 2000", name=op.f("ck_crop_container_l_range")),
        sa.CheckConstraint("seeds_emerged BETWEEN 0 AND 9999", name=op.f("ck_crop_seeds_emerged_range")),
        sa.CheckConstraint("seeds_sown BETWEEN 0 AND 9999", name=op.f("ck_crop_seeds_sown_range")),
        sa.ForeignKeyConstraint(["cultivar_id"], ["cultivar.id"], name=op.f("fk_crop_cultivar_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_crop")),
    )
    with op.batch_alter_table("crop", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_crop_cultivar_id"), ["cultivar_id"], unique=False)

    op.create_table(
        "lamp",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("lamp_count", sa.Integer(), nullable=False),
        sa.Column("rated_w", sa.Double(), nullable=True),
        sa.Column("wall_w", sa.Double(), nullable=True),
        sa.Column("efficacy_umol_per_j", sa.Double(), nullable=True),
        sa.Column("from_day", sa.Date(), nullable=True),
        sa.Column("until_day", sa.Date(), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("efficacy_umol_per_j BETWEEN 0 AND 6", name=op.f("ck_lamp_efficacy_umol_per_j_range")),
        sa.CheckConstraint("lamp_count BETWEEN 1 AND 200", name=op.f("ck_lamp_lamp_count_range")),
        sa.CheckConstraint("rated_w BETWEEN 0 AND 20000", name=op.f("ck_lamp_rated_w_range")),
        sa.CheckConstraint("wall_w BETWEEN 0 AND 25000", name=op.f("ck_lamp_wall_w_range")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_lamp_room_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_lamp")),
    )
    with op.batch_alter_table("lamp", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_lamp_room_id"), ["room_id"], unique=False)

    op.create_table(
        "mix_part",
        sa.Column("mix_id", sa.String(length=36), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("product", sa.String(length=200), nullable=False),
        sa.Column("dose_per_l", sa.Float(), nullable=False),
        sa.Column("unit", sa.String(length=16), nullable=False),
        sa.CheckConstraint("dose_per_l BETWEEN 0 AND 200", name=op.f("ck_mix_part_dose_per_l_range")),
        sa.ForeignKeyConstraint(["mix_id"], ["mix.id"], name=op.f("fk_mix_part_mix_id")),
        sa.PrimaryKeyConstraint("mix_id", "position", name=op.f("pk_mix_part")),
    )
    op.create_table(
        "tank",
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("tank_l", sa.Double(), nullable=True),
        sa.Column("recirculates", sa.Boolean(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("tank_l BETWEEN 0.1 AND 5000", name=op.f("ck_tank_tank_l_range")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_tank_room_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tank")),
    )
    with op.batch_alter_table("tank", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_tank_room_id"), ["room_id"], unique=False)

    op.create_table(
        "photo_use",
        sa.Column("photo_id", sa.String(length=36), nullable=False),
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("at", sa.Time(), nullable=True),
        sa.Column("leads", sa.Boolean(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_photo_use_crop_id")),
        sa.ForeignKeyConstraint(["photo_id"], ["photo.id"], name=op.f("fk_photo_use_photo_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_photo_use")),
    )
    with op.batch_alter_table("photo_use", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_photo_use_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_photo_use_day"), ["day"], unique=False)
        batch_op.create_index(batch_op.f("ix_photo_use_photo_id"), ["photo_id"], unique=False)

    op.create_table(
        "placement",
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("room_id", sa.String(length=36), nullable=False),
        sa.Column("from_day", sa.Date(), nullable=False),
        sa.Column("until_day", sa.Date(), nullable=True),
        sa.Column("tank_id", sa.String(length=36), nullable=True),
        sa.Column("floor_share", sa.Double(), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("floor_share BETWEEN 0 AND 1", name=op.f("ck_placement_floor_share_range")),
        sa.CheckConstraint("until_day IS NULL OR until_day >= from_day", name=op.f("ck_placement_until_after_from")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_placement_crop_id")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_placement_room_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tank.id"], name=op.f("fk_placement_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_placement")),
    )
    with op.batch_alter_table("placement", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_placement_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_placement_room_id"), ["room_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_placement_tank_id"), ["tank_id"], unique=False)

    op.create_table(
        "plant",
        sa.Column("crop_id", sa.String(length=36), nullable=False),
        sa.Column("label", sa.String(length=200), nullable=False),
        sa.Column("from_day", sa.Date(), nullable=False),
        sa.Column("lost_on", sa.Date(), nullable=True),
        sa.Column("lost_cause", sa.String(), nullable=False),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint("lost_on IS NULL OR lost_on >= from_day", name=op.f("ck_plant_lost_after_from")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_plant_crop_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_plant")),
    )
    with op.batch_alter_table("plant", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_plant_crop_id"), ["crop_id"], unique=False)

    op.create_table(
        "entry",
        sa.Column("kind", sa.String(length=32), nullable=False),
        sa.Column("crop_id", sa.String(length=36), nullable=True),
        sa.Column("plant_id", sa.String(length=36), nullable=True),
        sa.Column("tank_id", sa.String(length=36), nullable=True),
        sa.Column("room_id", sa.String(length=36), nullable=True),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("at", sa.Time(), nullable=True),
        sa.Column("labour_minutes", sa.Integer(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("group_id", sa.String(length=36), nullable=True),
        sa.Column("id", sa.String(length=36), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("removed_at", sa.DateTime(), nullable=True),
        sa.CheckConstraint(
            "(crop_id IS NOT NULL) + (plant_id IS NOT NULL) + (tank_id IS NOT NULL) + (room_id IS NOT NULL) = 1",
            name=op.f("ck_entry_one_owner"),
        ),
        sa.CheckConstraint("labour_minutes BETWEEN 0 AND 1440", name=op.f("ck_entry_labour_minutes_range")),
        sa.ForeignKeyConstraint(["crop_id"], ["crop.id"], name=op.f("fk_entry_crop_id")),
        sa.ForeignKeyConstraint(["plant_id"], ["plant.id"], name=op.f("fk_entry_plant_id")),
        sa.ForeignKeyConstraint(["room_id"], ["room.id"], name=op.f("fk_entry_room_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tank.id"], name=op.f("fk_entry_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_entry")),
    )
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_entry_crop_id"), ["crop_id"], unique=False)
        batch_op.create_index("ix_entry_day", ["day"], unique=False)
        batch_op.create_index(batch_op.f("ix_entry_plant_id"), ["plant_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_entry_room_id"), ["room_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_entry_tank_id"), ["tank_id"], unique=False)

    op.create_table(
        "cull",
        sa.Column("cull_count", sa.Integer(), nullable=False),
        sa.Column("cause", sa.String(length=32), nullable=False),
        sa.Column("weight_g", sa.Double(), nullable=True),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "cause IN ('misshapen', 'blossom-end-rot', 'cracked', 'oversize', 'damaged')",
            name=op.f("ck_cull_cause_word"),
        ),
        sa.CheckConstraint("cull_count BETWEEN 1 AND 9999", name=op.f("ck_cull_cull_count_range")),
        sa.CheckConstraint("weight_g BETWEEN 0.1 AND 20000", name=op.f("ck_cull_weight_g_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_cull_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_cull")),
    )
    op.create_table(
        "entry_calibration",
        sa.Column("meter", sa.String(length=32), nullable=False),
        sa.Column("reference_value", sa.Double(), nullable=True),
        sa.Column("reading_before", sa.Double(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("reading_before BETWEEN 0 AND 20", name=op.f("ck_entry_calibration_reading_before_range")),
        sa.CheckConstraint("reference_value BETWEEN 0 AND 20", name=op.f("ck_entry_calibration_reference_value_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_calibration_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_calibration")),
    )
    op.create_table(
        "entry_feed",
        sa.Column("mix_id", sa.String(length=36), nullable=True),
        sa.Column("volume_l", sa.Double(), nullable=True),
        sa.Column("ec_ms_per_cm", sa.Double(), nullable=True),
        sa.Column("ph", sa.Double(), nullable=True),
        sa.Column("drain_l", sa.Double(), nullable=True),
        sa.Column("drain_ec_ms_per_cm", sa.Double(), nullable=True),
        sa.Column("drain_ph", sa.Double(), nullable=True),
        sa.Column("water_only", sa.Boolean(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("drain_ec_ms_per_cm BETWEEN 0 AND 20", name=op.f("ck_entry_feed_drain_ec_ms_per_cm_range")),
        sa.CheckConstraint("drain_l BETWEEN 0 AND 2000", name=op.f("ck_entry_feed_drain_l_range")),
        sa.CheckConstraint("drain_ph BETWEEN 0 AND 14", name=op.f("ck_entry_feed_drain_ph_range")),
        sa.CheckConstraint("ec_ms_per_cm BETWEEN 0 AND 20", name=op.f("ck_entry_feed_ec_ms_per_cm_range")),
        sa.CheckConstraint("ph BETWEEN 0 AND 14", name=op.f("ck_entry_feed_ph_range")),
        sa.CheckConstraint("volume_l BETWEEN 0 AND 2000", name=op.f("ck_entry_feed_volume_l_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_feed_entry_id")),
        sa.ForeignKeyConstraint(["mix_id"], ["mix.id"], name=op.f("fk_entry_feed_mix_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_feed")),
    )
    with op.batch_alter_table("entry_feed", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_entry_feed_mix_id"), ["mix_id"], unique=False)

    op.create_table(
        "entry_fruit_check",
        sa.Column("females_open", sa.Integer(), nullable=True),
        sa.Column("fruit_set", sa.Integer(), nullable=True),
        sa.Column("dropped", sa.Integer(), nullable=True),
        sa.Column("thinned", sa.Integer(), nullable=True),
        sa.Column("hanging", sa.Integer(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("dropped BETWEEN 0 AND 999", name=op.f("ck_entry_fruit_check_dropped_range")),
        sa.CheckConstraint("females_open BETWEEN 0 AND 999", name=op.f("ck_entry_fruit_check_females_open_range")),
        sa.CheckConstraint("fruit_set BETWEEN 0 AND 999", name=op.f("ck_entry_fruit_check_fruit_set_range")),
        sa.CheckConstraint("hanging BETWEEN 0 AND 999", name=op.f("ck_entry_fruit_check_hanging_range")),
        sa.CheckConstraint("thinned BETWEEN 0 AND 999", name=op.f("ck_entry_fruit_check_thinned_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_fruit_check_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_fruit_check")),
    )
    op.create_table(
        "entry_light",
        sa.Column("photoperiod_h", sa.Double(), nullable=True),
        sa.Column("on_at", sa.Time(), nullable=True),
        sa.Column("dimming_percent", sa.Double(), nullable=True),
        sa.Column("canopy_ppfd_umol", sa.Double(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("canopy_ppfd_umol BETWEEN 0 AND 3000", name=op.f("ck_entry_light_canopy_ppfd_umol_range")),
        sa.CheckConstraint("dimming_percent BETWEEN 0 AND 100", name=op.f("ck_entry_light_dimming_percent_range")),
        sa.CheckConstraint("photoperiod_h BETWEEN 0 AND 24", name=op.f("ck_entry_light_photoperiod_h_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_light_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_light")),
    )
    op.create_table(
        "entry_note",
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_note_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_note")),
    )
    op.create_table(
        "entry_pick",
        sa.Column("fruit_count", sa.Integer(), nullable=False),
        sa.Column("total_weight_g", sa.Double(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("fruit_count BETWEEN 0 AND 9999", name=op.f("ck_entry_pick_fruit_count_range")),
        sa.CheckConstraint("total_weight_g BETWEEN 0.1 AND 200000", name=op.f("ck_entry_pick_total_weight_g_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_pick_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_pick")),
    )
    op.create_table(
        "entry_pollination",
        sa.Column("females_pollinated", sa.Integer(), nullable=True),
        sa.Column("males_open", sa.Integer(), nullable=True),
        sa.Column("trusses_vibrated", sa.Integer(), nullable=True),
        sa.Column("way", sa.String(length=32), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "way IN ('brush', 'male-flower', 'swab', 'shaken', 'other')", name=op.f("ck_entry_pollination_way_word")
        ),
        sa.CheckConstraint(
            "females_pollinated BETWEEN 0 AND 999", name=op.f("ck_entry_pollination_females_pollinated_range")
        ),
        sa.CheckConstraint("males_open BETWEEN 0 AND 999", name=op.f("ck_entry_pollination_males_open_range")),
        sa.CheckConstraint(
            "trusses_vibrated BETWEEN 0 AND 999", name=op.f("ck_entry_pollination_trusses_vibrated_range")
        ),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_pollination_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_pollination")),
    )
    op.create_table(
        "entry_potting_on",
        sa.Column("container_l", sa.Double(), nullable=True),
        sa.Column("medium", sa.String(length=200), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("container_l BETWEEN 0.01 AND 2000", name=op.f("ck_entry_potting_on_container_l_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_potting_on_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_potting_on")),
    )
    op.create_table(
        "entry_problem",
        sa.Column("sort", sa.String(length=32), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("severity", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("sort IN ('pest', 'disease', 'disorder')", name=op.f("ck_entry_problem_sort_word")),
        sa.CheckConstraint("severity BETWEEN 1 AND 3", name=op.f("ck_entry_problem_severity_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_problem_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_problem")),
    )
    op.create_table(
        "entry_reading",
        sa.Column("air_temperature_c", sa.Double(), nullable=True),
        sa.Column("relative_humidity_percent", sa.Double(), nullable=True),
        sa.Column("solution_temperature_c", sa.Double(), nullable=True),
        sa.Column("plant_height_cm", sa.Double(), nullable=True),
        sa.Column("container_weight_g", sa.Double(), nullable=True),
        sa.Column("canopy_ppfd_umol", sa.Double(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "air_temperature_c BETWEEN -30 AND 60", name=op.f("ck_entry_reading_air_temperature_c_range")
        ),
        sa.CheckConstraint("canopy_ppfd_umol BETWEEN 0 AND 3000", name=op.f("ck_entry_reading_canopy_ppfd_umol_range")),
        sa.CheckConstraint(
            "container_weight_g BETWEEN 0 AND 500000", name=op.f("ck_entry_reading_container_weight_g_range")
        ),
        sa.CheckConstraint("plant_height_cm BETWEEN 0 AND 1000", name=op.f("ck_entry_reading_plant_height_cm_range")),
        sa.CheckConstraint(
            "relative_humidity_percent BETWEEN 0 AND 100", name=op.f("ck_entry_reading_relative_humidity_percent_range")
        ),
        sa.CheckConstraint(
            "solution_temperature_c BETWEEN 0 AND 50", name=op.f("ck_entry_reading_solution_temperature_c_range")
        ),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_reading_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_reading")),
    )
    op.create_table(
        "entry_stage",
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_stage_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_stage")),
    )
    op.create_table(
        "entry_training",
        sa.Column("old_leaves_removed", sa.Integer(), nullable=True),
        sa.Column("side_shoots_removed", sa.Integer(), nullable=True),
        sa.Column("shoots_stopped", sa.Integer(), nullable=True),
        sa.Column("stems_tied", sa.Integer(), nullable=True),
        sa.Column("plants_staked", sa.Integer(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "old_leaves_removed BETWEEN 0 AND 999", name=op.f("ck_entry_training_old_leaves_removed_range")
        ),
        sa.CheckConstraint("plants_staked BETWEEN 0 AND 999", name=op.f("ck_entry_training_plants_staked_range")),
        sa.CheckConstraint("shoots_stopped BETWEEN 0 AND 999", name=op.f("ck_entry_training_shoots_stopped_range")),
        sa.CheckConstraint(
            "side_shoots_removed BETWEEN 0 AND 999", name=op.f("ck_entry_training_side_shoots_removed_range")
        ),
        sa.CheckConstraint("stems_tied BETWEEN 0 AND 999", name=op.f("ck_entry_training_stems_tied_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_training_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_training")),
    )
    op.create_table(
        "entry_treatment",
        sa.Column("product", sa.String(length=200), nullable=False),
        sa.Column("target", sa.String(length=200), nullable=False),
        sa.Column("dose", sa.String(length=200), nullable=False),
        sa.Column("re_entry_h", sa.Double(), nullable=True),
        sa.Column("harvest_interval_days", sa.Integer(), nullable=True),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint(
            "harvest_interval_days BETWEEN 0 AND 365", name=op.f("ck_entry_treatment_harvest_interval_days_range")
        ),
        sa.CheckConstraint("re_entry_h BETWEEN 0 AND 720", name=op.f("ck_entry_treatment_re_entry_h_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_entry_treatment_entry_id")),
        sa.PrimaryKeyConstraint("entry_id", name=op.f("pk_entry_treatment")),
    )
    op.create_table(
        "picked_fruit",
        sa.Column("weight_g", sa.Double(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("weight_g BETWEEN 0.1 AND 20000", name=op.f("ck_picked_fruit_weight_g_range")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_picked_fruit_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_picked_fruit")),
    )
    op.create_table(
        "stage_code",
        sa.Column("code", sa.String(length=3), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.String(length=36), nullable=False),
        sa.CheckConstraint("length(code) BETWEEN 2 AND 3", name=op.f("ck_stage_code_code_length")),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_stage_code_entry_id")),
        sa.PrimaryKeyConstraint("position", "entry_id", name=op.f("pk_stage_code")),
    )
    op.create_index(
        "uq_crop_name_kept", "crop", [sa.text("lower(name)")], unique=True, sqlite_where=sa.text("removed_at IS NULL")
    )
    for verb in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER change_is_append_only_{verb.lower()} BEFORE {verb} ON change"
            " BEGIN SELECT RAISE(ABORT, 'the history of changes is append-only'); END"
        )
