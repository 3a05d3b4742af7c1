-- Copies of the journal that are taken along, worked in, and brought back.

-- One each; its id is the number under which the copy draws its own ids. Never taken back, so that
-- no number is given twice. from_id: the first id that was not drawn here when it was taken.
CREATE TABLE taken_copy (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    taken_at_utc_ms INTEGER NOT NULL,
    base_entry_id INTEGER NOT NULL,
    base_entry_crc INTEGER NOT NULL,
    from_id INTEGER NOT NULL
) STRICT;

-- Each time that a copy was brought back. until_id: the first id that the copy had not drawn then.
CREATE TABLE brought_copy (
    id INTEGER PRIMARY KEY,
    copy_id INTEGER NOT NULL,
    brought_on TEXT NOT NULL,
    until_id INTEGER NOT NULL
) STRICT;

-- Entries of the copy that could have been done again then.
CREATE TABLE brought_undone (
    id INTEGER PRIMARY KEY,
    brought_copy_id INTEGER NOT NULL REFERENCES brought_copy (id),
    entry_id INTEGER NOT NULL
) STRICT;
CREATE INDEX brought_undone_by_copy ON brought_undone (brought_copy_id);

-- A row of the copy that was made on both sides (a variety of one name), and the row that it is here.
CREATE TABLE brought_same (
    id INTEGER PRIMARY KEY,
    brought_copy_id INTEGER NOT NULL REFERENCES brought_copy (id),
    table_name TEXT NOT NULL,
    there_id INTEGER NOT NULL,
    here_id INTEGER NOT NULL
) STRICT;
CREATE INDEX brought_same_by_copy ON brought_same (brought_copy_id);

-- The entry that overtook an undone one, so that it can't be done again. NULL before this schema.
ALTER TABLE history ADD COLUMN dropped_by INTEGER;
