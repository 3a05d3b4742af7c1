#pragma once

#include "core/storage/history.h"
#include "core/storage/whole_row.h"

#include <map>

namespace plumule {

// A moment of a journal: what it had drawn and could do again by then.
struct HistoryMark
{
    std::int64_t from = 1;         // the first id that was not drawn
    std::vector<HistoryId> undone; // could be done again
};
[[nodiscard]] HistoryMark markOf(Database& database);

// An entry recorded since, as it stands now.
struct ActSince
{
    HistoryId id;
    std::int64_t atUtcMs = 0;
    std::string intention;
    HistoryState state = HistoryState::Standing;
};

// A row that was touched since: as it was at the mark. Where an older entry was taken back or done
// again since, and other acts touched the row too, that can't be told.
struct RowSince
{
    bool isBeforeKnown = true;
    RowState before;
    std::int64_t lastAtUtcMs = 0;
};

struct HistorySince
{
    std::vector<ActSince> acts; // oldest first; older ones that were taken back are not among them
    std::map<RowKey, RowSince> rows;
};

// Walks the changesets recorded since the mark, and those of older entries whose state changed
// since. Damaged, with the entry, where one is not what its checksum says or makes no sense here.
[[nodiscard]] Result<HistorySince> changesSince(Database& database, const HistoryMark& mark);

// The newest entry and the checksum of its changeset; 0 and 0 where nothing was done yet.
struct HistoryTip
{
    std::int64_t id = 0;
    std::int64_t checksum = 0;
    bool operator==(const HistoryTip&) const = default;
};
[[nodiscard]] HistoryTip tipOf(Database& database);
// Whether that entry is in this history, with that checksum.
[[nodiscard]] bool holdsTip(Database& database, const HistoryTip& tip);

} // namespace plumule
