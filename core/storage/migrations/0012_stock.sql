-- What is kept beside seed, counts of it, and who sanitised a piece with what. Days as in the first
-- schema. An amount is in µL of what is measured, in pieces of what is counted.

-- A thing that is used up. Of a medium its name is the medium's; of a concentrate the recipe's.
CREATE TABLE supply (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    kind TEXT NOT NULL, -- medium, concentrate, sanitiser, packaging, other
    medium_id INTEGER REFERENCES medium (id),
    unit TEXT NOT NULL, -- millilitre, piece
    each_use_amount INTEGER, -- a cut of packaging, a piece sanitised of a sanitiser
    low_days INTEGER, -- said to run low below so many days; none: as the program does
    low_amount INTEGER,
    is_retired INTEGER NOT NULL
) STRICT;
CREATE INDEX supply_by_medium ON supply (medium_id);

-- The shelf was counted, or something was bought. Until the next count, what trays use is taken off.
CREATE TABLE supply_count (
    id INTEGER PRIMARY KEY,
    supply_id INTEGER NOT NULL REFERENCES supply (id),
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    what TEXT NOT NULL, -- counted, bought
    amount INTEGER NOT NULL,
    note TEXT NOT NULL
) STRICT;
CREATE INDEX supply_count_by_supply ON supply_count (supply_id, on_date);

-- From when on a variety's seed is said to run low. A variety has one at most.
CREATE TABLE seed_low (
    id INTEGER PRIMARY KEY,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    low_days INTEGER,
    low_mg INTEGER
) STRICT;
CREATE INDEX seed_low_by_variety ON seed_low (variety_id);

-- Of a sanitising: how strong, how long, by whom. One has one at most.
CREATE TABLE sanitising_detail (
    id INTEGER PRIMARY KEY,
    sanitising_id INTEGER NOT NULL REFERENCES sanitising (id),
    strength REAL,
    strength_unit TEXT NOT NULL, -- percent, ppm
    contact_minutes INTEGER,
    done_by TEXT NOT NULL
) STRICT;
CREATE INDEX sanitising_detail_by_sanitising ON sanitising_detail (sanitising_id);
