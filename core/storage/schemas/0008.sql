CREATE TABLE bowl (
    id INTEGER PRIMARY KEY,
    harvest_id INTEGER NOT NULL REFERENCES harvest (id),
    gross_mg INTEGER NOT NULL,
    tare_mg INTEGER NOT NULL
) STRICT;
CREATE TABLE brought_copy (
    id INTEGER PRIMARY KEY,
    copy_id INTEGER NOT NULL,
    brought_on TEXT NOT NULL,
    until_id INTEGER NOT NULL
) STRICT;
CREATE TABLE brought_same (
    id INTEGER PRIMARY KEY,
    brought_copy_id INTEGER NOT NULL REFERENCES brought_copy (id),
    table_name TEXT NOT NULL,
    there_id INTEGER NOT NULL,
    here_id INTEGER NOT NULL
) STRICT;
CREATE TABLE brought_undone (
    id INTEGER PRIMARY KEY,
    brought_copy_id INTEGER NOT NULL REFERENCES brought_copy (id),
    entry_id INTEGER NOT NULL
) STRICT;
CREATE TABLE climate_hour (
    id INTEGER PRIMARY KEY,
    logger_id INTEGER NOT NULL REFERENCES climate_logger (id),
    on_date TEXT NOT NULL,
    hour INTEGER NOT NULL,
    first_minute INTEGER NOT NULL, -- within the hour
    last_minute INTEGER NOT NULL,
    temperature_readings INTEGER,
    temperature_mean_milli INTEGER,
    temperature_low_milli INTEGER,
    temperature_high_milli INTEGER,
    humidity_readings INTEGER,
    humidity_mean_milli INTEGER,
    humidity_low_milli INTEGER,
    humidity_high_milli INTEGER,
    light_readings INTEGER,
    light_mean_milli INTEGER,
    light_low_milli INTEGER,
    light_high_milli INTEGER
) STRICT;
CREATE TABLE climate_logger (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    rack_id INTEGER REFERENCES rack (id),
    shelf_id INTEGER REFERENCES shelf (id),
    light_unit TEXT -- ppfd, lux; none: it has not measured light yet
) STRICT;
CREATE TABLE copy (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    copy_number INTEGER NOT NULL,
    next_counter INTEGER NOT NULL
) STRICT;
CREATE TABLE harvest (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    cut INTEGER NOT NULL,
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    net_mg INTEGER NOT NULL,
    is_last INTEGER NOT NULL,
    note TEXT NOT NULL
) STRICT;
CREATE TABLE height (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    reading_um INTEGER NOT NULL,
    read_from TEXT NOT NULL
) STRICT;
CREATE TABLE history (
    id INTEGER PRIMARY KEY,
    at_utc_ms INTEGER NOT NULL,
    intention TEXT NOT NULL,
    subject TEXT NOT NULL,
    row_count INTEGER NOT NULL,
    schema_version INTEGER NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'dropped')),
    changeset BLOB NOT NULL,
    changeset_bytes INTEGER NOT NULL,
    changeset_crc INTEGER NOT NULL
