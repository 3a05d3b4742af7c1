-- Repeating sowings, orders, what is kept beside seed, and work as it was timed. Days and minutes
-- as in the first schema. An amount is in µL of what is measured, in pieces of what is counted.

-- What is proposed: on these weekdays, or every so many days from the first on; one of the two.
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

-- An amount of a variety for a day. Of a standing order every week's day is promised, from the first
-- one on, until the day that it ends. Who it is for may stay empty.
CREATE TABLE promised_order (
    id INTEGER PRIMARY KEY,
    variety_id INTEGER NOT NULL REFERENCES variety (id),
    medium_id INTEGER REFERENCES medium (id), -- to be sown on it; none: the one of most trays
    amount_mg INTEGER NOT NULL,
    for_date TEXT NOT NULL,  -- the day, or the first one
    recurs TEXT NOT NULL,    -- once, weekly
    end_date TEXT,           -- from that day on nothing is promised; none: it goes on
    customer TEXT NOT NULL,
    note TEXT NOT NULL
) STRICT;

-- A cut that the grower put to one day of an order, or to none, by hand; any other goes by rule.
CREATE TABLE order_cut (
    id INTEGER PRIMARY KEY,
    harvest_id INTEGER NOT NULL REFERENCES harvest (id),
    order_id INTEGER REFERENCES promised_order (id),
    for_date TEXT -- of that order; both are there, or neither
) STRICT;
CREATE INDEX order_cut_by_harvest ON order_cut (harvest_id);
CREATE INDEX order_cut_by_order ON order_cut (order_id);

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

-- The shelf was counted, or something was bought. Until the next count, what trays use is taken
-- off.
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

-- One stretch of a task, from when the timer was started. It runs while seconds and times are
-- empty; times is how often the task was done in it: trays, pieces.
CREATE TABLE work_time (
    id INTEGER PRIMARY KEY,
    task TEXT NOT NULL,
    on_date TEXT NOT NULL,
    minute INTEGER NOT NULL,
    second INTEGER NOT NULL, -- of the minute
    seconds INTEGER,
    times INTEGER
) STRICT;
CREATE INDEX work_time_by_day ON work_time (on_date);
-- Asked on every round; those that ran out grow in number.
CREATE INDEX work_time_running ON work_time (id) WHERE seconds IS NULL;
