#pragma once

#include "core/storage/history_since.h"

#include <map>
#include <string>
#include <vector>

namespace plumule {

struct CopyTag;
using CopyId = Id<CopyTag>;

// A copy that was taken along. Its id is its number: new rows of copy k have ids from k·2^40 on,
// so that they meet none of this journal's or of another copy.
struct TakenCopy
{
    CopyId id;
    std::string name; // "Rack laptop"
    std::int64_t takenAtUtcMs = 0;
    std::int64_t baseEntry = 0; // the newest act then, and its changeset's checksum
    std::int64_t baseChecksum = 0;
    std::int64_t from = 0; // the first id that was not drawn here then
    bool operator==(const TakenCopy&) const = default;
};

// Rows of a copy that are other rows here.
using SameRows = std::map<RowKey, std::int64_t>;

// The copies of a journal, and in a copy itself what it is a copy of.
class CopiesRepository
{
public:
    explicit CopiesRepository(Database& database)
        : m_database(database)
    {}

    // 1 for a journal that is no copy.
    [[nodiscard]] std::int64_t ownNumber();
    [[nodiscard]] std::vector<TakenCopy> all();
    [[nodiscard]] std::optional<TakenCopy> find(CopyId copy);
    // Under the next number, unless it has one.
    void insert(TakenCopy& copy);
    void remove(CopyId copy);

    [[nodiscard]] std::vector<std::string> photoNames();

    // Makes of the file, a copy page by page, the copy of that number: it draws ids of its own, and
    // can't do again what was taken back where it comes from.
    void become(CopyId copy);

    // Up to where the copy was brought back; its beginning, where it never was.
    [[nodiscard]] HistoryMark broughtUntil(CopyId copy);
    [[nodiscard]] SameRows sameRows(CopyId copy);
    void insertBrought(CopyId copy, Date day, const HistoryMark& until, const SameRows& same);

private:
    Database& m_database;
};

} // namespace plumule
