#pragma once

#include "room.h"

namespace plumule::calibration {

// How made trays are put before the pages' own question.
struct PagesAsk
{
    stats::CellScale scale = stats::CellScale::Log; // yield; LogOfRatio: cost per gram
    bool isOnOwnShelves = false;                    // each medium on a shelf of its own, on record
    std::optional<int> plannedTrials = {};
};

// The trays as records of a journal, asked through core/review's comparisonOf() as season and trial
// pages ask it. Trays without a value were thrown away.
[[nodiscard]] stats::MediaAnswer pagesAnswer(const std::vector<SownTray>& trays,
                                             const PagesAsk& ask);

} // namespace plumule::calibration
