#pragma once

#include "core/base/progress.h"
#include "core/storage/faults.h"
#include "core/storage/rescue_reason.h"

#include <filesystem>
#include <functional>
#include <map>

namespace plumule {

// What a rescue has to be told by those who know what the tables are about.
struct RescueKnowledge
{
    // The column whose cell means nothing in its table; none where all mean something.
    std::function<std::optional<std::size_t>(const std::string& table,
                                             const std::vector<DeclaredColumn>& columns,
                                             const std::vector<Cell>& cells)>
        meaningless;
    // Cells by column for an entry that stands in for a lost one that others belong to; none where
    // nothing may stand in. Columns that are not given are empty, 0 or without letters.
    std::function<std::optional<std::map<std::string, Cell>>(const std::string& table,
                                                             std::int64_t id)>
        standIn;
};

struct RescueReport
{
    std::int64_t entries = 0; // taken over, of all tables
    std::int64_t steps = 0;   // of the history
    std::int64_t photos = 0;
    std::vector<Error> said; // of the kind Damaged, with a RescueReason
};

// Saves what is readable of a damaged journal into a new one, row by row: past pages that can't be
// read, with rows as the history last wrote them where they themselves are gone, and without what
// points at what is lost. Steps of the history are kept whose changesets are whole and make sense.
// Works on a passing copy beside `fresh`: `old` is only read. Photographs are copied.
//
// FileMissing, FileUnreadable, OpenElsewhere, MadeByNewer of `old`; FileExists and NotMade of
// `fresh`; Cancelled; NothingReadable. Whatever is refused leaves no new file.
[[nodiscard]] Result<RescueReport> rescueFile(const std::filesystem::path& old,
                                              const std::filesystem::path& fresh,
                                              const RescueKnowledge& knowledge,
                                              const Progress& progress = {});

} // namespace plumule
