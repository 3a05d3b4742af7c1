#include "lines.h"
#include "rules.h"

namespace plumule::calibration {

Section plans()
{
    Section section{"Planned series, answered once: media equal", {}};
    std::vector<Line>& lines = section.lines;
    for (const std::size_t sowings : {3U, 5U, 8U}) {
        const std::string plan = "plan of " + std::to_string(sowings);
        for (const std::size_t media : {2U, 4U}) {
            lines.push_back(seasonLine(plan + ", " + std::to_string(media) + " media",
                                       rulesOf(sowings, media), planned(), kSets)
                                .atMost(5));
        }
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
