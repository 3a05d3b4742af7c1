-- What was promised: an amount of a variety for a day. Days as in the first schema.

-- Of a standing order every week's day is promised, from the first one on, until the day that it
-- ends. Who it is for may stay empty.
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
