#include "lines.h"
#include "rules.h"

#include "core/stats/verdict/verdict.h"

namespace plumule::calibration {

// Places along the shelves differ as trays do, or by twice as much.
Section squares()
{
    Section section{"One trial in a Latin square, answered once", {}};
    for (const std::size_t size : {3U, 4U, 5U}) {
        const std::string room = "Latin square of " + std::to_string(size);
        Rules rules = rulesOf(1, size, size);
        rules.columnSd = rules.traySd;
        section.lines.push_back(oneTrialLine(room, rules, {}, kSets)
                                    .atMost(5)
                                    .covers(95)
                                    .inShort(size == 4 ? 1000 : 0));
        Rules unlike = rules;
        unlike.spreads = unlikeSpreads(size);
        section.lines.push_back(
            oneTrialLine(room + ", spread 4–20 % by medium", unlike, {}, kSets).atMost(6));
        rules.columnSd = 2 * rules.traySd;
        rules.effects = oneBetter(size);
        rules.effects[0] = stats::logMargin(15);
        section.lines.push_back(oneTrialLine(room + ", 15 % more of one, columns twice as unlike",
                                             rules, seeking(false)));
    }
    return section;
}

} // namespace plumule::calibration
