#include "core/merge/two_sides_repository.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

// By what two rows that were made apart are one. In this order: some are told by others.
struct NaturalKey
{
    const char* table;
    std::array<const char*, 3> columns; // nullptr: no more
};

constexpr std::array kNaturalKeys = {
    NaturalKey{"rack", {"name"}},
    NaturalKey{"shelf", {"rack_id", "name"}},
    NaturalKey{"place", {"shelf_id", "number"}},
    NaturalKey{"variety", {"name"}},
    NaturalKey{"protocol_stage", {"variety_id", "position"}},
    NaturalKey{"seed_lot", {"variety_id", "lot_number"}},
    NaturalKey{"medium", {"name"}},
    NaturalKey{"medium_as_run", {"medium_id"}},
    NaturalKey{"medium_group", {"medium_id"}},
    NaturalKey{"supply", {"kind", "medium_id", "name"}},
    NaturalKey{"seed_low", {"variety_id"}},
    NaturalKey{"season", {"starts_on"}},
    NaturalKey{"price", {"item", "medium_id", "from_date"}},
    NaturalKey{"price_measure", {"price_id"}},
    NaturalKey{"labour_task", {"task"}},
    NaturalKey{"water_recipe", {"water"}},
    NaturalKey{"trial_plan", {"trial_id"}},
    NaturalKey{"watering", {"tray_id", "on_date", "slot"}},
    NaturalKey{"watering_look", {"tray_id", "on_date", "slot"}},
    NaturalKey{"harvest", {"tray_id", "cut"}},
    NaturalKey{"bowl", {"harvest_id", "gross_mg", "tare_mg"}},
    NaturalKey{"residue", {"tray_id"}},
    NaturalKey{"repeat_day", {"repeat_sowing_id", "on_date"}},
    NaturalKey{"order_cut", {"harvest_id"}},
    NaturalKey{"score", {"serving_id", "attribute_id"}},
    NaturalKey{"climate_logger", {"name", "rack_id", "shelf_id"}},
    NaturalKey{"climate_hour", {"logger_id", "on_date", "hour"}},
    NaturalKey{"shelf_ppfd", {"shelf_id"}},
};

const NaturalKey* keyOf(const std::string& table)
{
    const auto found = std::find_if(kNaturalKeys.begin(), kNaturalKeys.end(),
                                    [&](const NaturalKey& each) { return each.table == table; });
    return found == kNaturalKeys.end() ? nullptr : &*found;
}

std::size_t orderOf(const std::string& table)
{
    const NaturalKey* key = keyOf(table);
    return key == nullptr ? kNaturalKeys.size()
                          : static_cast<std::size_t>(key - kNaturalKeys.data());
}

bool isNothing(const Cell& cell)
{
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr && text->empty();
}

// A row's natural key as a condition, and the cells that it compares; none where it has none, or a
// part of it is empty.
struct KeyCells
{
    std::string where;
    std::vector<Cell> cells;
};

std::optional<KeyCells> keyCellsOf(Database& schema, const std::string& table, const WholeRow& row)
{
    const NaturalKey* key = keyOf(table);
    if (key == nullptr) {
        return std::nullopt;
    }
    KeyCells found;
    for (const char* column : key->columns) {
        if (column == nullptr) {
            break;
        }
        const auto place = placeOfColumn(schema, table, column);
        if (!place || isNothing(row[*place])) {
            return std::nullopt;
        }
        found.cells.push_back(row[*place]);
        found.where += (found.where.empty() ? "" : " AND ") + std::string(column) + " IS ?" +
                       std::to_string(found.cells.size()) + " COLLATE NOCASE";
    }
    return found;
}

} // namespace

TwoSidesRepository::TwoSidesRepository(Database& here, Database& there, const TakenCopy& copy)
    : m_here(here)
    , m_there(there)
    , m_copy(copy.id)
    , m_taken(copy)
{}

Done TwoSidesRepository::read(const IsTaken& isPhotoTaken)
{
    m_isPhotoTaken = isPhotoTaken;
    CopiesRepository copies(m_here);
    m_same = copies.sameRows(m_copy);
    for (const auto& [there, here] : m_same) {
        m_sameBack[{there.table, here}] = there.id;
    }
    auto there = changesSince(m_there, copies.broughtUntil(m_copy));
    auto here = changesSince(m_here, {m_taken.from, {}});
    if (!there || !here) {
        return there ? passOn(here) : passOn(there);
    }
    m_sinceThere = std::move(*there);
    m_sinceHere = std::move(*here);
    m_until = markOf(m_there);
    std::vector<RowKey> keys;
    for (const auto& [key, since] : m_sinceThere.rows) {
        if (!key.table.starts_with("brought_")) {
            keys.push_back(key);
        }
    }
    std::stable_sort(keys.begin(), keys.end(), [](const RowKey& a, const RowKey& b) {
        return orderOf(a.table) < orderOf(b.table);
    });
    for (const RowKey& key : keys) {
        readRow(key, m_sinceThere.rows[key]);
    }
    // What only points at others is told when all of those are.
    for (auto& [key, row] : m_rows) {
        const RowState& state = row.there ? row.there : row.here ? row.here : row.before;
        if (state) {
            row.family = familyOfRow(key, *state);
        }
        if (m_sameBack.contains(key) && !row.before && !row.isAlike()) {
            m_madeOnBoth.insert(row.family);
        }
    }
    return {};
}

