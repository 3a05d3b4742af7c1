#pragma once

#include "core/storage/database.h"

#include <string>
#include <vector>

namespace plumule {

// A room of many years from one of months: what ended is put into its past again and again, each
// time 26 weeks earlier, with waterings and cuts of its own, every two years with new pieces and
// lots, and with its history. What grows now stays as it is. Ids of what is earlier are lower.
class LongPast
{
public:
    explicit LongPast(Database& journal)
        : m_journal(journal)
    {}

    // From the half-year on that is so far back.
    void add(int first, int last)
    {
        m_journal.execute(
            "BEGIN; PRAGMA defer_foreign_keys=ON; "
            "CREATE TEMP TABLE ended AS SELECT id FROM tray WHERE state <> 'growing'; "
            "CREATE TEMP TABLE acts AS SELECT id FROM history");
        for (int time = first; time <= last; ++time) {
            for (const Kept& each : kTables) {
                if (!each.lasts || time == bought(time)) {
                    copy(each, time);
                }
            }
        }
        m_journal.execute("DROP TABLE temp.ended; DROP TABLE temp.acts; COMMIT");
    }

private:
    struct Kept
    {
        const char* table;
        const char* which; // of its rows
        bool lasts;        // for two years
    };
    // When what lasts was bought.
    static int bought(int time) { return (time - 1) / 4 * 4 + 1; }
    static constexpr Kept kTables[] = {
        {"seed_lot", "id IN (SELECT seed_lot_id FROM tray WHERE id IN (SELECT id FROM ended))",
         true},
        {"piece", "id IN (SELECT piece_id FROM tray WHERE id IN (SELECT id FROM ended))", true},
        {"sanitising", "piece_id IN (SELECT piece_id FROM tray WHERE id IN (SELECT id FROM ended))",
         false},
        {"tray", "id IN (SELECT id FROM ended)", false},
        {"tray_stage", "tray_id IN (SELECT id FROM ended)", false},
        {"stay", "tray_id IN (SELECT id FROM ended)", false},
        {"height", "tray_id IN (SELECT id FROM ended)", false},
        {"tray_note", "tray_id IN (SELECT id FROM ended)", false},
        {"photo", "tray_id IN (SELECT id FROM ended)", false},
        {"watering", "tray_id IN (SELECT id FROM ended)", false},
        {"watering_look", "tray_id IN (SELECT id FROM ended)", false},
        {"water_reading", "tray_id IN (SELECT id FROM ended)", false},
        {"harvest", "tray_id IN (SELECT id FROM ended)", false},
        {"bowl", "harvest_id IN (SELECT h.id FROM harvest h JOIN ended e ON e.id = h.tray_id)",
         false},
        {"residue", "tray_id IN (SELECT id FROM ended)", false},
        {"history", "id IN (SELECT id FROM acts)", false},
    };

    void copy(const Kept& each, int time)
    {
        std::string columns;
        std::string cells;
        for (const ColumnInfo& column : m_journal.columnsOf(each.table)) {
            columns += (columns.empty() ? "" : ", ") + column.name;
            cells += (cells.empty() ? "" : ", ") + cellOf(column.name, time);
        }
        m_journal.execute("INSERT INTO " + std::string(each.table) + " (" + columns + ") SELECT " +
                          cells + " FROM " + each.table + " WHERE " + each.which + " AND id > " +
                          std::to_string(kFirstId));
    }

    // Under this many ids lies all that one journal holds here.
    static std::string back(int time) { return " - " + std::to_string(time) + " * 10000000"; }

    static std::string cellOf(const std::string& column, int time)
    {
        const std::string days = "'-" + std::to_string(time * 182) + " days')";
        if (column == "id" || column == "tray_id" || column == "harvest_id") {
            return column + back(time);
        }
        if (column == "piece_id" || column == "seed_lot_id") {
            return column + back(bought(time));
        }
        if (column == "trial_id") {
            return "NULL";
        }
        if (column == "code") {
            return "substr(code, 1, 2) || (substr(code, 3) + 1000 * " + std::to_string(time) + ")";
        }
        if (column == "retired_on") {
            return "date(coalesce(bought_on, '2026-01-01'), " + days;
        }
        if (column == "is_used_up") {
            return "1";
        }
        const bool isDay = column.ends_with("_on") || column == "on_date";
        return isDay ? "date(" + column + ", " + days : column;
    }

    // What was copied has a lower one.
    static constexpr std::int64_t kFirstId = std::int64_t{1} << 40;

    Database& m_journal;
};

} // namespace plumule
