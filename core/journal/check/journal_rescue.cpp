#include "core/journal/check/journal_rescue.h"

#include "core/journal/check/stored_words.h"
#include "core/medium/medium_rules.h"
#include "core/room/room.h"
#include "core/storage/row_id.h"

namespace plumule {
namespace {

bool isMeant(const std::string& table, const std::string& column, const Cell& cell)
{
    if (const auto* text = std::get_if<std::string>(&cell)) {
        for (const WordColumn& each : wordColumns()) {
            if (each.table == table && each.column == column) {
                return each.isWord(*text);
            }
        }
    }
    const auto* whole = std::get_if<std::int64_t>(&cell);
    return whole == nullptr || table != "medium" || column != "marker" ||
           (*whole >= 0 && *whole < kMarkers);
}

std::optional<std::size_t> firstMeaningless(const std::string& table,
                                            const std::vector<DeclaredColumn>& columns,
                                            const std::vector<Cell>& cells)
{
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) {
        if (!isMeant(table, columns[i].info.name, cells[i])) {
            return i;
        }
    }
    return std::nullopt;
}

std::map<std::string, Cell> usualRoom()
{
    const Room room;
    return {{"currency", room.currency},
            {"morning_minute", std::int64_t{room.morningMinute}},
            {"evening_minute", std::int64_t{room.eveningMinute}},
            {"tray_length_um", room.trayLength.count()},
            {"tray_width_um", room.trayWidth.count()}};
}

} // namespace

Result<RescueReport> rescueJournal(const std::filesystem::path& old,
                                   const std::filesystem::path& fresh, const std::string& lostName,
                                   const Progress& progress)
{
    RescueKnowledge knowledge;
    knowledge.meaningless = firstMeaningless;
    knowledge.standIn = [&](const std::string& table,
                            std::int64_t id) -> std::optional<std::map<std::string, Cell>> {
        if (table != "variety" && table != "medium" && table != "room") {
            return std::nullopt;
        }
        auto cells = table == "room" ? usualRoom() : std::map<std::string, Cell>();
        constexpr std::int64_t kCounter = (std::int64_t{1} << kIdCounterBits) - 1;
        cells["name"] = lostName + ' ' + std::to_string(id & kCounter);
        for (const WordColumn& each : wordColumns()) {
            if (each.table == table) {
                cells[each.column] = std::string(each.first);
            }
        }
        return cells;
    };
    return rescueFile(old, fresh, knowledge, progress);
}

} // namespace plumule