void TwoSidesRepository::readRow(const RowKey& there, const RowSince& since)
{
    const RowState now = wholeRow(m_there, there);
    if (since.isBeforeKnown && now == since.before) {
        return; // done and taken back
    }
    MergeRow row;
    row.key = there;
    row.isBeforeKnown = since.isBeforeKnown;
    row.thereAtUtcMs = since.lastAtUtcMs;
    if (const auto known = m_same.find(there); known != m_same.end()) {
        row.key.id = known->second;
    } else if (now && since.isBeforeKnown && !since.before && !wholeRow(m_here, there)) {
        if (const auto same = sameHere(there, translated(there.table, *now, there.id))) {
            row.key.id = *same;
            m_same[there] = *same;
            m_sameBack[row.key] = there.id;
        }
    }
    row.before =
        since.before ? RowState(translated(there.table, *since.before, row.key.id)) : std::nullopt;
    row.there = now ? RowState(translated(there.table, *now, row.key.id)) : std::nullopt;
    row.here = wholeRow(m_here, row.key);
    if (const auto touched = m_sinceHere.rows.find(row.key); touched != m_sinceHere.rows.end()) {
        row.hereAtUtcMs = touched->second.lastAtUtcMs;
    }
    keepNames(row);
    if (!row.here && !row.before && row.there) {
        rename(row);
    }
    if (!row.isAlike()) {
        m_rows[row.key] = std::move(row);
    }
}

std::int64_t TwoSidesRepository::idThere(const RowKey& here) const
{
    const auto known = m_sameBack.find(here);
    return known == m_sameBack.end() ? here.id : known->second;
}

WholeRow TwoSidesRepository::translated(const std::string& table, WholeRow row, std::int64_t id)
{
    if (!row.empty()) {
        row.front() = Cell(id);
    }
    for (const Pointer& pointer : pointersOf(m_here, table)) {
        if (pointer.column >= row.size()) {
            continue;
        }
        const auto known = m_same.find({pointer.table, wholeIn(row[pointer.column])});
        if (known != m_same.end()) {
            row[pointer.column] = Cell(known->second);
        }
    }
    return row;
}

RowState TwoSidesRepository::thereNow(const RowKey& key)
{
    const auto read = m_rows.find(key);
    if (read != m_rows.end()) {
        return read->second.there;
    }
    const RowState row = wholeRow(m_there, {key.table, idThere(key)});
    return row ? RowState(translated(key.table, *row, key.id)) : std::nullopt;
}

Family TwoSidesRepository::familyOfRow(const RowKey& key, const WholeRow& row)
{
    return familyOf(m_here, key, row, [this](const RowKey& parent) {
        const RowState here = wholeRow(m_here, parent);
        return here ? here : thereNow(parent);
    });
}

std::optional<std::int64_t> TwoSidesRepository::sameHere(const RowKey& there, const WholeRow& row)
{
    auto key = keyCellsOf(m_here, there.table, row);
    if (!key) {
        return std::nullopt;
    }
    auto& [where, cells] = *key;
    if (there.table == "watering") {
        if (!rowsWhere(m_there, "watering_between", "watering_id", Cell(there.id)).empty()) {
            return std::nullopt; // no round's tick
        }
        where += " AND NOT EXISTS (SELECT 1 FROM watering_between n WHERE n.watering_id = "
                 "watering.id)";
    }
    Statement statement =
        m_here.prepare("SELECT id FROM " + there.table + " WHERE " + where + " ORDER BY id");
    for (std::size_t i = 0; i < cells.size(); ++i) {
        statement.bindCell(static_cast<int>(i) + 1, cells[i]);
    }
    while (statement.step()) {
        const RowKey here{there.table, statement.get<std::int64_t>(0)};
        // One that the copy knows, or knew, is another row.
        if (!m_sameBack.contains(here) && !wholeRow(m_there, here) &&
            !m_sinceThere.rows.contains(here)) {
            return here.id;
        }
    }
    return std::nullopt;
}

std::vector<MergeRow> TwoSidesRepository::rowsOf(const Family& family)
{
    Family there = family;
    there.owner = idThere({ownerTableOf(family), family.owner});
    std::set<RowKey> keys;
    for (const auto& [key, row] : m_rows) {
        if (row.family == family) {
            keys.insert(key);
        }
    }
    for (const RowKey& key : rowsOfFamily(m_here, family)) {
        keys.insert(key);
    }
    for (RowKey key : rowsOfFamily(m_there, there)) {
        const auto known = m_same.find(key);
        key.id = known == m_same.end() ? key.id : known->second;
        keys.insert(key);
    }
    std::vector<MergeRow> rows;
    for (const RowKey& key : keys) {
        if (const auto read = m_rows.find(key); read != m_rows.end()) {
            rows.push_back(read->second);
            continue;
        }
        MergeRow row;
        row.key = key;
        row.family = family;
        row.here = wholeRow(m_here, key);
        row.there = thereNow(key);
        row.before = row.there; // the copy left it alone
        if (const auto touched = m_sinceHere.rows.find(key); touched != m_sinceHere.rows.end()) {
            row.hereAtUtcMs = touched->second.lastAtUtcMs;
        }
        keepNames(row);
        if (!row.isAlike()) {
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

} // namespace plumule
