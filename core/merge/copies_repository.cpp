#include "core/merge/copies_repository.h"

#include "core/storage/table.h"

#include <algorithm>

namespace plumule {

template <>
struct TableOf<TakenCopy>
{
    static constexpr const char* name = "taken_copy";
    static constexpr auto columns = std::tuple{
        column("name", &TakenCopy::name), column("taken_at_utc_ms", &TakenCopy::takenAtUtcMs),
        column("base_entry_id", &TakenCopy::baseEntry),
        column("base_entry_crc", &TakenCopy::baseChecksum), column("from_id", &TakenCopy::from)};
};

std::int64_t CopiesRepository::ownNumber()
{
    return m_database.scalar("SELECT copy_number FROM copy WHERE id = 1");
}

std::vector<TakenCopy> CopiesRepository::all()
{
    return selectRows<TakenCopy>(m_database, "ORDER BY id");
}

std::optional<TakenCopy> CopiesRepository::find(CopyId copy)
{
    return findRow<TakenCopy>(m_database, copy);
}

void CopiesRepository::insert(TakenCopy& copy)
{
    if (!copy.id.isStored()) {
        copy.id.value =
            1 + std::max(ownNumber(), m_database.scalar("SELECT max(id) FROM taken_copy"));
    }
    insertRow(m_database, copy);
}

void CopiesRepository::remove(CopyId copy)
{
    deleteRow<TakenCopy>(m_database, copy);
}

std::vector<std::string> CopiesRepository::photoNames()
{
    std::vector<std::string> names;
    Statement statement = m_database.prepare("SELECT DISTINCT file_name FROM photo");
    while (statement.step()) {
        names.push_back(statement.get<std::string>(0));
    }
    return names;
}

void CopiesRepository::become(CopyId copy)
{
    m_database.prepare("UPDATE copy SET copy_number = ?1, next_counter = 1 WHERE id = 1")
        .bind(copy)
        .run();
    m_database
        .prepare("UPDATE history SET state = 'dropped', undone_order = NULL, "
                 "dropped_by = (SELECT max(id) FROM history) WHERE state = 'undone'")
        .run();
}

HistoryMark CopiesRepository::broughtUntil(CopyId copy)
{
    HistoryMark mark;
    mark.from = copy.value << 40;
    Statement last = m_database.prepare(
        "SELECT id, until_id FROM brought_copy WHERE copy_id = ?1 ORDER BY until_id DESC LIMIT 1");
    last.bind(copy);
    if (!last.step()) {
        return mark;
    }
    mark.from = last.get<std::int64_t>(1);
    Statement undone =
        m_database.prepare("SELECT entry_id FROM brought_undone WHERE brought_copy_id = ?1");
    undone.bind(last.get<std::int64_t>(0));
    while (undone.step()) {
        mark.undone.push_back(undone.get<HistoryId>(0));
    }
    return mark;
}

SameRows CopiesRepository::sameRows(CopyId copy)
{
    SameRows same;
    Statement statement = m_database.prepare(
        "SELECT s.table_name, s.there_id, s.here_id FROM brought_same s JOIN brought_copy b "
        "ON b.id = s.brought_copy_id WHERE b.copy_id = ?1");
    statement.bind(copy);
    while (statement.step()) {
        same[{statement.get<std::string>(0), statement.get<std::int64_t>(1)}] =
            statement.get<std::int64_t>(2);
    }
    return same;
}

void CopiesRepository::insertBrought(CopyId copy, Date day, const HistoryMark& until,
                                     const SameRows& same)
{
    const SameRows known = sameRows(copy);
    const std::int64_t id = m_database.nextId();
    m_database
        .prepare("INSERT INTO brought_copy (id, copy_id, brought_on, until_id) "
                 "VALUES (?1, ?2, ?3, ?4)")
        .bind(id, copy, day, until.from)
        .run();
    for (const HistoryId entry : until.undone) {
        m_database
            .prepare("INSERT INTO brought_undone (id, brought_copy_id, entry_id) "
                     "VALUES (?1, ?2, ?3)")
            .bind(m_database.nextId(), id, entry)
            .run();
    }
    for (const auto& [there, here] : same) {
        if (!known.contains(there)) {
            m_database
                .prepare("INSERT INTO brought_same (id, brought_copy_id, table_name, there_id, "
                         "here_id) VALUES (?1, ?2, ?3, ?4, ?5)")
                .bind(m_database.nextId(), id, there.table, there.id, here)
                .run();
        }
    }
}

} // namespace plumule
