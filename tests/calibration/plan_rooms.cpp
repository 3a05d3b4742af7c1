#include "lines.h"
#include "rules.h"

namespace plumule::calibration {

Section plans()
{
    Section section{"Planned series, answered once: media equal", {}};
    std::vector<Line>& lines = section.lines;
    for (const std::size_t sowings : {3U, 5U, 8U}) {
        const std::string plan = "plan of " + std::to_string(sowings);
        // Two media are told apart by the paired t, whose level is exact: enough sets to see it.
        lines.push_back(
            seasonLine(plan + ", 2 media", rulesOf(sowings, 2), planned(), 20 * kSets).exactly(5));
        lines.push_back(
            seasonLine(plan + ", 4 media", rulesOf(sowings, 4), planned(), kSets).atMost(5));
        Rules interacting = rulesOf(sowings);
        interacting.mediumSowing = 1;
        lines.push_back(
            seasonLine(plan + ", medium × trial sd = tray sd", interacting, planned(), kSets)
                .atMost(5));
        Rules spread = rulesOf(sowings);
        spread.spreads = unlikeSpreads(4);
        lines.push_back(
            seasonLine(plan + ", spread 4–20 % by medium", spread, planned(), kSets).atMost(6));
    }
    return section;
}

} // namespace plumule::calibration
