-- Water between rounds, and looks that found no need of it. Amounts and days as in the first schema.

-- Says of a watering that it was no round's tick: given as needed, after the round of its slot began.
CREATE TABLE watering_between (
    id INTEGER PRIMARY KEY,
    watering_id INTEGER NOT NULL REFERENCES watering (id)
) STRICT;
CREATE INDEX watering_between_by_watering ON watering_between (watering_id);

-- A tray that is watered as needed was looked at in a round and needed nothing.
CREATE TABLE watering_look (
    id INTEGER PRIMARY KEY,
    tray_id INTEGER NOT NULL REFERENCES tray (id),
    on_date TEXT NOT NULL,
    slot TEXT NOT NULL,
    minute INTEGER NOT NULL
) STRICT;
CREATE INDEX watering_look_by_tray ON watering_look (tray_id, on_date, slot);