, undone_order INTEGER, details TEXT NOT NULL DEFAULT '', dropped_by INTEGER) STRICT;
CREATE TABLE labour_task (
    id INTEGER PRIMARY KEY,
    task TEXT NOT NULL,
    seconds INTEGER NOT NULL
) STRICT;
CREATE TABLE medium (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    form TEXT NOT NULL,
    is_nutrient_bearing INTEGER NOT NULL,
    is_reusable INTEGER NOT NULL,
    planned_uses INTEGER,
    surface_below_rim_um INTEGER,
    amount_ul INTEGER,
    marker INTEGER NOT NULL,
    source TEXT NOT NULL,
    note TEXT NOT NULL,
    is_retired INTEGER NOT NULL
) STRICT;
CREATE TABLE medium_as_run (
    id INTEGER PRIMARY KEY,
    medium_id INTEGER NOT NULL REFERENCES medium (id)
) STRICT;
CREATE TABLE medium_group (
    id INTEGER PRIMARY KEY,
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    name TEXT NOT NULL
) STRICT;
CREATE TABLE panel (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER REFERENCES trial (id),
    name TEXT NOT NULL,
    on_date TEXT NOT NULL,
    method TEXT NOT NULL,
    draw_number INTEGER NOT NULL,
    closed_on TEXT,
    note TEXT NOT NULL
) STRICT;
CREATE TABLE panel_attribute (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    name TEXT NOT NULL
) STRICT;
CREATE TABLE panel_sample (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    medium_id INTEGER NOT NULL REFERENCES medium (id)
) STRICT;
CREATE TABLE photo (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    file_name TEXT NOT NULL,
    caption TEXT NOT NULL
) STRICT;
CREATE TABLE piece (
    id INTEGER PRIMARY KEY,
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    number INTEGER NOT NULL,
    bought_on TEXT,
    retired_on TEXT,
    note TEXT NOT NULL
) STRICT;
CREATE TABLE place (
    id INTEGER PRIMARY KEY,
    shelf_id INTEGER NOT NULL REFERENCES shelf (id),
    number INTEGER NOT NULL
) STRICT;
CREATE TABLE planned_tray (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id),
    treatment INTEGER NOT NULL,
    block INTEGER NOT NULL,
    position INTEGER NOT NULL,
    place_id INTEGER REFERENCES place (id),
    is_moved INTEGER NOT NULL,
    tray_id INTEGER REFERENCES tray (id)
) STRICT;
CREATE TABLE price (
    id INTEGER PRIMARY KEY,
    item TEXT NOT NULL,
    medium_id INTEGER REFERENCES medium (id),
    from_date TEXT NOT NULL,
    amount INTEGER NOT NULL
) STRICT;
CREATE TABLE price_measure (
    id INTEGER PRIMARY KEY,
    price_id INTEGER NOT NULL REFERENCES price (id),
    measure TEXT NOT NULL
) STRICT;
CREATE TABLE protocol_stage (
    id INTEGER PRIMARY KEY,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    position INTEGER NOT NULL,
    stage TEXT NOT NULL,
    length_min INTEGER NOT NULL,
    cue TEXT NOT NULL,
    waterings_per_day INTEGER NOT NULL,
    method TEXT NOT NULL,
    amount_ul INTEGER,
    water TEXT NOT NULL,
    waters_nutrient_bearing TEXT
) STRICT;
CREATE TABLE rack (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    position INTEGER NOT NULL
) STRICT;
CREATE TABLE residue (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    gross_mg INTEGER,
    tare_mg INTEGER,
    net_mg INTEGER NOT NULL
) STRICT;
CREATE TABLE room (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    units TEXT NOT NULL,
    currency TEXT NOT NULL,
    morning_minute INTEGER NOT NULL,
    evening_minute INTEGER NOT NULL,
    tray_length_um INTEGER NOT NULL,
    tray_width_um INTEGER NOT NULL
) STRICT;
CREATE TABLE sanitising (
    id INTEGER PRIMARY KEY,
    piece_id INTEGER NOT NULL REFERENCES piece (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    method TEXT NOT NULL
) STRICT;
CREATE TABLE score (
    id INTEGER PRIMARY KEY,
    serving_id INTEGER NOT NULL REFERENCES serving (id),
    attribute_id INTEGER NOT NULL REFERENCES panel_attribute (id),
    value INTEGER NOT NULL
) STRICT;
CREATE TABLE season (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    starts_on TEXT NOT NULL,
    planned_trials INTEGER, -- none: looked at after every sowing
    main_metric TEXT NOT NULL
) STRICT;
CREATE TABLE seed_lot (
    id INTEGER PRIMARY KEY,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    lot_number TEXT NOT NULL,
    supplier TEXT NOT NULL,
    bought_on TEXT,
    bought_mg INTEGER,
    price INTEGER,
    germination_percent REAL,
    note TEXT NOT NULL,
    is_used_up INTEGER NOT NULL
) STRICT;
CREATE TABLE serving (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    taster_id INTEGER NOT NULL REFERENCES taster (id),
    sample_id INTEGER NOT NULL REFERENCES panel_sample (id),
    turn INTEGER NOT NULL,
    code TEXT NOT NULL
) STRICT;
CREATE TABLE shelf (
    id INTEGER PRIMARY KEY,
    rack_id INTEGER NOT NULL REFERENCES rack (id),
    name TEXT NOT NULL,
    position INTEGER NOT NULL,
    light_mw INTEGER,
    light_minutes INTEGER
) STRICT;
CREATE TABLE shelf_ppfd (
    id INTEGER PRIMARY KEY,
    shelf_id INTEGER NOT NULL REFERENCES shelf (id),
    ppfd_milli INTEGER NOT NULL
) STRICT;
CREATE TABLE stay (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    place_id INTEGER NOT NULL REFERENCES place (id),
    from_on TEXT NOT NULL,
    from_minute INTEGER NOT NULL,
    to_on TEXT,
    to_minute INTEGER
) STRICT;
CREATE TABLE stock_correction (
    id INTEGER PRIMARY KEY,
    seed_lot_id INTEGER NOT NULL REFERENCES seed_lot (id),
    on_date TEXT NOT NULL,
    change_mg INTEGER NOT NULL,
    reason TEXT NOT NULL
) STRICT;
CREATE TABLE taken_copy (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    taken_at_utc_ms INTEGER NOT NULL,
    base_entry_id INTEGER NOT NULL,
    base_entry_crc INTEGER NOT NULL,
    from_id INTEGER NOT NULL
) STRICT;
CREATE TABLE taster (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    name TEXT NOT NULL
) STRICT;
CREATE TABLE tray (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    seed_lot_id INTEGER REFERENCES seed_lot (id),
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    piece_id INTEGER REFERENCES piece (id),
    seed_mg INTEGER,
    sown_on TEXT NOT NULL,
    sown_minute INTEGER NOT NULL,
    trial_id INTEGER REFERENCES trial (id),
    block INTEGER,
    state TEXT NOT NULL,
    ended_on TEXT,
    ended_minute INTEGER,
    discard_reason TEXT,
    set_aside_reason TEXT,
    sown_by TEXT
) STRICT;
CREATE TABLE tray_note (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    text TEXT NOT NULL
) STRICT;
CREATE TABLE tray_stage (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    position INTEGER NOT NULL,
    stage TEXT NOT NULL,
    planned_on TEXT NOT NULL,
    planned_minute INTEGER NOT NULL,
    length_min INTEGER NOT NULL,
    delay_min INTEGER NOT NULL,
    started_on TEXT,
    started_minute INTEGER,
    cue TEXT NOT NULL,
    waterings_per_day INTEGER NOT NULL,
    method TEXT NOT NULL,
    amount_ul INTEGER,
    water TEXT NOT NULL
) STRICT;
CREATE TABLE treatment (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id),
    position INTEGER NOT NULL,
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    feeding TEXT NOT NULL
) STRICT;
CREATE TABLE trial (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL,
    name TEXT NOT NULL,
    question TEXT NOT NULL,
    margin_mg INTEGER,
    control_medium_id INTEGER REFERENCES medium (id),
    started_on TEXT,
    note TEXT NOT NULL
) STRICT;
CREATE TABLE trial_plan (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id),
    design TEXT NOT NULL,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    seed_lot_id INTEGER REFERENCES seed_lot (id),
    seed_mg INTEGER,
    sow_on TEXT NOT NULL,
    sow_minute INTEGER NOT NULL,
    starts_with_soak INTEGER NOT NULL,
    blocks INTEGER NOT NULL,
    trays_each INTEGER NOT NULL,
    spread_mg INTEGER,
    draw_number INTEGER NOT NULL
) STRICT;
CREATE TABLE variety (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    code_prefix TEXT NOT NULL,
    seed_mg INTEGER,
    source TEXT NOT NULL,
    note TEXT NOT NULL,
    is_retired INTEGER NOT NULL
) STRICT;
CREATE TABLE water_reading (
    id INTEGER PRIMARY KEY,
    on_date TEXT NOT NULL,
    slot TEXT NOT NULL,
    minute INTEGER NOT NULL,
    water TEXT NOT NULL,
    tray_id INTEGER REFERENCES tray (id),
    ph REAL,
    ec_us_cm REAL
) STRICT;
CREATE TABLE water_recipe (
    id INTEGER PRIMARY KEY,
    water TEXT NOT NULL,
    concentrate TEXT NOT NULL,
    dose_ul_per_l INTEGER,
    ph_low REAL,
    ph_high REAL,
    ec_low_us_cm REAL,
    ec_high_us_cm REAL
) STRICT;
CREATE TABLE watering (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    slot TEXT NOT NULL,
    minute INTEGER NOT NULL,
    method TEXT NOT NULL,
    water TEXT NOT NULL,
    amount_ul INTEGER
) STRICT;
CREATE TABLE watering_between (
    id INTEGER PRIMARY KEY,
    watering_id INTEGER NOT NULL REFERENCES watering (id)
) STRICT;
CREATE TABLE watering_look (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    slot TEXT NOT NULL,
    minute INTEGER NOT NULL
) STRICT;
CREATE INDEX bowl_by_harvest ON bowl (harvest_id);
CREATE INDEX brought_same_by_copy ON brought_same (brought_copy_id);
CREATE INDEX brought_undone_by_copy ON brought_undone (brought_copy_id);
CREATE INDEX climate_hour_by_logger ON climate_hour (logger_id, on_date, hour);
CREATE INDEX harvest_by_day ON harvest (on_date);
CREATE INDEX harvest_by_tray ON harvest (tray_id, on_date);
CREATE INDEX height_by_tray ON height (tray_id, on_date);
CREATE INDEX history_undone ON history (undone_order) WHERE state = 'undone';
CREATE INDEX medium_as_run_by_medium ON medium_as_run (medium_id);
CREATE INDEX medium_group_by_medium ON medium_group (medium_id);
CREATE INDEX panel_attribute_by_panel ON panel_attribute (panel_id, position);
CREATE INDEX panel_by_trial ON panel (trial_id);
CREATE INDEX panel_sample_by_medium ON panel_sample (medium_id);
CREATE INDEX panel_sample_by_panel ON panel_sample (panel_id, position);
CREATE INDEX photo_by_tray ON photo (tray_id, on_date);
CREATE INDEX piece_by_medium ON piece (medium_id);
CREATE INDEX place_by_shelf ON place (shelf_id);
CREATE INDEX planned_tray_by_place ON planned_tray (place_id);
CREATE INDEX planned_tray_by_tray ON planned_tray (tray_id);
CREATE INDEX planned_tray_by_trial ON planned_tray (trial_id);
CREATE INDEX price_by_item ON price (item, from_date);
CREATE INDEX price_by_medium ON price (medium_id);
CREATE INDEX price_measure_by_price ON price_measure (price_id);
CREATE INDEX protocol_stage_by_variety ON protocol_stage (variety_id);
CREATE INDEX residue_by_tray ON residue (tray_id);
CREATE INDEX sanitising_by_piece ON sanitising (piece_id, on_date);
CREATE INDEX score_by_attribute ON score (attribute_id);
CREATE INDEX score_by_serving ON score (serving_id);
CREATE INDEX seed_lot_by_variety ON seed_lot (variety_id);
CREATE INDEX serving_by_panel ON serving (panel_id);
CREATE INDEX serving_by_sample ON serving (sample_id);
CREATE INDEX serving_by_taster ON serving (taster_id, turn);
CREATE INDEX shelf_by_rack ON shelf (rack_id);
CREATE INDEX shelf_ppfd_by_shelf ON shelf_ppfd (shelf_id);
CREATE INDEX stay_by_place ON stay (place_id);
CREATE INDEX stay_by_tray ON stay (tray_id, from_on);
CREATE INDEX stay_present ON stay (place_id) WHERE to_on IS NULL;
CREATE INDEX stock_correction_by_lot ON stock_correction (seed_lot_id);
CREATE INDEX taster_by_panel ON taster (panel_id, position);
CREATE INDEX tray_by_medium ON tray (medium_id);
CREATE INDEX tray_by_piece ON tray (piece_id);
CREATE INDEX tray_by_seed_lot ON tray (seed_lot_id);
CREATE INDEX tray_by_sown ON tray (sown_on);
CREATE INDEX tray_by_trial ON tray (trial_id);
CREATE INDEX tray_by_variety ON tray (variety_id);
CREATE INDEX tray_growing ON tray (sown_on) WHERE state = 'growing';
CREATE INDEX tray_note_by_tray ON tray_note (tray_id, on_date);
CREATE INDEX tray_stage_by_tray ON tray_stage (tray_id, position);
CREATE INDEX treatment_by_medium ON treatment (medium_id);
CREATE INDEX treatment_by_trial ON treatment (trial_id, position);
CREATE INDEX trial_plan_by_seed_lot ON trial_plan (seed_lot_id);
CREATE INDEX trial_plan_by_trial ON trial_plan (trial_id);
CREATE INDEX trial_plan_by_variety ON trial_plan (variety_id);
CREATE INDEX water_reading_by_day ON water_reading (on_date);
CREATE INDEX water_reading_by_tray ON water_reading (tray_id);
CREATE INDEX watering_between_by_watering ON watering_between (watering_id);
CREATE INDEX watering_by_day ON watering (on_date, slot);
CREATE INDEX watering_by_tray ON watering (tray_id, on_date, slot);
CREATE INDEX watering_look_by_tray ON watering_look (tray_id, on_date, slot);
