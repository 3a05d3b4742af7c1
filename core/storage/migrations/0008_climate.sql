-- Climate beside growth: what data loggers wrote down, and the light over a shelf. Days as in the
-- first schema. What ends on _milli is counted in thousandths of its unit.

-- A logger at a place: one that was moved counts as another. Without rack and shelf it hung in the
-- room.
CREATE TABLE climate_logger (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    rack_id INTEGER REFERENCES rack (id),
    shelf_id INTEGER REFERENCES shelf (id),
    light_unit TEXT -- ppfd, lux; none: it has not measured light yet
) STRICT;

-- One hour of a logger, in the room's civil time. A logger writes every few minutes for years; an
-- hour's mean, least, greatest and count hold all that days and trays are judged by in a twelfth of
-- the rows or less, and the minutes of its first and last reading tell whether two files that share
-- an hour tell of the same part of it. Temperature in °C, humidity in percent, light in the logger's
-- unit. Empty where it was not measured.
CREATE TABLE climate_hour (
    id INTEGER PRIMARY KEY,
    logger_id INTEGER NOT NULL REFERENCES climate_logger (id),
    on_date TEXT NOT NULL,
    hour INTEGER NOT NULL,
    first_minute INTEGER NOT NULL, -- within the hour
    last_minute INTEGER NOT NULL,
    temperature_readings INTEGER,
    temperature_mean_milli INTEGER,
    temperature_low_milli INTEGER,
    temperature_high_milli INTEGER,
    humidity_readings INTEGER,
    humidity_mean_milli INTEGER,
    humidity_low_milli INTEGER,
    humidity_high_milli INTEGER,
    light_readings INTEGER,
    light_mean_milli INTEGER,
    light_low_milli INTEGER,
    light_high_milli INTEGER
) STRICT;
CREATE INDEX climate_hour_by_logger ON climate_hour (logger_id, on_date, hour);

-- The photon flux density that was measured under a shelf's lamps, in µmol/m²/s. A shelf has one at
-- most.
CREATE TABLE shelf_ppfd (
    id INTEGER PRIMARY KEY,
    shelf_id INTEGER NOT NULL REFERENCES shelf (id),
    ppfd_milli INTEGER NOT NULL
) STRICT;
CREATE INDEX shelf_ppfd_by_shelf ON shelf_ppfd (shelf_id);
