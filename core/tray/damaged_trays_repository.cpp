// Part of core/tray/damaged_trays.h: whose a row is.
#include "core/storage/database.h"
#include "core/tray/damaged_trays.h"

#include <algorithm>

namespace plumule {

std::optional<DamagedTray> damagedTray(Database& database, const Error& damage)
{
    if (damage.kind != ErrorKind::Damaged || !damage.row || damage.row->number == 0) {
        return std::nullopt;
    }
    const std::string& table = damage.row->table;
    const auto& columns = database.columnsOf(table);
    const bool isOfATray = std::any_of(columns.begin(), columns.end(), [](const ColumnInfo& each) {
        return each.name == "tray_id";
    });
    DamagedTray found{{damage.row->number}, {}};
    if (table != "tray") {
        found.tray.value =
            isOfATray ? database.scalar("SELECT tray_id FROM \"" + table +
                                        "\" WHERE id = " + std::to_string(damage.row->number))
                      : 0;
    }
    if (!found.tray.isStored()) {
        return std::nullopt;
    }
    Statement code = database.prepare("SELECT code FROM tray WHERE id = ?1");
    code.bind(found.tray);
    const Cell cell = code.step() ? code.cellAt(0) : Cell();
    if (const auto* text = std::get_if<std::string>(&cell)) {
        found.code = *text;
    }
    return found;
}

} // namespace plumule
