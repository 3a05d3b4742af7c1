#pragma once

#include "core/base/id.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

struct HistoryTag;
using HistoryId = Id<HistoryTag>;

enum class HistoryState
{
    Standing,
    Undone,  // can be redone
    Dropped, // undone, and overtaken by a later intention
};
[[nodiscard]] const char* toText(HistoryState state); // done, undone, dropped
bool fromText(std::string_view text, HistoryState& state);

// One thing the grower did. `intention` is a stable key ("harvest.record"), `subject` names what it
// was done to in the grower's own words ("RD029"); the sentence is made in ui. Details are of one
// line each.
struct HistoryEntry
{
    HistoryId id;
    std::int64_t atUtcMs = 0;
    std::string intention; // empty where the row can't be read: then its id alone is known
    std::string subject;
    std::int64_t rowCount = 0;
    HistoryState state = HistoryState::Standing;
    std::vector<std::string>
        details; // what it came to, as its intention says; none before schema 6
};

} // namespace plumule
