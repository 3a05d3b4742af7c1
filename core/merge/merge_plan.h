#pragma once

#include "core/base/result.h"
#include "core/merge/copies_repository.h"
#include "core/merge/merge_row.h"

#include <map>
#include <set>

namespace plumule {

using Choices = std::map<Family, Side>;

// What met: families of rows of which only one side's can stand. Empty sides are ones too: a tray
// that stands nowhere, a cut that was not weighed.
struct MergeItem
{
    std::vector<Family> families;
    std::vector<MergeRow> rows;
    std::optional<Side> chosen;
    std::set<std::int64_t> trays; // whose notes keep what is not chosen
};

// What bringing a copy back comes to, by what was chosen so far.
struct MergePlan
{
    TakenCopy copy;
    std::vector<MergeItem> items;
    std::vector<MergeRow> free; // changed by the copy alone: they come by themselves
    std::vector<Renamed> renamed;
    std::vector<ActSince> actsHere;
    std::vector<ActSince> actsThere;
    // A rule that what was chosen would break: the other side has to be taken somewhere.
    std::optional<Error> broken;

    [[nodiscard]] int unchosen() const;
    [[nodiscard]] bool isReady() const { return unchosen() == 0 && !broken; }
};

// The rows of these families as one item: chosen where all of them were, and alike.
[[nodiscard]] MergeItem itemOf(Database& schema, std::vector<Family> families,
                               std::vector<MergeRow> rows, const Choices& choices);

// What is written: rows that become other than they are here. Where nothing was chosen yet, it
// stays as it is here. A tray that only one side sowed is there in any case: without its place or
// its piece where those are not chosen.
[[nodiscard]] std::map<RowKey, RowState> outcomeOf(Database& schema, const MergePlan& plan);

// The rows of which a side is not kept, by what was chosen; none where nothing was.
[[nodiscard]] std::vector<MergeRow> rowsNotKept(const MergeItem& item);

} // namespace plumule
