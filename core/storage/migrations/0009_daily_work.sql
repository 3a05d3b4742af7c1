-- What is looked at every day costs what it shows, not what there ever was: the list of trays,
-- whatever it is narrowed to; the scale's look back; the next code, and a code in any letter case;
-- what a lot, a piece and a place went through.

-- The list: newest sowing first, then by code. This one holds all that a search looks at, too.
DROP INDEX tray_by_sown;
CREATE INDEX tray_by_sown ON tray (
    sown_on DESC, code, variety_id, medium_id, seed_lot_id, trial_id, state);
DROP INDEX tray_by_variety;
CREATE INDEX tray_by_variety ON tray (variety_id, sown_on DESC, code, state);
DROP INDEX tray_by_medium;
CREATE INDEX tray_by_medium ON tray (medium_id, sown_on DESC, code, state);
CREATE INDEX tray_by_variety_and_medium ON tray (
    variety_id, medium_id, sown_on DESC, code, state);
DROP INDEX tray_growing;
CREATE INDEX tray_by_state ON tray (state, sown_on DESC, code);
CREATE INDEX tray_with_reason ON tray (discard_reason, set_aside_reason)
WHERE discard_reason IS NOT NULL OR set_aside_reason IS NOT NULL;

-- A code as it is typed, and the numbers behind the same letters.
CREATE INDEX tray_by_code ON tray (code COLLATE NOCASE);
CREATE INDEX tray_by_number ON tray (
    rtrim(code, '0123456789') COLLATE NOCASE,
    CAST(substr(code, 1 + length(rtrim(code, '0123456789'))) AS INTEGER));

-- What was sown of a trial and of a lot, the life of a piece, who left a place last.
DROP INDEX tray_by_trial;
CREATE INDEX tray_by_trial ON tray (trial_id, sown_on);
DROP INDEX tray_by_seed_lot;
CREATE INDEX tray_by_seed_lot ON tray (seed_lot_id, seed_mg);
DROP INDEX tray_by_piece;
CREATE INDEX tray_by_piece ON tray (
    piece_id, sown_on, sown_minute, state, ended_on, ended_minute);
DROP INDEX stay_by_place;
CREATE INDEX stay_by_place ON stay (place_id, to_on, to_minute);

-- Counts that SQLite made of a journal had it choose other ways than those that are tried: with them
-- it walked all trays for those of one trial.
DROP TABLE IF EXISTS sqlite_stat1;
DROP TABLE IF EXISTS sqlite_stat4;
