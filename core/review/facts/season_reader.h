#pragma once

#include "core/review/facts/season_repository.h"
#include "core/storage/database.h"

#include <set>
#include <unordered_map>

namespace plumule {

// Fills a season's facts column by column, for all trays at once: readTraysOf() first, the rest in
// any order but that light is read before the stays. Part of season_repository.h.
class SeasonReader
{
public:
    SeasonReader(Database& database, SeasonFacts& facts)
        : m_database(database)
        , m_facts(facts)
    {}

    // Once the standings are known.
    void readTraysOf(const SeasonSpan& span);
    // Of the span's trials, else all.
    void readUnfinished(const SeasonSpan& span);
    // Yields of finished trays, the latest thousands, but for those that were read already.
    void readPast(Date from, Date to);
    // Of the trays that were read; none where none was cut.
    [[nodiscard]] std::optional<Date> lastCut() const;
    // Which use of its piece each tray was; all trays of a piece count, whenever they were grown.
    void readPieceUses();
    // Columns of the layouts that the trays were planned in.
    void readPlannedColumns();

    void readStages();
    // Those, and the climate where the trays stood.
    void readStays();
    void readWaterings();
    void readResidues();
    void readHeights();
    // At last: takes out the trays of which a row could not be read, and names them.
    void setAsideDamaged();

private:
    // Of the trays, and maybe of others too where that is quicker.
    [[nodiscard]] Statement rowsOf(const std::string& columnsFromTable);
    void readTrays(std::size_t count);
    void readYields();
    [[nodiscard]] std::optional<Date> firstSowingOf(const Tray& tray) const;
    [[nodiscard]] std::optional<ShelfId> shelfOfTray(const std::optional<std::vector<LitTime>>& lit,
                                                     const std::vector<Stay>& stays);
    [[nodiscard]] std::optional<ShelfId> shelfAt(PlaceId place);
    // From the first sowing to the last cut.
    [[nodiscard]] RoomClimate climateOfTrays();

    // Whether `read` could read its row. What is no damage of a row is thrown.
    template <class Read>
    [[nodiscard]] static bool isRead(Read read)
    {
        try {
            read();
            return true;
        } catch (const StorageFailure& failure) {
            if (failure.error().kind != ErrorKind::Damaged) {
                throw;
            }
            return false;
        }
    }
    // What can't be read costs its tray, and no other.
    template <class Read>
    void readOf(TrayId tray, Read read)
    {
        if (!isRead(read)) {
            m_damaged.insert(tray);
        }
    }

    // `take` is told the tray's index in the facts, and the row.
    template <class Take>
    void forEachRow(const std::string& columnsFromTable, Take take)
    {
        Statement rows = rowsOf(columnsFromTable);
        // Rows of one tray mostly follow each other.
        TrayId last;
        auto found = m_indexOf.end();
        while (rows.step()) {
            const auto tray = rows.get<TrayId>(0);
            if (tray != last) {
                found = m_indexOf.find(tray);
                last = tray;
            }
            if (found != m_indexOf.end()) {
                readOf(tray, [&] { take(found->second, rows); });
            }
        }
    }

    Database& m_database;
    SeasonFacts& m_facts;
    std::string m_ids; // a JSON array
    bool m_readsAll = false;
    std::unordered_map<TrayId, std::size_t> m_indexOf;
    std::set<TrayId> m_damaged;
    std::unordered_map<PlaceId, ShelfId> m_shelves;
    std::vector<LightStage> m_lights;
};

} // namespace plumule
