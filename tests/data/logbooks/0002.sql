BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0002');
CREATE TABLE change (
	number INTEGER NOT NULL, 
	group_id VARCHAR(36) NOT NULL, 
	at DATETIME NOT NULL, 
	action VARCHAR(32) NOT NULL, 
	record VARCHAR(32) NOT NULL, 
	record_id VARCHAR(36) NOT NULL, 
	"before" VARCHAR, 
	"after" VARCHAR, 
	CONSTRAINT pk_change PRIMARY KEY (number), 
	CONSTRAINT ck_change_action_word CHECK (action IN ('add', 'change', 'remove', 'restore'))
);
INSERT INTO "change" VALUES(1,'1','2026-03-07 12:00:00.000000','add','LogbookFacts','log',NULL,'{"id": "log", "name": "Box room", "currency": "EUR", "labour_rate_minor_per_h": 1500, "water_price_minor_per_m3": 420, "made_at": "2026-03-07T12:00:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(2,'1','2026-03-07 12:00:00.000000','add','Room','room',NULL,'{"id": "room", "name": "Box room", "floor_m2": 1.1, "zone": "UTC", "energy_sharing": "by-floor", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(3,'1','2026-03-07 12:00:00.000000','add','Lamp','lamp',NULL,'{"id": "lamp", "room_id": "room", "name": "Lamp", "lamp_count": 2, "rated_w": null, "wall_w": 120.0, "efficacy_umol_per_j": 2.6, "from_day": null, "until_day": null, "kind": "", "ballast_loss_percent": null, "rated_life_h": null, "bulb_from_day": null, "price_minor": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(4,'1','2026-03-07 12:00:00.000000','add','Tank','tank',NULL,'{"id": "tank", "room_id": "room", "name": "Tank", "tank_l": 20.0, "recirculates": true, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(5,'1','2026-03-07 12:00:00.000000','add','Cultivar','cv',NULL,'{"id": "cv", "species": "pattypan", "name": "Boxroom Gold", "habit": "separate", "packet_days": 58, "packet_counts_from": "sowing", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(6,'1','2026-03-07 12:00:00.000000','add','Crop','crop',NULL,'{"id": "crop", "name": "Boxroom Gold", "cultivar_id": "cv", "started_from": "seed", "sown_on": "2025-11-15", "emerged_on": null, "transplanted_on": null, "first_flower_on": null, "first_pick_on": null, "planned_clearing_on": null, "cleared_on": null, "medium": "", "system": "", "container_l": null, "seed_lot": "", "seeds_sown": null, "seeds_emerged": null, "trying": "", "taste": "nutty", "fruit_shape": "", "keeping": "", "shop_price_minor_per_kg": 490, "shop_price_minor_per_fruit": null, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(7,'1','2026-03-07 12:00:00.000000','add','Mix','mix',NULL,'{"id": "mix", "name": "A + B", "edition": 1, "parts": [{"product": "A", "dose_per_l": 2.0, "unit": "mL/L", "product_id": null}, {"product": "B", "dose_per_l": 2.0, "unit": "mL/L", "product_id": null}], "note": "", "waters": [], "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(8,'1','2026-03-07 12:00:00.000000','add','ShelfProduct','product',NULL,'{"id": "product", "name": "Base A", "form": "liquid", "basis": "w/w", "density_g_per_ml": 1.17, "analysis": [{"nutrient": "n_nitrate", "label_percent": 2.4}, {"nutrient": "ca", "label_percent": 3.1}], "chelate": "Fe-DTPA", "maker_dose": 2.0, "maker_dose_unit": "mL/L", "label_max_per_l": 4.0, "pack_amount": 1000.0, "pack_price_minor": 1450, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(9,'1','2026-03-07 12:00:00.000000','add','SourceWater','water',NULL,'{"id": "water", "name": "Tap", "analysed_on": "2026-01-18", "ec_ms_per_cm": 0.62, "ph": 7.4, "alkalinity_mg_per_l_caco3": 180.0, "ca_mg_per_l": 71.0, "mg_mg_per_l": 9.0, "na_mg_per_l": 14.0, "cl_mg_per_l": 22.0, "so4_mg_per_l": 31.0, "k_mg_per_l": 2.0, "no3_n_mg_per_l": 1.5, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(10,'1','2026-03-07 12:00:00.000000','add','Plant','plant',NULL,'{"id": "plant", "crop_id": "crop", "label": "1", "from_day": "2025-11-15", "lost_on": null, "lost_cause": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(11,'1','2026-03-07 12:00:00.000000','add','Placement','place',NULL,'{"id": "place", "crop_id": "crop", "room_id": "room", "from_day": "2025-11-15", "until_day": null, "tank_id": "tank", "floor_share": 0.5, "energy_share": 0.25, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(12,'1','2026-03-07 12:00:00.000000','add','Photo','photo',NULL,'{"id": "photo", "sha256": "abababababababababababababababababababababababababababababababab", "path": "photos/a/b.jpg", "byte_count": 9, "width_px": 3, "height_px": 4, "media_type": "image/jpeg", "original_name": "b.jpg", "captured": {"day": "2026-01-18", "at": null, "source": "file-name", "subsecond": "", "utc_offset": ""}, "added_at": "2026-03-07T12:00:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(13,'1','2026-03-07 12:00:00.000000','add','PhotoUse','use',NULL,'{"id": "use", "photo_id": "photo", "crop_id": "crop", "day": "2026-01-18", "at": null, "leads": true, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(14,'1','2026-03-07 12:00:00.000000','add','Entry','e-feed',NULL,'{"id": "e-feed", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "feed", "mix_id": "mix", "strength_percent": 80.0, "volume_l": 2.8, "ec_ms_per_cm": 1.88, "ph": 5.9, "drain_l": 0.6, "drain_ec_ms_per_cm": 2.24, "drain_ph": 6.1, "water_only": false}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(15,'1','2026-03-07 12:00:00.000000','add','Entry','e-reading',NULL,'{"id": "e-reading", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "reading", "air_temperature_c": 24.6, "relative_humidity_percent": 58, "solution_temperature_c": 21.0, "plant_height_cm": 40.5, "container_weight_g": 5200.0, "canopy_ppfd_umol": 480.0, "canopy_lux": 26000.0, "lamp_kind": "led-white"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(16,'1','2026-03-07 12:00:00.000000','add','Entry','e-training',NULL,'{"id": "e-training", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "training", "old_leaves_removed": 2, "side_shoots_removed": 1, "shoots_stopped": 1, "stems_tied": 2, "plants_staked": 1}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(17,'1','2026-03-07 12:00:00.000000','add','Entry','e-pollination',NULL,'{"id": "e-pollination", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "pollination", "females_pollinated": 2, "males_open": 9, "trusses_vibrated": 1, "way": "brush", "tags": ["11", "12"]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(18,'1','2026-03-07 12:00:00.000000','add','Entry','e-fruit-check',NULL,'{"id": "e-fruit-check", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "fruit-check", "females_open": 1, "fruit_set": 2, "dropped": 3, "thinned": 4, "hanging": 5, "tags_seen": [{"tag": "11", "fate": "set"}, {"tag": "12", "fate": "dropped"}]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(19,'1','2026-03-07 12:00:00.000000','add','Entry','e-pick',NULL,'{"id": "e-pick", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "pick", "fruit_count": 2, "total_weight_g": 171.0, "weights_g": [93.0, 78.0], "culls": [{"cull_count": 1, "cause": "cracked", "weight_g": 40.0}, {"cull_count": 2, "cause": "oversize", "weight_g": null}], "tagged": [{"tag": "11", "weight_g": 93.0}, {"tag": "14", "weight_g": null}]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(20,'1','2026-03-07 12:00:00.000000','add','Entry','e-stage',NULL,'{"id": "e-stage", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "stage", "codes": ["61", "71"]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(21,'1','2026-03-07 12:00:00.000000','add','Entry','e-problem',NULL,'{"id": "e-problem", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "problem", "sort": "disease", "name": "powdery mildew", "severity": 2}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(22,'1','2026-03-07 12:00:00.000000','add','Entry','e-treatment',NULL,'{"id": "e-treatment", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "treatment", "product": "bicarbonate", "target": "mildew", "dose": "5 g/L", "re_entry_h": 4.0, "harvest_interval_days": 1}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(23,'1','2026-03-07 12:00:00.000000','add','Entry','e-light',NULL,'{"id": "e-light", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "light", "photoperiod_h": 16.0, "on_at": "06:00:00", "dimming_percent": 40.0, "canopy_ppfd_umol": 200.0}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(24,'1','2026-03-07 12:00:00.000000','add','Entry','e-potting-on',NULL,'{"id": "e-potting-on", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "potting-on", "container_l": 11.0, "medium": "coir"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(25,'1','2026-03-07 12:00:00.000000','add','Entry','e-calibration',NULL,'{"id": "e-calibration", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "calibration", "meter": "pH", "reference_value": 7.0, "reading_before": 7.2}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(26,'1','2026-03-07 12:00:00.000000','add','Entry','e-tank-care',NULL,'{"id": "e-tank-care", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "tank-care", "work": "correction", "volume_before_l": 18.0, "water_added_l": 2.0, "drained_l": 1.0, "ec_before_ms_per_cm": 1.7, "ec_after_ms_per_cm": 2.0, "ph_before": 6.4, "ph_after": 5.8, "mix_id": "mix", "doses": [{"product": "Base A", "dose_amount": 12.0, "unit": "mL", "product_id": "product"}]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(27,'1','2026-03-07 12:00:00.000000','add','Entry','e-meter',NULL,'{"id": "e-meter", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "meter", "meter_kwh": 10432.5, "starts_anew": true}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(28,'1','2026-03-07 12:00:00.000000','add','Entry','e-note',NULL,'{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(29,'1','2026-03-07 12:00:00.000000','add','Room','room-2',NULL,'{"id": "room-2", "name": "Second room", "floor_m2": 2.0, "zone": "Etc/UTC", "energy_sharing": "by-hand", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(30,'1','2026-03-07 12:00:00.000000','add','Lamp','lamp-2',NULL,'{"id": "lamp-2", "room_id": "room-2", "name": "Panel", "lamp_count": 1, "rated_w": 250.0, "wall_w": null, "efficacy_umol_per_j": 2.1, "from_day": "2026-01-18", "until_day": null, "kind": "led-white", "ballast_loss_percent": 4.0, "rated_life_h": 50000.0, "bulb_from_day": "2026-01-18", "price_minor": 9900, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(31,'1','2026-03-07 12:00:00.000000','add','Mix','mix-2',NULL,'{"id": "mix-2", "name": "A + B", "edition": 2, "parts": [{"product": "Base A", "dose_per_l": 2.0, "unit": "mL/L", "product_id": "product"}, {"product": "B", "dose_per_l": 1.5, "unit": "mL/L", "product_id": null}], "note": "", "waters": [{"water_id": "water", "water_share": 0.6}, {"water_id": "water", "water_share": 0.4}], "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(32,'1','2026-03-07 12:00:00.000000','add','FeedTarget','target',NULL,'{"id": "target", "name": "Fruit", "ranges": [{"element": "N", "low_mg_per_l": 140.0, "high_mg_per_l": 180.0}, {"element": "Ca", "low_mg_per_l": 150.0, "high_mg_per_l": null}], "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(33,'1','2026-03-07 12:00:00.000000','add','StockMove','move',NULL,'{"id": "move", "product_id": "product", "day": "2026-01-18", "sort": "bought", "amount": 1000.0, "price_minor": 1450, "entry_id": null, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(34,'1','2026-03-07 12:00:00.000000','add','Routine','routine',NULL,'{"id": "routine", "name": "Look under the leaves", "who": "crop", "when": "every-days", "crop_id": "crop", "every_days": 3, "at_age": null, "from_day": "2026-01-18", "until_day": "2026-03-01", "entry_kind": "problem", "in_the_morning": true, "is_on": false, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(35,'1','2026-03-07 12:00:00.000000','add','DueAnswer','answer',NULL,'{"id": "answer", "due_key": "routine:routine:crop", "due_day": "2026-01-18", "outcome": "put-off", "crop_id": "crop", "until_day": "2026-01-20", "reason": "away", "entry_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(36,'1','2026-03-07 12:00:00.000000','add','FeedStep','feed-step',NULL,'{"id": "feed-step", "crop_id": "crop", "from_age": 21, "mix_id": "mix-2", "strength_percent": 75.0, "volume_l": 1.5, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(37,'1','2026-03-07 12:00:00.000000','add','LightStep','light-step',NULL,'{"id": "light-step", "room_id": "room-2", "from_day": null, "crop_id": "crop", "from_age": 30, "photoperiod_h": 14.5, "on_at": "06:00:00", "dimming_percent": 80.0, "canopy_ppfd_umol": 420.0, "lamp_ids": ["lamp-2"], "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(38,'1','2026-03-07 12:00:00.000000','add','Device','device',NULL,'{"id": "device", "room_id": "room-2", "name": "Fan", "sort": "fan", "device_w": 18.0, "hours_per_day": 12.0, "with_lamps": false, "duty_percent": 50.0, "from_day": "2026-01-18", "until_day": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(39,'1','2026-03-07 12:00:00.000000','add','Tariff','tariff',NULL,'{"id": "tariff", "name": "Two rates", "from_day": "2026-01-18", "bands": [{"from_at": "06:00:00", "until_at": "22:00:00", "price_per_kwh": "0.31"}, {"from_at": "22:00:00", "until_at": "06:00:00", "price_per_kwh": "0.2045"}], "daily_charge_minor": 42, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(40,'1','2026-03-07 12:00:00.000000','add','Purchase','purchase',NULL,'{"id": "purchase", "name": "Pots", "day": "2026-01-18", "sort": "containers", "price_minor": 1800, "crop_id": "crop", "life_days": null, "life_crops": 4, "note": "note", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(41,'1','2026-03-07 12:00:00.000000','add','Decision','decision',NULL,'{"id": "decision", "crop_id": "crop", "decided_on": "2026-01-18", "verdict": "regrow-with-changes", "reasons": "Tasty.", "changes": "Sow later.", "figures": [{"figure_key": "yield_per_plant", "label": "Yield of a plant", "value_text": "1.2 kg"}, {"figure_key": "cost", "label": "Cost", "value_text": "9.10"}], "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(42,'1','2026-03-07 12:00:00.000000','add','Photo','photo-2',NULL,'{"id": "photo-2", "sha256": "cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd", "path": "photos/a/c.jpg", "byte_count": 9, "width_px": 3, "height_px": 4, "media_type": "image/jpeg", "original_name": "c.jpg", "captured": {"day": "2026-01-18", "at": null, "source": "file-name", "subsecond": "", "utc_offset": ""}, "added_at": "2026-01-18T06:30:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(43,'1','2026-03-07 12:00:00.000000','add','PhotoUse','use-2',NULL,'{"id": "use-2", "photo_id": "photo-2", "crop_id": "crop", "day": "2026-01-18", "at": null, "leads": false, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(44,'1','2026-03-07 12:00:00.000000','add','ReviewPhoto','review-photo',NULL,'{"id": "review-photo", "crop_id": "crop", "photo_use_id": "use-2", "place": 1, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(45,'1','2026-03-07 12:00:00.000000','add','LoggerFile','file',NULL,'{"id": "file", "room_id": "room-2", "name": "air.csv", "sha256": "efefefefefefefefefefefefefefefefefefefefefefefefefefefefefefefef", "sample_count": 2, "first_at": "2026-01-18T06:30:00+00:00", "last_at": "2026-01-18T07:30:00+00:00", "added_at": "2026-01-18T06:30:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(46,'1','2026-03-07 12:00:00.000000','add','ColumnMap','map',NULL,'{"id": "map", "heading": "date\tweight", "columns": [{"column": "Date", "field": "day", "unit": "", "cumulative": false}, {"column": "Weight", "field": "pick.total_weight_g", "unit": "kg", "cumulative": true}], "date_order": "dmy", "decimal": ",", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(47,'2','2026-03-07 12:00:00.000000','remove','Entry','e-note','{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}','{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 2, "removed_at": "2026-03-07T12:00:00+00:00"}');
CREATE TABLE column_map (
	heading VARCHAR NOT NULL, 
	date_order VARCHAR(3) NOT NULL, 
	decimal VARCHAR(1) NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_column_map PRIMARY KEY (id)
);
INSERT INTO "column_map" VALUES('date	weight','dmy',',','map',1,NULL);
CREATE TABLE "crop" (
	name VARCHAR(200) NOT NULL, 
	cultivar_id VARCHAR(36) NOT NULL, 
	started_from VARCHAR(32) NOT NULL, 
	sown_on DATE, 
	emerged_on DATE, 
	transplanted_on DATE, 
	first_flower_on DATE, 
	first_pick_on DATE, 
	planned_clearing_on DATE, 
	cleared_on DATE, 
	medium VARCHAR NOT NULL, 
	system VARCHAR NOT NULL, 
	container_l DOUBLE, 
	seed_lot VARCHAR NOT NULL, 
	seeds_sown INTEGER, 
	seeds_emerged INTEGER, 
	trying VARCHAR NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	taste VARCHAR DEFAULT '' NOT NULL, 
	fruit_shape VARCHAR DEFAULT '' NOT NULL, 
	keeping VARCHAR DEFAULT '' NOT NULL, 
	shop_price_minor_per_kg INTEGER, 
	shop_price_minor_per_fruit INTEGER, 
	CONSTRAINT pk_crop PRIMARY KEY (id), 
	CONSTRAINT ck_crop_seeds_emerged_range CHECK (seeds_emerged BETWEEN 0 AND 9999), 
	CONSTRAINT ck_crop_day_zero CHECK ((started_from = 'seed' AND sown_on IS NOT NULL) OR (started_from = 'bought-plant' AND transplanted_on IS NOT NULL)), 
	CONSTRAINT ck_crop_container_l_range CHECK (container_l BETWEEN 0.01 AND 2000), 
	CONSTRAINT fk_crop_cultivar_id FOREIGN KEY(cultivar_id) REFERENCES cultivar (id), 
	CONSTRAINT ck_crop_started_from_word CHECK (started_from IN ('seed', 'bought-plant')), 
	CONSTRAINT ck_crop_seeds_sown_range CHECK (seeds_sown BETWEEN 0 AND 9999), 
	CONSTRAINT ck_crop_shop_price_minor_per_kg_range CHECK (shop_price_minor_per_kg BETWEEN 0 AND 10000000), 
	CONSTRAINT ck_crop_shop_price_minor_per_fruit_range CHECK (shop_price_minor_per_fruit BETWEEN 0 AND 10000000)
);
INSERT INTO "crop" VALUES('Boxroom Gold','cv','seed','2025-11-15',NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,'',NULL,NULL,'','','crop',1,NULL,'nutty','','',490,NULL);
CREATE TABLE cull (
	cull_count INTEGER NOT NULL, 
	cause VARCHAR(32) NOT NULL, 
	weight_g DOUBLE, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_cull PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_cull_cause_word CHECK (cause IN ('misshapen', 'blossom-end-rot', 'cracked', 'oversize', 'damaged')), 
	CONSTRAINT ck_cull_cull_count_range CHECK (cull_count BETWEEN 1 AND 9999), 
	CONSTRAINT ck_cull_weight_g_range CHECK (weight_g BETWEEN 0.1 AND 20000), 
	CONSTRAINT fk_cull_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "cull" VALUES(1,'cracked',40.0,0,'e-pick');
INSERT INTO "cull" VALUES(2,'oversize',NULL,1,'e-pick');
CREATE TABLE cultivar (
	species VARCHAR(200) NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	habit VARCHAR(32) NOT NULL, 
	packet_days INTEGER, 
	packet_counts_from VARCHAR(32) NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_cultivar PRIMARY KEY (id), 
	CONSTRAINT ck_cultivar_habit_word CHECK (habit IN ('separate', 'perfect', 'sets-alone', 'needs-another')), 
	CONSTRAINT ck_cultivar_packet_counts_from_word CHECK (packet_counts_from IN ('sowing', 'emergence', 'transplanting')), 
	CONSTRAINT ck_cultivar_packet_days_range CHECK (packet_days BETWEEN 1 AND 400)
);
INSERT INTO "cultivar" VALUES('pattypan','Boxroom Gold','separate',58,'sowing','','cv',1,NULL);
CREATE TABLE decision (
	crop_id VARCHAR(36) NOT NULL, 
	decided_on DATE NOT NULL, 
	verdict VARCHAR(32) NOT NULL, 
	reasons VARCHAR NOT NULL, 
	changes VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_decision PRIMARY KEY (id), 
	CONSTRAINT ck_decision_verdict_word CHECK (verdict IN ('regrow', 'regrow-with-changes', 'do-not-regrow')), 
	CONSTRAINT fk_decision_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id)
);
INSERT INTO "decision" VALUES('crop','2026-01-18','regrow-with-changes','Tasty.','Sow later.','decision',1,NULL);
CREATE TABLE derived_climate_day (
	room_id VARCHAR(36) NOT NULL, 
	day DATE NOT NULL, 
	sample_count INTEGER NOT NULL, 
	temperature_min_c DOUBLE, 
	temperature_mean_c DOUBLE, 
	temperature_max_c DOUBLE, 
	humidity_min_percent DOUBLE, 
	humidity_mean_percent DOUBLE, 
	humidity_max_percent DOUBLE, 
	night_humidity_mean_percent DOUBLE, 
	vpd_mean_kpa DOUBLE, 
	vpd_max_kpa DOUBLE, 
	dew_point_max_c DOUBLE, 
	hours_above_humidity DOUBLE, 
	longest_gap_minutes DOUBLE, 
	CONSTRAINT pk_derived_climate_day PRIMARY KEY (room_id, day), 
	CONSTRAINT fk_derived_climate_day_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "derived_climate_day" VALUES('room-2','2026-01-18',1,21.5,21.5,21.5,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE device (
	room_id VARCHAR(36) NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	sort VARCHAR(32) NOT NULL, 
	device_w DOUBLE, 
	hours_per_day DOUBLE, 
	with_lamps BOOLEAN NOT NULL, 
	duty_percent DOUBLE, 
	from_day DATE, 
	until_day DATE, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_device PRIMARY KEY (id), 
	CONSTRAINT ck_device_sort_word CHECK (sort IN ('fan', 'pump', 'heater', 'humidity', 'other')), 
	CONSTRAINT ck_device_device_w_range CHECK (device_w BETWEEN 0 AND 25000), 
	CONSTRAINT ck_device_duty_percent_range CHECK (duty_percent BETWEEN 0 AND 100), 
	CONSTRAINT ck_device_hours_per_day_range CHECK (hours_per_day BETWEEN 0 AND 24), 
	CONSTRAINT fk_device_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "device" VALUES('room-2','Fan','fan',18.0,12.0,0,50.0,'2026-01-18',NULL,'device',1,NULL);
CREATE TABLE due_answer (
	due_key VARCHAR(200) NOT NULL, 
	due_day DATE NOT NULL, 
	outcome VARCHAR(32) NOT NULL, 
	crop_id VARCHAR(36), 
	until_day DATE, 
	reason VARCHAR NOT NULL, 
	entry_id VARCHAR(36), 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_due_answer PRIMARY KEY (id), 
	CONSTRAINT ck_due_answer_outcome_word CHECK (outcome IN ('done', 'put-off', 'left-out')), 
	CONSTRAINT fk_due_answer_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_due_answer_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "due_answer" VALUES('routine:routine:crop','2026-01-18','put-off','crop','2026-01-20','away',NULL,'answer',1,NULL);
CREATE TABLE entry (
	kind VARCHAR(32) NOT NULL, 
	crop_id VARCHAR(36), 
	plant_id VARCHAR(36), 
	tank_id VARCHAR(36), 
	room_id VARCHAR(36), 
	day DATE NOT NULL, 
	at TIME, 
	labour_minutes INTEGER, 
	note VARCHAR NOT NULL, 
	group_id VARCHAR(36), 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_entry PRIMARY KEY (id), 
	CONSTRAINT ck_entry_one_owner CHECK ((crop_id IS NOT NULL) + (plant_id IS NOT NULL) + (tank_id IS NOT NULL) + (room_id IS NOT NULL) = 1), 
	CONSTRAINT ck_entry_labour_minutes_range CHECK (labour_minutes BETWEEN 0 AND 1440), 
	CONSTRAINT fk_entry_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_entry_plant_id FOREIGN KEY(plant_id) REFERENCES plant (id), 
	CONSTRAINT fk_entry_room_id FOREIGN KEY(room_id) REFERENCES room (id), 
	CONSTRAINT fk_entry_tank_id FOREIGN KEY(tank_id) REFERENCES tank (id)
);
INSERT INTO "entry" VALUES('feed','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-feed',1,NULL);
INSERT INTO "entry" VALUES('reading','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-reading',1,NULL);
INSERT INTO "entry" VALUES('training','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-training',1,NULL);
INSERT INTO "entry" VALUES('pollination','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-pollination',1,NULL);
INSERT INTO "entry" VALUES('fruit-check','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-fruit-check',1,NULL);
INSERT INTO "entry" VALUES('pick','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-pick',1,NULL);
INSERT INTO "entry" VALUES('stage','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-stage',1,NULL);
INSERT INTO "entry" VALUES('problem','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-problem',1,NULL);
INSERT INTO "entry" VALUES('treatment','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-treatment',1,NULL);
INSERT INTO "entry" VALUES('light','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-light',1,NULL);
INSERT INTO "entry" VALUES('potting-on','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-potting-on',1,NULL);
INSERT INTO "entry" VALUES('calibration','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-calibration',1,NULL);
INSERT INTO "entry" VALUES('tank-care','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-tank-care',1,NULL);
INSERT INTO "entry" VALUES('meter','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-meter',1,NULL);
INSERT INTO "entry" VALUES('note','crop',NULL,NULL,NULL,'2026-01-18','08:05:00.000000',4,'a note',NULL,'e-note',2,'2026-03-07 12:00:00.000000');
CREATE TABLE entry_calibration (
	meter VARCHAR(32) NOT NULL, 
	reference_value DOUBLE, 
	reading_before DOUBLE, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_calibration PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_calibration_reading_before_range CHECK (reading_before BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_calibration_reference_value_range CHECK (reference_value BETWEEN 0 AND 20), 
	CONSTRAINT fk_entry_calibration_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_calibration" VALUES('pH',7.0,7.2,'e-calibration');
CREATE TABLE "entry_feed" (
	mix_id VARCHAR(36), 
	volume_l DOUBLE, 
	ec_ms_per_cm DOUBLE, 
	ph DOUBLE, 
	drain_l DOUBLE, 
	drain_ec_ms_per_cm DOUBLE, 
	drain_ph DOUBLE, 
	water_only BOOLEAN NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	strength_percent DOUBLE, 
	CONSTRAINT pk_entry_feed PRIMARY KEY (entry_id), 
	CONSTRAINT fk_entry_feed_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT ck_entry_feed_ec_ms_per_cm_range CHECK (ec_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_feed_drain_l_range CHECK (drain_l BETWEEN 0 AND 2000), 
	CONSTRAINT ck_entry_feed_drain_ph_range CHECK (drain_ph BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_feed_ph_range CHECK (ph BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_feed_drain_ec_ms_per_cm_range CHECK (drain_ec_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_feed_volume_l_range CHECK (volume_l BETWEEN 0 AND 2000), 
	CONSTRAINT fk_entry_feed_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id), 
	CONSTRAINT ck_entry_feed_strength_percent_range CHECK (strength_percent BETWEEN 0 AND 400)
);
INSERT INTO "entry_feed" VALUES('mix',2.8,1.88,5.9,0.6,2.24,6.1,0,'e-feed',80.0);
CREATE TABLE entry_fruit_check (
	females_open INTEGER, 
	fruit_set INTEGER, 
	dropped INTEGER, 
	thinned INTEGER, 
	hanging INTEGER, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_fruit_check PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_fruit_check_dropped_range CHECK (dropped BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_fruit_check_females_open_range CHECK (females_open BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_fruit_check_fruit_set_range CHECK (fruit_set BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_fruit_check_hanging_range CHECK (hanging BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_fruit_check_thinned_range CHECK (thinned BETWEEN 0 AND 999), 
	CONSTRAINT fk_entry_fruit_check_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_fruit_check" VALUES(1,2,3,4,5,'e-fruit-check');
CREATE TABLE entry_light (
	photoperiod_h DOUBLE, 
	on_at TIME, 
	dimming_percent DOUBLE, 
	canopy_ppfd_umol DOUBLE, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_light PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_light_canopy_ppfd_umol_range CHECK (canopy_ppfd_umol BETWEEN 0 AND 3000), 
	CONSTRAINT ck_entry_light_dimming_percent_range CHECK (dimming_percent BETWEEN 0 AND 100), 
	CONSTRAINT ck_entry_light_photoperiod_h_range CHECK (photoperiod_h BETWEEN 0 AND 24), 
	CONSTRAINT fk_entry_light_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_light" VALUES(16.0,'06:00:00.000000',40.0,200.0,'e-light');
CREATE TABLE entry_meter (
	meter_kwh DOUBLE NOT NULL, 
	starts_anew BOOLEAN NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_meter PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_meter_meter_kwh_range CHECK (meter_kwh BETWEEN 0 AND 100000000), 
	CONSTRAINT fk_entry_meter_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_meter" VALUES(10432.5,1,'e-meter');
CREATE TABLE entry_note (
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_note PRIMARY KEY (entry_id), 
	CONSTRAINT fk_entry_note_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_note" VALUES('e-note');
CREATE TABLE entry_pick (
	fruit_count INTEGER NOT NULL, 
	total_weight_g DOUBLE, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_pick PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_pick_fruit_count_range CHECK (fruit_count BETWEEN 0 AND 9999), 
	CONSTRAINT ck_entry_pick_total_weight_g_range CHECK (total_weight_g BETWEEN 0.1 AND 200000), 
	CONSTRAINT fk_entry_pick_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_pick" VALUES(2,171.0,'e-pick');
CREATE TABLE entry_pollination (
	females_pollinated INTEGER, 
	males_open INTEGER, 
	trusses_vibrated INTEGER, 
	way VARCHAR(32), 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_pollination PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_pollination_way_word CHECK (way IN ('brush', 'male-flower', 'swab', 'shaken', 'other')), 
	CONSTRAINT ck_entry_pollination_females_pollinated_range CHECK (females_pollinated BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_pollination_males_open_range CHECK (males_open BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_pollination_trusses_vibrated_range CHECK (trusses_vibrated BETWEEN 0 AND 999), 
	CONSTRAINT fk_entry_pollination_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_pollination" VALUES(2,9,1,'brush','e-pollination');
CREATE TABLE entry_potting_on (
	container_l DOUBLE, 
	medium VARCHAR(200) NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_potting_on PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_potting_on_container_l_range CHECK (container_l BETWEEN 0.01 AND 2000), 
	CONSTRAINT fk_entry_potting_on_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_potting_on" VALUES(11.0,'coir','e-potting-on');
CREATE TABLE entry_problem (
	sort VARCHAR(32) NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	severity INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_problem PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_problem_sort_word CHECK (sort IN ('pest', 'disease', 'disorder')), 
	CONSTRAINT ck_entry_problem_severity_range CHECK (severity BETWEEN 1 AND 3), 
	CONSTRAINT fk_entry_problem_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_problem" VALUES('disease','powdery mildew',2,'e-problem');
CREATE TABLE "entry_reading" (
	air_temperature_c DOUBLE, 
	relative_humidity_percent DOUBLE, 
	solution_temperature_c DOUBLE, 
	plant_height_cm DOUBLE, 
	container_weight_g DOUBLE, 
	canopy_ppfd_umol DOUBLE, 
	entry_id VARCHAR(36) NOT NULL, 
	canopy_lux DOUBLE, 
	lamp_kind VARCHAR(64) DEFAULT '' NOT NULL, 
	CONSTRAINT pk_entry_reading PRIMARY KEY (entry_id), 
	CONSTRAINT fk_entry_reading_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT ck_entry_reading_relative_humidity_percent_range CHECK (relative_humidity_percent BETWEEN 0 AND 100), 
	CONSTRAINT ck_entry_reading_plant_height_cm_range CHECK (plant_height_cm BETWEEN 0 AND 1000), 
	CONSTRAINT ck_entry_reading_canopy_ppfd_umol_range CHECK (canopy_ppfd_umol BETWEEN 0 AND 3000), 
	CONSTRAINT ck_entry_reading_solution_temperature_c_range CHECK (solution_temperature_c BETWEEN 0 AND 50), 
	CONSTRAINT ck_entry_reading_air_temperature_c_range CHECK (air_temperature_c BETWEEN -30 AND 60), 
	CONSTRAINT ck_entry_reading_container_weight_g_range CHECK (container_weight_g BETWEEN 0 AND 500000), 
	CONSTRAINT ck_entry_reading_canopy_lux_range CHECK (canopy_lux BETWEEN 0 AND 200000)
);
INSERT INTO "entry_reading" VALUES(24.6,58.0,21.0,40.5,5200.0,480.0,'e-reading',26000.0,'led-white');
CREATE TABLE entry_stage (
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_stage PRIMARY KEY (entry_id), 
	CONSTRAINT fk_entry_stage_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_stage" VALUES('e-stage');
CREATE TABLE entry_tank_care (
	work VARCHAR(32) NOT NULL, 
	volume_before_l DOUBLE, 
	water_added_l DOUBLE, 
	drained_l DOUBLE, 
	ec_before_ms_per_cm DOUBLE, 
	ec_after_ms_per_cm DOUBLE, 
	ph_before DOUBLE, 
	ph_after DOUBLE, 
	mix_id VARCHAR(36), 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_tank_care PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_tank_care_work_word CHECK (work IN ('top-up', 'correction', 'renewal', 'ph')), 
	CONSTRAINT ck_entry_tank_care_drained_l_range CHECK (drained_l BETWEEN 0 AND 5000), 
	CONSTRAINT ck_entry_tank_care_ec_after_ms_per_cm_range CHECK (ec_after_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_tank_care_ec_before_ms_per_cm_range CHECK (ec_before_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_tank_care_ph_after_range CHECK (ph_after BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_tank_care_ph_before_range CHECK (ph_before BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_tank_care_volume_before_l_range CHECK (volume_before_l BETWEEN 0 AND 5000), 
	CONSTRAINT ck_entry_tank_care_water_added_l_range CHECK (water_added_l BETWEEN 0 AND 5000), 
	CONSTRAINT fk_entry_tank_care_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT fk_entry_tank_care_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id)
);
INSERT INTO "entry_tank_care" VALUES('correction',18.0,2.0,1.0,1.7,2.0,6.4,5.8,'mix','e-tank-care');
CREATE TABLE entry_training (
	old_leaves_removed INTEGER, 
	side_shoots_removed INTEGER, 
	shoots_stopped INTEGER, 
	stems_tied INTEGER, 
	plants_staked INTEGER, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_training PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_training_old_leaves_removed_range CHECK (old_leaves_removed BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_training_plants_staked_range CHECK (plants_staked BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_training_shoots_stopped_range CHECK (shoots_stopped BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_training_side_shoots_removed_range CHECK (side_shoots_removed BETWEEN 0 AND 999), 
	CONSTRAINT ck_entry_training_stems_tied_range CHECK (stems_tied BETWEEN 0 AND 999), 
	CONSTRAINT fk_entry_training_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_training" VALUES(2,1,1,2,1,'e-training');
CREATE TABLE entry_treatment (
	product VARCHAR(200) NOT NULL, 
	target VARCHAR(200) NOT NULL, 
	dose VARCHAR(200) NOT NULL, 
	re_entry_h DOUBLE, 
	harvest_interval_days INTEGER, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_treatment PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_treatment_harvest_interval_days_range CHECK (harvest_interval_days BETWEEN 0 AND 365), 
	CONSTRAINT ck_entry_treatment_re_entry_h_range CHECK (re_entry_h BETWEEN 0 AND 720), 
	CONSTRAINT fk_entry_treatment_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_treatment" VALUES('bicarbonate','mildew','5 g/L',4.0,1,'e-treatment');
CREATE TABLE feed_step (
	crop_id VARCHAR(36) NOT NULL, 
	from_age INTEGER NOT NULL, 
	mix_id VARCHAR(36) NOT NULL, 
	strength_percent DOUBLE NOT NULL, 
	volume_l DOUBLE, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_feed_step PRIMARY KEY (id), 
	CONSTRAINT ck_feed_step_from_age_range CHECK (from_age BETWEEN 0 AND 3650), 
	CONSTRAINT ck_feed_step_strength_percent_range CHECK (strength_percent BETWEEN 0 AND 400), 
	CONSTRAINT ck_feed_step_volume_l_range CHECK (volume_l BETWEEN 0 AND 2000), 
	CONSTRAINT fk_feed_step_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_feed_step_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id)
);
INSERT INTO "feed_step" VALUES('crop',21,'mix-2',75.0,1.5,'note','feed-step',1,NULL);
CREATE TABLE feed_target (
	name VARCHAR(200) NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_feed_target PRIMARY KEY (id)
);
INSERT INTO "feed_target" VALUES('Fruit','note','target',1,NULL);
CREATE TABLE label_share (
	product_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	nutrient VARCHAR(32) NOT NULL, 
	label_percent DOUBLE NOT NULL, 
	CONSTRAINT pk_label_share PRIMARY KEY (product_id, position), 
	CONSTRAINT ck_label_share_label_percent_range CHECK (label_percent BETWEEN 0 AND 100), 
	CONSTRAINT fk_label_share_product_id FOREIGN KEY(product_id) REFERENCES shelf_product (id)
);
INSERT INTO "label_share" VALUES('product',0,'n_nitrate',2.4);
INSERT INTO "label_share" VALUES('product',1,'ca',3.1);
CREATE TABLE "lamp" (
	room_id VARCHAR(36) NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	lamp_count INTEGER NOT NULL, 
	rated_w DOUBLE, 
	wall_w DOUBLE, 
	efficacy_umol_per_j DOUBLE, 
	from_day DATE, 
	until_day DATE, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	kind VARCHAR(64) DEFAULT '' NOT NULL, 
	ballast_loss_percent DOUBLE, 
	rated_life_h DOUBLE, 
	bulb_from_day DATE, 
	price_minor INTEGER, 
	CONSTRAINT pk_lamp PRIMARY KEY (id), 
	CONSTRAINT ck_lamp_lamp_count_range CHECK (lamp_count BETWEEN 1 AND 200), 
	CONSTRAINT ck_lamp_wall_w_range CHECK (wall_w BETWEEN 0 AND 25000), 
	CONSTRAINT ck_lamp_rated_w_range CHECK (rated_w BETWEEN 0 AND 20000), 
	CONSTRAINT ck_lamp_efficacy_umol_per_j_range CHECK (efficacy_umol_per_j BETWEEN 0 AND 6), 
	CONSTRAINT fk_lamp_room_id FOREIGN KEY(room_id) REFERENCES room (id), 
	CONSTRAINT ck_lamp_ballast_loss_percent_range CHECK (ballast_loss_percent BETWEEN 0 AND 60), 
	CONSTRAINT ck_lamp_rated_life_h_range CHECK (rated_life_h BETWEEN 1 AND 200000), 
	CONSTRAINT ck_lamp_price_minor_range CHECK (price_minor BETWEEN 0 AND 1000000000)
);
INSERT INTO "lamp" VALUES('room','Lamp',2,NULL,120.0,2.6,NULL,NULL,'lamp',1,NULL,'',NULL,NULL,NULL,NULL);
INSERT INTO "lamp" VALUES('room-2','Panel',1,250.0,NULL,2.1,'2026-01-18',NULL,'lamp-2',1,NULL,'led-white',4.0,50000.0,'2026-01-18',9900);
CREATE TABLE light_step (
	room_id VARCHAR(36) NOT NULL, 
	from_day DATE, 
	crop_id VARCHAR(36), 
	from_age INTEGER, 
	photoperiod_h DOUBLE NOT NULL, 
	on_at TIME, 
	dimming_percent DOUBLE, 
	canopy_ppfd_umol DOUBLE, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_light_step PRIMARY KEY (id), 
	CONSTRAINT ck_light_step_one_start CHECK ((from_day IS NULL) <> (from_age IS NULL)), 
	CONSTRAINT ck_light_step_canopy_ppfd_umol_range CHECK (canopy_ppfd_umol BETWEEN 0 AND 3000), 
	CONSTRAINT ck_light_step_dimming_percent_range CHECK (dimming_percent BETWEEN 0 AND 100), 
	CONSTRAINT ck_light_step_from_age_range CHECK (from_age BETWEEN 0 AND 3650), 
	CONSTRAINT ck_light_step_photoperiod_h_range CHECK (photoperiod_h BETWEEN 0 AND 24), 
	CONSTRAINT fk_light_step_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_light_step_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "light_step" VALUES('room-2',NULL,'crop',30,14.5,'06:00:00.000000',80.0,420.0,'note','light-step',1,NULL);
CREATE TABLE light_step_lamp (
	step_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	lamp_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_light_step_lamp PRIMARY KEY (step_id, position), 
	CONSTRAINT fk_light_step_lamp_lamp_id FOREIGN KEY(lamp_id) REFERENCES lamp (id), 
	CONSTRAINT fk_light_step_lamp_step_id FOREIGN KEY(step_id) REFERENCES light_step (id)
);
INSERT INTO "light_step_lamp" VALUES('light-step',0,'lamp-2');
CREATE TABLE "logbook" (
	name VARCHAR(200) NOT NULL, 
	currency VARCHAR(3) NOT NULL, 
	made_at DATETIME, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	labour_rate_minor_per_h INTEGER, 
	water_price_minor_per_m3 INTEGER, 
	CONSTRAINT pk_logbook PRIMARY KEY (id), 
	CONSTRAINT ck_logbook_labour_rate_minor_per_h_range CHECK (labour_rate_minor_per_h BETWEEN 0 AND 10000000), 
	CONSTRAINT ck_logbook_water_price_minor_per_m3_range CHECK (water_price_minor_per_m3 BETWEEN 0 AND 10000000)
);
INSERT INTO "logbook" VALUES('Box room','EUR','2026-03-07 12:00:00.000000','log',1,NULL,1500,420);
CREATE TABLE logger_file (
	room_id VARCHAR(36) NOT NULL, 
	name VARCHAR NOT NULL, 
	sha256 VARCHAR(64) NOT NULL, 
	sample_count INTEGER NOT NULL, 
	first_at DATETIME NOT NULL, 
	last_at DATETIME NOT NULL, 
	added_at DATETIME NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_logger_file PRIMARY KEY (id), 
	CONSTRAINT ck_logger_file_last_after_first CHECK (last_at >= first_at), 
	CONSTRAINT fk_logger_file_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "logger_file" VALUES('room-2','air.csv','efefefefefefefefefefefefefefefefefefefefefefefefefefefefefefefef',2,'2026-01-18 06:30:00.000000','2026-01-18 07:30:00.000000','2026-01-18 06:30:00.000000','file',1,NULL);
CREATE TABLE logger_sample (
	file_id VARCHAR(36) NOT NULL, 
	at_utc DATETIME NOT NULL, 
	room_id VARCHAR(36) NOT NULL, 
	air_temperature_c DOUBLE, 
	relative_humidity_percent DOUBLE, 
	CONSTRAINT pk_logger_sample PRIMARY KEY (file_id, at_utc), 
	CONSTRAINT ck_logger_sample_air_temperature_c_range CHECK (air_temperature_c BETWEEN -30 AND 60), 
	CONSTRAINT ck_logger_sample_relative_humidity_percent_range CHECK (relative_humidity_percent BETWEEN 0 AND 100), 
	CONSTRAINT fk_logger_sample_file_id FOREIGN KEY(file_id) REFERENCES logger_file (id), 
	CONSTRAINT fk_logger_sample_room_id FOREIGN KEY(room_id) REFERENCES room (id)
)
 WITHOUT ROWID

;
INSERT INTO "logger_sample" VALUES('file','2026-03-07 12:00:00.000000','room-2',21.5,60.0);
CREATE TABLE mapped_column (
	map_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	"column" VARCHAR NOT NULL, 
	field VARCHAR(64) NOT NULL, 
	unit VARCHAR(32) NOT NULL, 
	cumulative BOOLEAN NOT NULL, 
	CONSTRAINT pk_mapped_column PRIMARY KEY (map_id, position), 
	CONSTRAINT fk_mapped_column_map_id FOREIGN KEY(map_id) REFERENCES column_map (id)
);
INSERT INTO "mapped_column" VALUES('map',0,'Date','day','',0);
INSERT INTO "mapped_column" VALUES('map',1,'Weight','pick.total_weight_g','kg',1);
CREATE TABLE mix (
	name VARCHAR(200) NOT NULL, 
	edition INTEGER NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_mix PRIMARY KEY (id), 
	CONSTRAINT ck_mix_edition_counts CHECK (edition >= 1)
);
INSERT INTO "mix" VALUES('A + B',1,'','mix',1,NULL);
INSERT INTO "mix" VALUES('A + B',2,'','mix-2',1,NULL);
CREATE TABLE "mix_part" (
	mix_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	product VARCHAR(200) NOT NULL, 
	dose_per_l FLOAT NOT NULL, 
	unit VARCHAR(16) NOT NULL, 
	product_id VARCHAR(36), 
	CONSTRAINT pk_mix_part PRIMARY KEY (mix_id, position), 
	CONSTRAINT fk_mix_part_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id), 
	CONSTRAINT ck_mix_part_dose_per_l_range CHECK (dose_per_l BETWEEN 0 AND 200), 
	CONSTRAINT fk_mix_part_product_id FOREIGN KEY(product_id) REFERENCES shelf_product (id)
);
INSERT INTO "mix_part" VALUES('mix',0,'A',2.0,'mL/L',NULL);
INSERT INTO "mix_part" VALUES('mix',1,'B',2.0,'mL/L',NULL);
INSERT INTO "mix_part" VALUES('mix-2',0,'Base A',2.0,'mL/L','product');
INSERT INTO "mix_part" VALUES('mix-2',1,'B',1.5,'mL/L',NULL);
CREATE TABLE mix_water (
	mix_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	water_id VARCHAR(36) NOT NULL, 
	water_share DOUBLE NOT NULL, 
	CONSTRAINT pk_mix_water PRIMARY KEY (mix_id, position), 
	CONSTRAINT ck_mix_water_water_share_range CHECK (water_share BETWEEN 0.001 AND 1), 
	CONSTRAINT fk_mix_water_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id), 
	CONSTRAINT fk_mix_water_water_id FOREIGN KEY(water_id) REFERENCES source_water (id)
);
INSERT INTO "mix_water" VALUES('mix-2',0,'water',0.6);
INSERT INTO "mix_water" VALUES('mix-2',1,'water',0.4);
CREATE TABLE photo (
	sha256 VARCHAR(64) NOT NULL, 
	path VARCHAR NOT NULL, 
	byte_count INTEGER NOT NULL, 
	width_px INTEGER NOT NULL, 
	height_px INTEGER NOT NULL, 
	media_type VARCHAR(64) NOT NULL, 
	original_name VARCHAR NOT NULL, 
	captured_day DATE, 
	captured_at TIME, 
	captured_source VARCHAR(32) NOT NULL, 
	captured_subsecond VARCHAR NOT NULL, 
	captured_utc_offset VARCHAR NOT NULL, 
	added_at DATETIME NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_photo PRIMARY KEY (id), 
	CONSTRAINT ck_photo_captured_source_word CHECK (captured_source IN ('exif-original', 'exif-other', 'file-name', 'file-time', 'typed', 'unknown')), 
	CONSTRAINT uq_photo_path UNIQUE (path), 
	CONSTRAINT uq_photo_sha256 UNIQUE (sha256)
);
INSERT INTO "photo" VALUES('abababababababababababababababababababababababababababababababab','photos/a/b.jpg',9,3,4,'image/jpeg','b.jpg','2026-01-18',NULL,'file-name','','','2026-03-07 12:00:00.000000','photo',1,NULL);
INSERT INTO "photo" VALUES('cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd','photos/a/c.jpg',9,3,4,'image/jpeg','c.jpg','2026-01-18',NULL,'file-name','','','2026-01-18 06:30:00.000000','photo-2',1,NULL);
CREATE TABLE photo_use (
	photo_id VARCHAR(36) NOT NULL, 
	crop_id VARCHAR(36) NOT NULL, 
	day DATE NOT NULL, 
	at TIME, 
	leads BOOLEAN NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_photo_use PRIMARY KEY (id), 
	CONSTRAINT fk_photo_use_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_photo_use_photo_id FOREIGN KEY(photo_id) REFERENCES photo (id)
);
INSERT INTO "photo_use" VALUES('photo','crop','2026-01-18',NULL,1,'','use',1,NULL);
INSERT INTO "photo_use" VALUES('photo-2','crop','2026-01-18',NULL,0,'','use-2',1,NULL);
CREATE TABLE picked_fruit (
	weight_g DOUBLE NOT NULL, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_picked_fruit PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_picked_fruit_weight_g_range CHECK (weight_g BETWEEN 0.1 AND 20000), 
	CONSTRAINT fk_picked_fruit_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "picked_fruit" VALUES(93.0,0,'e-pick');
INSERT INTO "picked_fruit" VALUES(78.0,1,'e-pick');
CREATE TABLE "placement" (
	crop_id VARCHAR(36) NOT NULL, 
	room_id VARCHAR(36) NOT NULL, 
	from_day DATE NOT NULL, 
	until_day DATE, 
	tank_id VARCHAR(36), 
	floor_share DOUBLE, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	energy_share DOUBLE, 
	CONSTRAINT pk_placement PRIMARY KEY (id), 
	CONSTRAINT ck_placement_until_after_from CHECK (until_day IS NULL OR until_day >= from_day), 
	CONSTRAINT ck_placement_floor_share_range CHECK (floor_share BETWEEN 0 AND 1), 
	CONSTRAINT fk_placement_tank_id FOREIGN KEY(tank_id) REFERENCES tank (id), 
	CONSTRAINT fk_placement_room_id FOREIGN KEY(room_id) REFERENCES room (id), 
	CONSTRAINT fk_placement_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT ck_placement_energy_share_range CHECK (energy_share BETWEEN 0 AND 1)
);
INSERT INTO "placement" VALUES('crop','room','2025-11-15',NULL,'tank',0.5,'place',1,NULL,0.25);
CREATE TABLE plant (
	crop_id VARCHAR(36) NOT NULL, 
	label VARCHAR(200) NOT NULL, 
	from_day DATE NOT NULL, 
	lost_on DATE, 
	lost_cause VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_plant PRIMARY KEY (id), 
	CONSTRAINT ck_plant_lost_after_from CHECK (lost_on IS NULL OR lost_on >= from_day), 
	CONSTRAINT fk_plant_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id)
);
INSERT INTO "plant" VALUES('crop','1','2025-11-15',NULL,'','plant',1,NULL);
CREATE TABLE pollination_tag (
	tag VARCHAR(32) NOT NULL, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_pollination_tag PRIMARY KEY (position, entry_id), 
	CONSTRAINT fk_pollination_tag_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "pollination_tag" VALUES('11',0,'e-pollination');
INSERT INTO "pollination_tag" VALUES('12',1,'e-pollination');
CREATE TABLE purchase (
	name VARCHAR(200) NOT NULL, 
	day DATE NOT NULL, 
	sort VARCHAR(32) NOT NULL, 
	price_minor INTEGER NOT NULL, 
	crop_id VARCHAR(36), 
	life_days INTEGER, 
	life_crops INTEGER, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_purchase PRIMARY KEY (id), 
	CONSTRAINT ck_purchase_sort_word CHECK (sort IN ('seed', 'medium', 'nutrients', 'containers', 'gear', 'water', 'other')), 
	CONSTRAINT ck_purchase_life_crops_range CHECK (life_crops BETWEEN 1 AND 1000), 
	CONSTRAINT ck_purchase_life_days_range CHECK (life_days BETWEEN 1 AND 36500), 
	CONSTRAINT ck_purchase_price_minor_range CHECK (price_minor BETWEEN 0 AND 1000000000), 
	CONSTRAINT fk_purchase_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id)
);
INSERT INTO "purchase" VALUES('Pots','2026-01-18','containers',1800,'crop',NULL,4,'note','purchase',1,NULL);
CREATE TABLE quoted_figure (
	decision_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	figure_key VARCHAR(64) NOT NULL, 
	label VARCHAR(200) NOT NULL, 
	value_text VARCHAR(200) NOT NULL, 
	CONSTRAINT pk_quoted_figure PRIMARY KEY (decision_id, position), 
	CONSTRAINT fk_quoted_figure_decision_id FOREIGN KEY(decision_id) REFERENCES decision (id)
);
INSERT INTO "quoted_figure" VALUES('decision',0,'yield_per_plant','Yield of a plant','1.2 kg');
INSERT INTO "quoted_figure" VALUES('decision',1,'cost','Cost','9.10');
CREATE TABLE review_photo (
	crop_id VARCHAR(36) NOT NULL, 
	photo_use_id VARCHAR(36) NOT NULL, 
	place INTEGER NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_review_photo PRIMARY KEY (id), 
	CONSTRAINT fk_review_photo_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_review_photo_photo_use_id FOREIGN KEY(photo_use_id) REFERENCES photo_use (id)
);
INSERT INTO "review_photo" VALUES('crop','use-2',1,'review-photo',1,NULL);
CREATE TABLE "room" (
	name VARCHAR(200) NOT NULL, 
	floor_m2 DOUBLE, 
	zone VARCHAR(64) NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	energy_sharing VARCHAR(32) DEFAULT 'by-floor' NOT NULL, 
	CONSTRAINT pk_room PRIMARY KEY (id), 
	CONSTRAINT ck_room_floor_m2_range CHECK (floor_m2 BETWEEN 0.01 AND 10000), 
	CONSTRAINT ck_room_energy_sharing_word CHECK (energy_sharing IN ('by-floor', 'equally', 'by-hand'))
);
INSERT INTO "room" VALUES('Box room',1.1,'UTC','','room',1,NULL,'by-floor');
INSERT INTO "room" VALUES('Second room',2.0,'Etc/UTC','','room-2',1,NULL,'by-hand');
CREATE TABLE routine (
	name VARCHAR(200) NOT NULL, 
	who VARCHAR(32) NOT NULL, 
	"when" VARCHAR(32) NOT NULL, 
	crop_id VARCHAR(36), 
	every_days INTEGER, 
	at_age INTEGER, 
	from_day DATE, 
	until_day DATE, 
	entry_kind VARCHAR(32) NOT NULL, 
	in_the_morning BOOLEAN NOT NULL, 
	is_on BOOLEAN NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_routine PRIMARY KEY (id), 
	CONSTRAINT ck_routine_who_word CHECK (who IN ('each-crop', 'crop', 'room')), 
	CONSTRAINT ck_routine_when_word CHECK ("when" IN ('every-days', 'at-age', 'on-day', 'while-females-open', 'while-flowering')), 
	CONSTRAINT ck_routine_at_age_range CHECK (at_age BETWEEN 0 AND 3650), 
	CONSTRAINT ck_routine_every_days_range CHECK (every_days BETWEEN 1 AND 366), 
	CONSTRAINT fk_routine_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id)
);
INSERT INTO "routine" VALUES('Look under the leaves','crop','every-days','crop',3,NULL,'2026-01-18','2026-03-01','problem',1,0,'note','routine',1,NULL);
CREATE TABLE shelf_product (
	name VARCHAR(200) NOT NULL, 
	form VARCHAR(32) NOT NULL, 
	basis VARCHAR(32) NOT NULL, 
	density_g_per_ml DOUBLE, 
	chelate VARCHAR(64) NOT NULL, 
	maker_dose DOUBLE, 
	maker_dose_unit VARCHAR(16) NOT NULL, 
	label_max_per_l DOUBLE, 
	pack_amount DOUBLE, 
	pack_price_minor INTEGER, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_shelf_product PRIMARY KEY (id), 
	CONSTRAINT ck_shelf_product_basis_word CHECK (basis IN ('w/w', 'w/v')), 
	CONSTRAINT ck_shelf_product_form_word CHECK (form IN ('liquid', 'solid')), 
	CONSTRAINT ck_shelf_product_density_g_per_ml_range CHECK (density_g_per_ml BETWEEN 0.2 AND 4), 
	CONSTRAINT ck_shelf_product_label_max_per_l_range CHECK (label_max_per_l BETWEEN 0 AND 1000), 
	CONSTRAINT ck_shelf_product_maker_dose_range CHECK (maker_dose BETWEEN 0 AND 100000), 
	CONSTRAINT ck_shelf_product_pack_amount_range CHECK (pack_amount BETWEEN 0.1 AND 1000000), 
	CONSTRAINT ck_shelf_product_pack_price_minor_range CHECK (pack_price_minor BETWEEN 0 AND 100000000)
);
INSERT INTO "shelf_product" VALUES('Base A','liquid','w/w',1.17,'Fe-DTPA',2.0,'mL/L',4.0,1000.0,1450,'note','product',1,NULL);
CREATE TABLE source_water (
	name VARCHAR(200) NOT NULL, 
	analysed_on DATE, 
	ec_ms_per_cm DOUBLE, 
	ph DOUBLE, 
	alkalinity_mg_per_l_caco3 DOUBLE, 
	ca_mg_per_l DOUBLE, 
	mg_mg_per_l DOUBLE, 
	na_mg_per_l DOUBLE, 
	cl_mg_per_l DOUBLE, 
	so4_mg_per_l DOUBLE, 
	k_mg_per_l DOUBLE, 
	no3_n_mg_per_l DOUBLE, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_source_water PRIMARY KEY (id), 
	CONSTRAINT ck_source_water_alkalinity_mg_per_l_caco3_range CHECK (alkalinity_mg_per_l_caco3 BETWEEN 0 AND 2000), 
	CONSTRAINT ck_source_water_ca_mg_per_l_range CHECK (ca_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_cl_mg_per_l_range CHECK (cl_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_ec_ms_per_cm_range CHECK (ec_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_source_water_k_mg_per_l_range CHECK (k_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_mg_mg_per_l_range CHECK (mg_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_na_mg_per_l_range CHECK (na_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_no3_n_mg_per_l_range CHECK (no3_n_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_source_water_ph_range CHECK (ph BETWEEN 0 AND 14), 
	CONSTRAINT ck_source_water_so4_mg_per_l_range CHECK (so4_mg_per_l BETWEEN 0 AND 20000)
);
INSERT INTO "source_water" VALUES('Tap','2026-01-18',0.62,7.4,180.0,71.0,9.0,14.0,22.0,31.0,2.0,1.5,'note','water',1,NULL);
CREATE TABLE stage_code (
	code VARCHAR(3) NOT NULL, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_stage_code PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_stage_code_code_length CHECK (length(code) BETWEEN 2 AND 3), 
	CONSTRAINT fk_stage_code_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "stage_code" VALUES('61',0,'e-stage');
INSERT INTO "stage_code" VALUES('71',1,'e-stage');
CREATE TABLE stock_move (
	product_id VARCHAR(36) NOT NULL, 
	day DATE NOT NULL, 
	sort VARCHAR(32) NOT NULL, 
	amount DOUBLE NOT NULL, 
	price_minor INTEGER, 
	entry_id VARCHAR(36), 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_stock_move PRIMARY KEY (id), 
	CONSTRAINT ck_stock_move_sort_word CHECK (sort IN ('bought', 'used', 'counted', 'thrown-away')), 
	CONSTRAINT ck_stock_move_amount_range CHECK (amount BETWEEN 0 AND 10000000), 
	CONSTRAINT ck_stock_move_price_minor_range CHECK (price_minor BETWEEN 0 AND 1000000000), 
	CONSTRAINT fk_stock_move_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT fk_stock_move_product_id FOREIGN KEY(product_id) REFERENCES shelf_product (id)
);
INSERT INTO "stock_move" VALUES('product','2026-01-18','bought',1000.0,1450,NULL,'note','move',1,NULL);
CREATE TABLE tag_seen (
	tag VARCHAR(32) NOT NULL, 
	fate VARCHAR(32) NOT NULL, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_tag_seen PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_tag_seen_fate_word CHECK (fate IN ('set', 'dropped')), 
	CONSTRAINT fk_tag_seen_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "tag_seen" VALUES('11','set',0,'e-fruit-check');
INSERT INTO "tag_seen" VALUES('12','dropped',1,'e-fruit-check');
CREATE TABLE tagged_fruit (
	tag VARCHAR(32) NOT NULL, 
	weight_g DOUBLE, 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_tagged_fruit PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_tagged_fruit_weight_g_range CHECK (weight_g BETWEEN 0.1 AND 20000), 
	CONSTRAINT fk_tagged_fruit_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "tagged_fruit" VALUES('11',93.0,0,'e-pick');
INSERT INTO "tagged_fruit" VALUES('14',NULL,1,'e-pick');
CREATE TABLE tank (
	room_id VARCHAR(36) NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	tank_l DOUBLE, 
	recirculates BOOLEAN NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_tank PRIMARY KEY (id), 
	CONSTRAINT ck_tank_tank_l_range CHECK (tank_l BETWEEN 0.1 AND 5000), 
	CONSTRAINT fk_tank_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "tank" VALUES('room','Tank',20.0,1,'','tank',1,NULL);
CREATE TABLE tank_dose (
	product VARCHAR(200) NOT NULL, 
	dose_amount DOUBLE NOT NULL, 
	unit VARCHAR(16) NOT NULL, 
	product_id VARCHAR(36), 
	position INTEGER NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_tank_dose PRIMARY KEY (position, entry_id), 
	CONSTRAINT ck_tank_dose_dose_amount_range CHECK (dose_amount BETWEEN 0 AND 100000), 
	CONSTRAINT fk_tank_dose_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT fk_tank_dose_product_id FOREIGN KEY(product_id) REFERENCES shelf_product (id)
);
INSERT INTO "tank_dose" VALUES('Base A',12.0,'mL','product',0,'e-tank-care');
CREATE TABLE target_range (
	target_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	element VARCHAR(16) NOT NULL, 
	low_mg_per_l DOUBLE, 
	high_mg_per_l DOUBLE, 
	CONSTRAINT pk_target_range PRIMARY KEY (target_id, position), 
	CONSTRAINT ck_target_range_high_mg_per_l_range CHECK (high_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT ck_target_range_low_mg_per_l_range CHECK (low_mg_per_l BETWEEN 0 AND 20000), 
	CONSTRAINT fk_target_range_target_id FOREIGN KEY(target_id) REFERENCES feed_target (id)
);
INSERT INTO "target_range" VALUES('target',0,'N',140.0,180.0);
INSERT INTO "target_range" VALUES('target',1,'Ca',150.0,NULL);
CREATE TABLE tariff (
	name VARCHAR(200) NOT NULL, 
	from_day DATE NOT NULL, 
	daily_charge_minor INTEGER, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_tariff PRIMARY KEY (id), 
	CONSTRAINT ck_tariff_daily_charge_minor_range CHECK (daily_charge_minor BETWEEN 0 AND 1000000000)
);
INSERT INTO "tariff" VALUES('Two rates','2026-01-18',42,'note','tariff',1,NULL);
CREATE TABLE tariff_band (
	tariff_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	from_at TIME NOT NULL, 
	until_at TIME NOT NULL, 
	price_per_kwh VARCHAR(32) NOT NULL, 
	CONSTRAINT pk_tariff_band PRIMARY KEY (tariff_id, position), 
	CONSTRAINT fk_tariff_band_tariff_id FOREIGN KEY(tariff_id) REFERENCES tariff (id)
);
INSERT INTO "tariff_band" VALUES('tariff',0,'06:00:00.000000','22:00:00.000000','0.31');
INSERT INTO "tariff_band" VALUES('tariff',1,'22:00:00.000000','06:00:00.000000','0.2045');
CREATE INDEX ix_change_group_id ON change (group_id);
CREATE INDEX ix_change_record_id ON change (record_id);
CREATE INDEX ix_tank_room_id ON tank (room_id);
CREATE INDEX ix_photo_use_crop_id ON photo_use (crop_id);
CREATE INDEX ix_photo_use_day ON photo_use (day);
CREATE INDEX ix_photo_use_photo_id ON photo_use (photo_id);
CREATE INDEX ix_plant_crop_id ON plant (crop_id);
CREATE INDEX ix_entry_crop_id ON entry (crop_id);
CREATE INDEX ix_entry_day ON entry (day);
CREATE INDEX ix_entry_plant_id ON entry (plant_id);
CREATE INDEX ix_entry_room_id ON entry (room_id);
CREATE INDEX ix_entry_tank_id ON entry (tank_id);
CREATE TRIGGER change_is_append_only_update BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'the history of changes is append-only'); END;
CREATE TRIGGER change_is_append_only_delete BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'the history of changes is append-only'); END;
CREATE INDEX ix_device_room_id ON device (room_id);
CREATE INDEX ix_logger_file_room_id ON logger_file (room_id);
CREATE INDEX ix_logger_file_sha256 ON logger_file (sha256);
CREATE INDEX ix_mix_water_water_id ON mix_water (water_id);
CREATE INDEX ix_decision_crop_id ON decision (crop_id);
CREATE INDEX ix_feed_step_crop_id ON feed_step (crop_id);
CREATE INDEX ix_feed_step_mix_id ON feed_step (mix_id);
CREATE INDEX ix_light_step_crop_id ON light_step (crop_id);
CREATE INDEX ix_light_step_room_id ON light_step (room_id);
CREATE INDEX ix_logger_sample_room_id_at_utc ON logger_sample (room_id, at_utc);
CREATE INDEX ix_purchase_crop_id ON purchase (crop_id);
CREATE INDEX ix_routine_crop_id ON routine (crop_id);
CREATE INDEX ix_light_step_lamp_lamp_id ON light_step_lamp (lamp_id);
CREATE INDEX ix_review_photo_crop_id ON review_photo (crop_id);
CREATE INDEX ix_review_photo_photo_use_id ON review_photo (photo_use_id);
CREATE INDEX ix_due_answer_crop_id ON due_answer (crop_id);
CREATE INDEX ix_due_answer_due_key ON due_answer (due_key);
CREATE INDEX ix_due_answer_entry_id ON due_answer (entry_id);
CREATE INDEX ix_entry_tank_care_mix_id ON entry_tank_care (mix_id);
CREATE INDEX ix_stock_move_entry_id ON stock_move (entry_id);
CREATE INDEX ix_stock_move_product_id ON stock_move (product_id);
CREATE INDEX ix_tank_dose_product_id ON tank_dose (product_id);
CREATE INDEX ix_lamp_room_id ON lamp (room_id);
CREATE INDEX ix_crop_cultivar_id ON crop (cultivar_id);
CREATE INDEX ix_placement_room_id ON placement (room_id);
CREATE INDEX ix_placement_tank_id ON placement (tank_id);
CREATE INDEX ix_placement_crop_id ON placement (crop_id);
CREATE INDEX ix_mix_part_product_id ON mix_part (product_id);
CREATE INDEX ix_entry_feed_mix_id ON entry_feed (mix_id);
CREATE UNIQUE INDEX uq_crop_name_kept ON crop (lower(name)) WHERE removed_at IS NULL;
COMMIT;
