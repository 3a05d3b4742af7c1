#pragma once

#include "app/commands/command.h"
#include "core/stats/model/compare_table.h"

namespace plumule::app {

// The documented JSON of a comparison.
[[nodiscard]] nlohmann::ordered_json jsonOf(const stats::TableComparison& comparison,
                                            const stats::CompareRequest& request);
// The same to be read.
void printComparison(const stats::TableComparison& comparison,
                     const stats::CompareRequest& request);

} // namespace plumule::app
