-- What a price was given for stays as it was written down; media that are always run with their own
-- feeding; and what an act came to, beside whom it was done to.

-- Without one a price is for the item's own unit: a litre, a kilogram, a piece, an hour.
CREATE TABLE price_measure (
    id INTEGER PRIMARY KEY,
    price_id INTEGER NOT NULL REFERENCES price (id),
    measure TEXT NOT NULL
) STRICT;
CREATE INDEX price_measure_by_price ON price_measure (price_id);

-- Says of a medium that it and its feeding are compared as one.
CREATE TABLE medium_as_run (
    id INTEGER PRIMARY KEY,
    medium_id INTEGER NOT NULL REFERENCES medium (id)
) STRICT;
CREATE INDEX medium_as_run_by_medium ON medium_as_run (medium_id);

-- Values in the order that the act's sentence says them in, a line each.
ALTER TABLE history ADD COLUMN details TEXT NOT NULL DEFAULT '';
