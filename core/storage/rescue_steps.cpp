#include "core/storage/rescue_steps.h"

#include "core/base/utf8.h"
#include "core/storage/changeset.h"
#include "core/storage/checksum.h"
#include "core/storage/history.h"
#include "core/storage/migrations.h"
#include "core/storage/whole_row.h"

#include <algorithm>

namespace plumule {
namespace {

bool isOfType(const DeclaredColumn& column, const Cell& cell)
{
    if (std::holds_alternative<std::monostate>(cell)) {
        return column.mayBeEmpty;
    }
    const auto* text = std::get_if<std::string>(&cell);
    if (column.info.type == "BLOB") {
        return text != nullptr;
    }
    return column.info.type == "TEXT" ? text != nullptr && !firstNotUtf8(*text)
                                      : std::holds_alternative<std::int64_t>(cell);
}

} // namespace

RescuedSteps::RescuedSteps(Database& old, Database& fresh, std::vector<Error>& said)
    : m_fresh(fresh)
    , m_said(said)
    , m_columns(declaredColumnsOf(fresh, "history"))
{
    const auto columns = readableColumns(old, fresh, "history");
    if (columns.empty()) {
        m_said.push_back(foundAt("history", 0, RescueReason::TableUnreadable));
        return;
    }
    ReadRows read = readRows(old, "history", columns);
    if (!read.isWhole) {
        m_said.push_back(foundAt("history", 0, RescueReason::StepsLost, read.before, read.behind));
    }
    for (auto& [id, step] : read.rows) {
        if (!isWhole(step)) {
            leaveOut(id);
            continue;
        }
        if (textIn(step[at("state")]) == toText(HistoryState::Standing)) {
            replay(textIn(step[at("changeset")]));
        }
        m_steps.emplace(id, std::move(step));
    }
}

std::size_t RescuedSteps::at(const char* column) const
{
    const auto found =
        std::find_if(m_columns.begin(), m_columns.end(),
                     [&](const DeclaredColumn& each) { return each.info.name == column; });
    return static_cast<std::size_t>(found - m_columns.begin());
}

bool RescuedSteps::isWhole(const std::vector<Cell>& step) const
{
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        if (!isOfType(m_columns[i], step[i])) {
            return false;
        }
    }
    HistoryState state{};
    const std::string bytes = textIn(step[at("changeset")]);
    return wholeIn(step.front()) > 0 && fromText(textIn(step[at("state")]), state) &&
           wholeIn(step[at("changeset_bytes")]) == static_cast<std::int64_t>(bytes.size()) &&
           step[at("changeset_crc")] == Cell(checksumOf(bytes)) &&
           walkChangeset(bytes, [](const RowChange&) {});
}

void RescuedSteps::replay(const std::string& changeset)
{
    (void)walkChangeset(changeset, [&](const RowChange& change) {
        RowsById& rows = m_rows[std::string(change.table)];
        if (change.kind == ChangeKind::Delete) {
            rows.erase(change.id());
            return;
        }
        const bool isNew = change.kind == ChangeKind::Insert;
        const auto known = rows.find(change.id());
        if (!isNew && known == rows.end()) {
            return; // the rest of its row is not known
        }
        std::vector<Cell>& row = isNew ? rows[change.id()] : known->second;
        row.resize(std::max(row.size(), change.after.size()));
        for (std::size_t i = 0; i < change.after.size(); ++i) {
            if (change.after[i]) {
                row[i] = *change.after[i];
            }
        }
    });
}

const RowsById& RescuedSteps::rowsOf(const std::string& table) const
{
    static const RowsById kNone;
    const auto found = m_rows.find(table);
    return found == m_rows.end() ? kNone : found->second;
}

bool RescuedSteps::makesSense(const std::vector<Cell>& step) const
{
    const std::string bytes = textIn(step[at("changeset")]);
    const std::int64_t schema = wholeIn(step[at("schema_version")]);
    return schema >= 1 && schema <= migrations().back().version &&
           (schema < kOldestAlikeSchema || (rowsIfSound(m_fresh, bytes, WayThrough::Back) &&
                                            rowsIfSound(m_fresh, bytes, WayThrough::Forth)));
}

std::int64_t RescuedSteps::store(Undone undone)
{
    std::int64_t stored = 0;
    for (auto& [id, step] : m_steps) {
        if (!makesSense(step)) {
            leaveOut(id);
            continue;
        }
        Cell& state = step[at("state")];
        if (undone == Undone::Dropped && state == Cell(std::string(toText(HistoryState::Undone)))) {
            state = std::string(toText(HistoryState::Dropped));
            step[at("undone_order")] = {};
        }
        insert(step);
        ++stored;
    }
    return stored;
}

void RescuedSteps::insert(const std::vector<Cell>& step)
{
    std::string values;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        const std::string value = '?' + std::to_string(i + 1);
        values += values.empty() ? "" : ", ";
        values += m_columns[i].info.type == "BLOB" ? "CAST(" + value + " AS BLOB)" : value;
    }
    Statement statement = m_fresh.prepare("INSERT INTO history VALUES (" + values + ")");
    for (std::size_t i = 0; i < step.size(); ++i) {
        statement.bindCell(static_cast<int>(i + 1), step[i]);
    }
    statement.run();
}

void RescuedSteps::leaveOut(std::int64_t id)
{
    m_said.push_back(foundAt("history", id, RescueReason::StepLost, id));
}

} // namespace plumule
