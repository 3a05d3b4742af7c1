-- Repeating sowings: what is proposed, and how each of its days was answered. Days as in the first
-- schema.

-- On these weekdays or every so many days from the first on: one of the two is given.
CREATE TABLE repeat_sowing (
    id INTEGER PRIMARY KEY,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    medium_id INTEGER NOT NULL REFERENCES medium (id),
    trays INTEGER NOT NULL,
    weekdays INTEGER, -- a sum: Monday 1, Tuesday 2, Wednesday 4 … Sunday 64
    every_days INTEGER,
    from_date TEXT NOT NULL,
    until_date TEXT -- the last day that may be one of its days; none: it goes on
) STRICT;

-- A day of a repeating sowing that was answered; it is the day that the rhythm says, whenever trays
-- were sown for it.
CREATE TABLE repeat_day (
    id INTEGER PRIMARY KEY,
    repeat_sowing_id INTEGER NOT NULL REFERENCES repeat_sowing (id),
    on_date TEXT NOT NULL,
    answer TEXT NOT NULL -- sown, skipped
) STRICT;
CREATE INDEX repeat_day_by_sowing ON repeat_day (repeat_sowing_id, on_date);
