#include "core/exchange/sheet_keeper.h"

#include "core/exchange/tray_import.h"
#include "core/room/room_repository.h"
#include "core/storage/cell_bounds.h"

#include <algorithm>
#include <cassert>
#include <fmt/format.h>

namespace plumule {
namespace {

constexpr std::size_t kShownOfText = 20;

std::string cellKey(const Cell& cell)
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return fmt::format("{};", *whole);
    }
    if (const auto* real = std::get_if<double>(&cell)) {
        return fmt::format("{};", *real);
    }
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return fmt::format("{}:{};", text->size(), *text);
    }
    return ";";
}

bool isAhead(RowCells& cells, Date day, Date today)
{
    if (day > today) {
        cells.fault(ErrorKind::Invalid, ExchangeReason::DayAhead, toIso(day));
    }
    return day > today;
}

} // namespace

SheetKeeper::SheetKeeper(Database& database, std::string_view table, Date today)
    : m_database(database)
    , m_sheet(storedSheet(database, table))
    , m_today(today)
    , m_room(RoomRepository(database).room())
{}

void SheetKeeper::begin(const std::function<void(std::string)>& know)
{
    learn();
    SheetRepository(m_database).forEachRow(m_sheet, [&](const std::vector<Cell>& cells) {
        const StoredRow row(m_sheet, cells);
        know(keyOf(cells) + keyBesideOf(row));
        learnRow(row);
    });
}

std::string SheetKeeper::read(RowCells& cells)
{
    m_cells.assign(m_sheet.columns.size(), Cell{});
    readRow(cells);
    for (std::size_t i = 0; i < m_cells.size() && !cells.hasFaults(); ++i) {
        const SheetColumn& column = m_sheet.columns[i];
        const bool isUnset = std::holds_alternative<std::monostate>(m_cells[i]);
        if (isUnset && column.kind == SheetKind::Text && !column.mayBeEmpty) {
            m_cells[i] = std::string();
        }
        if (const auto fault = boundsFault(column.stored, m_cells[i])) {
            const auto* text = std::get_if<std::string>(&m_cells[i]);
            cells.fault(ErrorKind::Invalid, *fault,
                        text == nullptr ? column.name : text->substr(0, kShownOfText),
                        longestText(column.stored));
        }
    }
    return cells.hasFaults() ? std::string() : keyOf(m_cells) + keyBeside();
}

Fate SheetKeeper::accept(RowCells& cells)
{
    check(cells);
    return cells.hasFaults() ? Fate::Refused : Fate::New;
}

void SheetKeeper::store()
{
    const std::int64_t id = m_database.nextId();
    m_cells[indexOf("id")] = id;
    SheetRepository(m_database).insert(m_sheet, m_cells);
    storeBeside(id);
}

std::optional<Date> SheetKeeper::pastDay(RowCells& cells, std::string_view column)
{
    const auto day = cells.day(column);
    return day && !isAhead(cells, *day, m_today) ? day : std::nullopt;
}

std::size_t SheetKeeper::indexOf(std::string_view column) const
{
    const auto found = std::find_if(m_sheet.columns.begin(), m_sheet.columns.end(),
                                    [&](const SheetColumn& each) { return each.stored == column; });
    assert(found != m_sheet.columns.end());
    return static_cast<std::size_t>(found - m_sheet.columns.begin());
}

std::string SheetKeeper::keyOf(const std::vector<Cell>& cells) const
{
    std::string key;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (m_sheet.columns[i].stored != "id" && !isGivenHere(m_sheet.columns[i].stored)) {
            key += cellKey(cells[i]);
        }
    }
    return key;
}

KnownTrays::KnownTrays(Database& database)
{
    eachStoredRow(database, "tray", [this](const StoredRow& row) {
        KnownTray tray;
        tray.id = row.get<TrayId>("id");
        tray.code = row.get<std::string>("code");
        tray.medium = row.get<MediumId>("medium_id");
        tray.sownOn = row.get<Date>("sown_on");
        tray.state = row.get<TrayState>("state");
        m_trays.emplace(nameKey(tray.code), tray);
    });
}

KnownTray* KnownTrays::in(RowCells& cells, std::string_view column)
{
    const std::string code = cells.needed(column);
    const auto found = m_trays.find(nameKey(code));
    if (found != m_trays.end()) {
        return &found->second;
    }
    if (!code.empty()) {
        cells.unknown(column);
    }
    return nullptr;
}

std::optional<Moment> momentOf(RowCells& cells, const KnownTray& tray, Date today,
                               int otherwiseMinute)
{
    cells.needed("date");
    const auto day = cells.day("date");
    const auto minute = cells.minute("time");
    if (!day || isAhead(cells, *day, today)) {
        return std::nullopt;
    }
    if (*day < tray.sownOn) {
        cells.fault(ErrorKind::Invalid, ExchangeReason::DayBeforeSowing, toIso(*day), tray.code,
                    toIso(tray.sownOn));
        return std::nullopt;
    }
    return Moment{*day, minute.value_or(otherwiseMinute)};
}

void TraySheetKeeper::learn()
{
    m_trays.emplace(database());
}

KnownTray* TraySheetKeeper::readTrayDay(RowCells& cells, std::optional<Slot> slot)
{
    KnownTray* tray = m_trays->in(cells, "tray");
    const auto moment = tray == nullptr ? std::nullopt
                                        : momentOf(cells, *tray, today(),
                                                   room().minuteOf(slot.value_or(Slot::Morning)));
    if (!moment) {
        return nullptr;
    }
    m_at = *moment;
    set("tray_id", tray->id);
    set("on_date", moment->date);
    set("minute", moment->minute);
    return tray;
}

} // namespace plumule
