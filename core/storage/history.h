#pragma once

#include "core/storage/changeset.h"
#include "core/storage/changeset_check.h"
#include "core/storage/database.h"
#include "core/storage/history_entry.h"

#include <set>
#include <string>
#include <vector>

namespace plumule {

// What stands over an undo, within its transaction: told which rows it is about to change, it is
// asked afterwards whether that may be.
class UndoGuard
{
public:
    virtual ~UndoGuard() = default;
    virtual void look(const HistoryEntry& step, const std::vector<ChangedRows>& rows) = 0;
    [[nodiscard]] virtual Done check(const std::vector<ChangedRows>& rows) = 0;
};

// The journal's list of intentions, and the way back. Undo and redo are each one transaction.
class History
{
public:
    explicit History(Database& database)
        : m_database(database)
    {}

    // Newest first.
    [[nodiscard]] std::vector<HistoryEntry> latest(int count) const;
    // Which of the newest `count` changed that row, or one that points to it.
    [[nodiscard]] std::set<HistoryId> latestAbout(const std::string& table, std::int64_t row,
                                                  int count) const;
    [[nodiscard]] std::optional<HistoryEntry> nextUndo() const;
    [[nodiscard]] std::optional<HistoryEntry> nextRedo() const;

    struct Applied
    {
        HistoryEntry entry;
        std::vector<ChangedRows> rows;
    };
    // Takes back one entry; the newest that is done, when `id` is not stored. ChangedSince, with
    // the table and row, where later work touched the same rows; Damaged when the stored changeset
    // does not match its checksum; NothingThere; NewerVersion when it was made under a
    // schema whose tables were other ones; what the guard refuses.
    Result<Applied> undo(HistoryId id = {}, UndoGuard* guard = nullptr);
    // What undo() would do, tried and rolled back: its refusals are undo()'s own.
    [[nodiscard]] Result<std::vector<RowEffect>> foresee(HistoryId id, UndoGuard* guard = nullptr);
    // Does the entry again that was undone last.
    Result<Applied> redo();

private:
    enum class Run
    {
        ForGood,
        Trial // rolled back again
    };
    [[nodiscard]] Result<HistoryEntry> standing(HistoryId id) const;
    Result<Applied> apply(const HistoryEntry& entry, WayThrough way, UndoGuard* guard, Run run);

    Database& m_database;
};

} // namespace plumule
