#pragma once

namespace plumule {

// What a sound journal never holds, in words of its own rather than those of core/journal/rules:
// each asks for the count of rows that break it.
inline constexpr const char* kNever[] = {
    "SELECT count(*) FROM (SELECT place_id FROM stay WHERE to_on IS NULL GROUP BY place_id "
    "HAVING count(*) > 1)",
    "SELECT count(*) FROM (SELECT tray_id FROM stay WHERE to_on IS NULL GROUP BY tray_id "
    "HAVING count(*) > 1)",
    "SELECT count(*) FROM stay WHERE to_on IS NULL AND tray_id IN "
    "(SELECT id FROM tray WHERE state <> 'growing')",
    "SELECT count(*) FROM (SELECT piece_id FROM tray WHERE state = 'growing' AND "
    "piece_id IS NOT NULL GROUP BY piece_id HAVING count(*) > 1)",
    "SELECT count(*) FROM tray WHERE state = 'growing' AND piece_id IN "
    "(SELECT id FROM piece WHERE retired_on IS NOT NULL)",
    "SELECT count(*) FROM tray WHERE state = 'growing' AND id IN "
    "(SELECT tray_id FROM harvest WHERE is_last)",
    "SELECT count(*) FROM tray WHERE state = 'harvested' AND id NOT IN "
    "(SELECT tray_id FROM harvest WHERE is_last)",
    "SELECT count(*) FROM (SELECT tray_id FROM watering WHERE id NOT IN "
    "(SELECT watering_id FROM watering_between) GROUP BY tray_id, on_date, slot "
    "HAVING count(*) > 1)",
    "SELECT count(*) FROM (SELECT name FROM medium GROUP BY lower(name) HAVING count(*) > 1)",
    "SELECT count(*) FROM (SELECT name FROM rack GROUP BY lower(name) HAVING count(*) > 1)",
    "SELECT count(*) FROM (SELECT from_date FROM price GROUP BY item, medium_id, from_date "
    "HAVING count(*) > 1)",
    "SELECT count(*) FROM tray_stage a JOIN tray_stage b ON b.tray_id = a.tray_id AND "
    "b.position > a.position WHERE b.started_on IS NOT NULL AND a.started_on IS NULL",
};

} // namespace plumule
