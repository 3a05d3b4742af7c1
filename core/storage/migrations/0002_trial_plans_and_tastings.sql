-- How a trial is laid out, and how its harvest tasted. Amounts and days as in the first schema.

-- One a trial that was planned here; trials from before, or only named, have none.
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
CREATE INDEX trial_plan_by_trial ON trial_plan (trial_id);
CREATE INDEX trial_plan_by_variety ON trial_plan (variety_id);
CREATE INDEX trial_plan_by_seed_lot ON trial_plan (seed_lot_id);

-- What is compared: a medium, with the protocol's feeding or another.
CREATE TABLE treatment (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id),
    position INTEGER NOT NULL,
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    feeding TEXT NOT NULL
) STRICT;
CREATE INDEX treatment_by_trial ON treatment (trial_id, position);
CREATE INDEX treatment_by_medium ON treatment (medium_id);

-- One place of the layout, and once sown the tray that was put there.
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
CREATE INDEX planned_tray_by_trial ON planned_tray (trial_id);
CREATE INDEX planned_tray_by_tray ON planned_tray (tray_id);
CREATE INDEX planned_tray_by_place ON planned_tray (place_id);

-- A tasting: who tasted what, in which order, under which code, and what they said.
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
CREATE INDEX panel_by_trial ON panel (trial_id);

CREATE TABLE panel_sample (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    medium_id INTEGER NOT NULL REFERENCES medium (id)
) STRICT;
CREATE INDEX panel_sample_by_panel ON panel_sample (panel_id, position);
CREATE INDEX panel_sample_by_medium ON panel_sample (medium_id);

CREATE TABLE panel_attribute (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    name TEXT NOT NULL
) STRICT;
CREATE INDEX panel_attribute_by_panel ON panel_attribute (panel_id, position);

CREATE TABLE taster (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    position INTEGER NOT NULL,
    name TEXT NOT NULL
) STRICT;
CREATE INDEX taster_by_panel ON taster (panel_id, position);

CREATE TABLE serving (
    id INTEGER PRIMARY KEY,
    panel_id INTEGER NOT NULL REFERENCES panel (id),
    taster_id INTEGER NOT NULL REFERENCES taster (id),
    sample_id INTEGER NOT NULL REFERENCES panel_sample (id),
    turn INTEGER NOT NULL,
    code TEXT NOT NULL
) STRICT;
CREATE INDEX serving_by_panel ON serving (panel_id);
CREATE INDEX serving_by_taster ON serving (taster_id, turn);
CREATE INDEX serving_by_sample ON serving (sample_id);

CREATE TABLE score (
    id INTEGER PRIMARY KEY,
    serving_id INTEGER NOT NULL REFERENCES serving (id),
    attribute_id INTEGER NOT NULL REFERENCES panel_attribute (id),
    value INTEGER NOT NULL
) STRICT;
CREATE INDEX score_by_serving ON score (serving_id);
CREATE INDEX score_by_attribute ON score (attribute_id);
