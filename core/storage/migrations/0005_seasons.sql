-- Declared seasons, and the grower's own groups of media. Days as in the first schema.

-- The sowings from its first day on until the next season begins: one series, judged as one.
CREATE TABLE season (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    starts_on TEXT NOT NULL,
    planned_trials INTEGER, -- none: looked at after every sowing
    main_metric TEXT NOT NULL
) STRICT;

-- Which media are answered for together, in the grower's word. A medium has one at most.
CREATE TABLE medium_group (
    id INTEGER PRIMARY KEY,
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    name TEXT NOT NULL
) STRICT;
CREATE INDEX medium_group_by_medium ON medium_group (medium_id);
