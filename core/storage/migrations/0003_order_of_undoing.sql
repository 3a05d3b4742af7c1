-- Redo does again what was undone last. undone_order: 1, 2, … in the order of undoing; NULL unless undone.
ALTER TABLE history ADD COLUMN undone_order INTEGER;

-- Until here the lowest id was done again first.
UPDATE history SET undone_order = (
    SELECT count(*) FROM history AS other WHERE other.state = 'undone' AND other.id >= history.id)
WHERE state = 'undone';

-- Every intention drops what could be redone: without it that walks all of history.
CREATE INDEX history_undone ON history (undone_order) WHERE state = 'undone';
