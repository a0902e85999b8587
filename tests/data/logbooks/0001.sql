BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
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
INSERT INTO "change" VALUES(1,'1','2026-03-07 12:00:00.000000','add','LogbookFacts','log',NULL,'{"id": "log", "name": "Box room", "currency": "EUR", "made_at": "2026-03-07T12:00:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(2,'1','2026-03-07 12:00:00.000000','add','Room','room',NULL,'{"id": "room", "name": "Box room", "floor_m2": 1.1, "zone": "UTC", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(3,'1','2026-03-07 12:00:00.000000','add','Lamp','lamp',NULL,'{"id": "lamp", "room_id": "room", "name": "Lamp", "lamp_count": 2, "rated_w": null, "wall_w": 120.0, "efficacy_umol_per_j": 2.6, "from_day": null, "until_day": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(4,'1','2026-03-07 12:00:00.000000','add','Tank','tank',NULL,'{"id": "tank", "room_id": "room", "name": "Tank", "tank_l": 20.0, "recirculates": true, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(5,'1','2026-03-07 12:00:00.000000','add','Cultivar','cv',NULL,'{"id": "cv", "species": "pattypan", "name": "Boxroom Gold", "habit": "separate", "packet_days": 58, "packet_counts_from": "sowing", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(6,'1','2026-03-07 12:00:00.000000','add','Crop','crop',NULL,'{"id": "crop", "name": "Boxroom Gold", "cultivar_id": "cv", "started_from": "seed", "sown_on": "2025-11-15", "emerged_on": null, "transplanted_on": null, "first_flower_on": null, "first_pick_on": null, "planned_clearing_on": null, "cleared_on": null, "medium": "", "system": "", "container_l": null, "seed_lot": "", "seeds_sown": null, "seeds_emerged": null, "trying": "", "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(7,'1','2026-03-07 12:00:00.000000','add','Mix','mix',NULL,'{"id": "mix", "name": "A + B", "edition": 1, "parts": [{"product": "A", "dose_per_l": 2.0, "unit": "mL/L"}, {"product": "B", "dose_per_l": 2.0, "unit": "mL/L"}], "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(8,'1','2026-03-07 12:00:00.000000','add','Plant','plant',NULL,'{"id": "plant", "crop_id": "crop", "label": "1", "from_day": "2025-11-15", "lost_on": null, "lost_cause": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(9,'1','2026-03-07 12:00:00.000000','add','Placement','place',NULL,'{"id": "place", "crop_id": "crop", "room_id": "room", "from_day": "2025-11-15", "until_day": null, "tank_id": "tank", "floor_share": 0.5, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(10,'1','2026-03-07 12:00:00.000000','add','Photo','photo',NULL,'{"id": "photo", "sha256": "abababababababababababababababababababababababababababababababab", "path": "photos/a/b.jpg", "byte_count": 9, "width_px": 3, "height_px": 4, "media_type": "image/jpeg", "original_name": "b.jpg", "captured": {"day": "2026-01-18", "at": null, "source": "file-name", "subsecond": "", "utc_offset": ""}, "added_at": "2026-03-07T12:00:00+00:00", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(11,'1','2026-03-07 12:00:00.000000','add','PhotoUse','use',NULL,'{"id": "use", "photo_id": "photo", "crop_id": "crop", "day": "2026-01-18", "at": null, "leads": true, "note": "", "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(12,'1','2026-03-07 12:00:00.000000','add','Entry','e-feed',NULL,'{"id": "e-feed", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "feed", "mix_id": "mix", "volume_l": 2.8, "ec_ms_per_cm": 1.88, "ph": 5.9, "drain_l": 0.6, "drain_ec_ms_per_cm": 2.24, "drain_ph": 6.1, "water_only": false}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(13,'1','2026-03-07 12:00:00.000000','add','Entry','e-reading',NULL,'{"id": "e-reading", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "reading", "air_temperature_c": 24.6, "relative_humidity_percent": 58, "solution_temperature_c": 21.0, "plant_height_cm": 40.5, "container_weight_g": 5200.0, "canopy_ppfd_umol": 480.0}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(14,'1','2026-03-07 12:00:00.000000','add','Entry','e-training',NULL,'{"id": "e-training", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "training", "old_leaves_removed": 2, "side_shoots_removed": 1, "shoots_stopped": 1, "stems_tied": 2, "plants_staked": 1}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(15,'1','2026-03-07 12:00:00.000000','add','Entry','e-pollination',NULL,'{"id": "e-pollination", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "pollination", "females_pollinated": 2, "males_open": 9, "trusses_vibrated": 1, "way": "brush"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(16,'1','2026-03-07 12:00:00.000000','add','Entry','e-fruit-check',NULL,'{"id": "e-fruit-check", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "fruit-check", "females_open": 1, "fruit_set": 2, "dropped": 3, "thinned": 4, "hanging": 5}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(17,'1','2026-03-07 12:00:00.000000','add','Entry','e-pick',NULL,'{"id": "e-pick", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "pick", "fruit_count": 2, "total_weight_g": 171.0, "weights_g": [93.0, 78.0], "culls": [{"cull_count": 1, "cause": "cracked", "weight_g": 40.0}, {"cull_count": 2, "cause": "oversize", "weight_g": null}]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(18,'1','2026-03-07 12:00:00.000000','add','Entry','e-stage',NULL,'{"id": "e-stage", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "stage", "codes": ["61", "71"]}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(19,'1','2026-03-07 12:00:00.000000','add','Entry','e-problem',NULL,'{"id": "e-problem", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "problem", "sort": "disease", "name": "powdery mildew", "severity": 2}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(20,'1','2026-03-07 12:00:00.000000','add','Entry','e-treatment',NULL,'{"id": "e-treatment", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "treatment", "product": "bicarbonate", "target": "mildew", "dose": "5 g/L", "re_entry_h": 4.0, "harvest_interval_days": 1}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(21,'1','2026-03-07 12:00:00.000000','add','Entry','e-light',NULL,'{"id": "e-light", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "light", "photoperiod_h": 16.0, "on_at": "06:00:00", "dimming_percent": 40.0, "canopy_ppfd_umol": 200.0}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(22,'1','2026-03-07 12:00:00.000000','add','Entry','e-potting-on',NULL,'{"id": "e-potting-on", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "potting-on", "container_l": 11.0, "medium": "coir"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(23,'1','2026-03-07 12:00:00.000000','add','Entry','e-calibration',NULL,'{"id": "e-calibration", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "calibration", "meter": "pH", "reference_value": 7.0, "reading_before": 7.2}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(24,'1','2026-03-07 12:00:00.000000','add','Entry','e-note',NULL,'{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}');
INSERT INTO "change" VALUES(25,'2','2026-03-07 12:00:00.000000','remove','Entry','e-note','{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 1, "removed_at": null}','{"id": "e-note", "owner": {"kind": "crop", "id": "crop"}, "day": "2026-01-18", "detail": {"kind": "note"}, "at": "08:05:00", "labour_minutes": 4, "note": "a note", "group_id": null, "version": 2, "removed_at": "2026-03-07T12:00:00+00:00"}');
CREATE TABLE crop (
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
	CONSTRAINT pk_crop PRIMARY KEY (id), 
	CONSTRAINT ck_crop_day_zero CHECK ((started_from = 'seed' AND sown_on IS NOT NULL) OR (started_from = 'bought-plant' AND transplanted_on IS NOT NULL)), 
	CONSTRAINT ck_crop_started_from_word CHECK (started_from IN ('seed', 'bought-plant')), 
	CONSTRAINT ck_crop_container_l_range CHECK (container_l BETWEEN 0.01 AND 2000), 
	CONSTRAINT ck_crop_seeds_emerged_range CHECK (seeds_emerged BETWEEN 0 AND 9999), 
	CONSTRAINT ck_crop_seeds_sown_range CHECK (seeds_sown BETWEEN 0 AND 9999), 
	CONSTRAINT fk_crop_cultivar_id FOREIGN KEY(cultivar_id) REFERENCES cultivar (id)
);
INSERT INTO "crop" VALUES('Boxroom Gold','cv','seed','2025-11-15',NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,'',NULL,NULL,'','','crop',1,NULL);
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
CREATE TABLE entry_feed (
	mix_id VARCHAR(36), 
	volume_l DOUBLE, 
	ec_ms_per_cm DOUBLE, 
	ph DOUBLE, 
	drain_l DOUBLE, 
	drain_ec_ms_per_cm DOUBLE, 
	drain_ph DOUBLE, 
	water_only BOOLEAN NOT NULL, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_feed PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_feed_drain_ec_ms_per_cm_range CHECK (drain_ec_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_feed_drain_l_range CHECK (drain_l BETWEEN 0 AND 2000), 
	CONSTRAINT ck_entry_feed_drain_ph_range CHECK (drain_ph BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_feed_ec_ms_per_cm_range CHECK (ec_ms_per_cm BETWEEN 0 AND 20), 
	CONSTRAINT ck_entry_feed_ph_range CHECK (ph BETWEEN 0 AND 14), 
	CONSTRAINT ck_entry_feed_volume_l_range CHECK (volume_l BETWEEN 0 AND 2000), 
	CONSTRAINT fk_entry_feed_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id), 
	CONSTRAINT fk_entry_feed_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id)
);
INSERT INTO "entry_feed" VALUES('mix',2.8,1.88,5.9,0.6,2.24,6.1,0,'e-feed');
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
CREATE TABLE entry_reading (
	air_temperature_c DOUBLE, 
	relative_humidity_percent DOUBLE, 
	solution_temperature_c DOUBLE, 
	plant_height_cm DOUBLE, 
	container_weight_g DOUBLE, 
	canopy_ppfd_umol DOUBLE, 
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_reading PRIMARY KEY (entry_id), 
	CONSTRAINT ck_entry_reading_air_temperature_c_range CHECK (air_temperature_c BETWEEN -30 AND 60), 
	CONSTRAINT ck_entry_reading_canopy_ppfd_umol_range CHECK (canopy_ppfd_umol BETWEEN 0 AND 3000), 
	CONSTRAINT ck_entry_reading_container_weight_g_range CHECK (container_weight_g BETWEEN 0 AND 500000), 
	CONSTRAINT ck_entry_reading_plant_height_cm_range CHECK (plant_height_cm BETWEEN 0 AND 1000), 
	CONSTRAINT ck_entry_reading_relative_humidity_percent_range CHECK (relative_humidity_percent BETWEEN 0 AND 100), 
	CONSTRAINT ck_entry_reading_solution_temperature_c_range CHECK (solution_temperature_c BETWEEN 0 AND 50), 
	CONSTRAINT fk_entry_reading_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_reading" VALUES(24.6,58.0,21.0,40.5,5200.0,480.0,'e-reading');
CREATE TABLE entry_stage (
	entry_id VARCHAR(36) NOT NULL, 
	CONSTRAINT pk_entry_stage PRIMARY KEY (entry_id), 
	CONSTRAINT fk_entry_stage_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
INSERT INTO "entry_stage" VALUES('e-stage');
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
CREATE TABLE lamp (
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
	CONSTRAINT pk_lamp PRIMARY KEY (id), 
	CONSTRAINT ck_lamp_efficacy_umol_per_j_range CHECK (efficacy_umol_per_j BETWEEN 0 AND 6), 
	CONSTRAINT ck_lamp_lamp_count_range CHECK (lamp_count BETWEEN 1 AND 200), 
	CONSTRAINT ck_lamp_rated_w_range CHECK (rated_w BETWEEN 0 AND 20000), 
	CONSTRAINT ck_lamp_wall_w_range CHECK (wall_w BETWEEN 0 AND 25000), 
	CONSTRAINT fk_lamp_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "lamp" VALUES('room','Lamp',2,NULL,120.0,2.6,NULL,NULL,'lamp',1,NULL);
CREATE TABLE logbook (
	name VARCHAR(200) NOT NULL, 
	currency VARCHAR(3) NOT NULL, 
	made_at DATETIME, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_logbook PRIMARY KEY (id)
);
INSERT INTO "logbook" VALUES('Box room','EUR','2026-03-07 12:00:00.000000','log',1,NULL);
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
CREATE TABLE mix_part (
	mix_id VARCHAR(36) NOT NULL, 
	position INTEGER NOT NULL, 
	product VARCHAR(200) NOT NULL, 
	dose_per_l FLOAT NOT NULL, 
	unit VARCHAR(16) NOT NULL, 
	CONSTRAINT pk_mix_part PRIMARY KEY (mix_id, position), 
	CONSTRAINT ck_mix_part_dose_per_l_range CHECK (dose_per_l BETWEEN 0 AND 200), 
	CONSTRAINT fk_mix_part_mix_id FOREIGN KEY(mix_id) REFERENCES mix (id)
);
INSERT INTO "mix_part" VALUES('mix',0,'A',2.0,'mL/L');
INSERT INTO "mix_part" VALUES('mix',1,'B',2.0,'mL/L');
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
CREATE TABLE placement (
	crop_id VARCHAR(36) NOT NULL, 
	room_id VARCHAR(36) NOT NULL, 
	from_day DATE NOT NULL, 
	until_day DATE, 
	tank_id VARCHAR(36), 
	floor_share DOUBLE, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_placement PRIMARY KEY (id), 
	CONSTRAINT ck_placement_floor_share_range CHECK (floor_share BETWEEN 0 AND 1), 
	CONSTRAINT ck_placement_until_after_from CHECK (until_day IS NULL OR until_day >= from_day), 
	CONSTRAINT fk_placement_crop_id FOREIGN KEY(crop_id) REFERENCES crop (id), 
	CONSTRAINT fk_placement_room_id FOREIGN KEY(room_id) REFERENCES room (id), 
	CONSTRAINT fk_placement_tank_id FOREIGN KEY(tank_id) REFERENCES tank (id)
);
INSERT INTO "placement" VALUES('crop','room','2025-11-15',NULL,'tank',0.5,'place',1,NULL);
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
CREATE TABLE room (
	name VARCHAR(200) NOT NULL, 
	floor_m2 DOUBLE, 
	zone VARCHAR(64) NOT NULL, 
	note VARCHAR NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	version INTEGER NOT NULL, 
	removed_at DATETIME, 
	CONSTRAINT pk_room PRIMARY KEY (id), 
	CONSTRAINT ck_room_floor_m2_range CHECK (floor_m2 BETWEEN 0.01 AND 10000)
);
INSERT INTO "room" VALUES('Box room',1.1,'UTC','','room',1,NULL);
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
CREATE INDEX ix_change_group_id ON change (group_id);
CREATE INDEX ix_change_record_id ON change (record_id);
CREATE INDEX ix_crop_cultivar_id ON crop (cultivar_id);
CREATE INDEX ix_lamp_room_id ON lamp (room_id);
CREATE INDEX ix_tank_room_id ON tank (room_id);
CREATE INDEX ix_photo_use_crop_id ON photo_use (crop_id);
CREATE INDEX ix_photo_use_day ON photo_use (day);
CREATE INDEX ix_photo_use_photo_id ON photo_use (photo_id);
CREATE INDEX ix_placement_crop_id ON placement (crop_id);
CREATE INDEX ix_placement_room_id ON placement (room_id);
CREATE INDEX ix_placement_tank_id ON placement (tank_id);
CREATE INDEX ix_plant_crop_id ON plant (crop_id);
CREATE INDEX ix_entry_crop_id ON entry (crop_id);
CREATE INDEX ix_entry_day ON entry (day);
CREATE INDEX ix_entry_plant_id ON entry (plant_id);
CREATE INDEX ix_entry_room_id ON entry (room_id);
CREATE INDEX ix_entry_tank_id ON entry (tank_id);
CREATE INDEX ix_entry_feed_mix_id ON entry_feed (mix_id);
CREATE UNIQUE INDEX uq_crop_name_kept ON crop (lower(name)) WHERE removed_at IS NULL;
CREATE TRIGGER change_is_append_only_update BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'the history of changes is append-only'); END;
CREATE TRIGGER change_is_append_only_delete BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'the history of changes is append-only'); END;
COMMIT;
