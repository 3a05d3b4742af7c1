-- Work as it was timed. Days and minutes as in the first schema.

-- One stretch of a task, from when the timer was started. It runs while seconds and times are empty;
-- times is how often the task was done in it: trays, pieces.
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
