#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

Looking withVarieties(bool isAsGrown = false)
{
    Looking looking;
    looking.asksVarieties = true;
    looking.isAsGrown = isAsGrown;
    return looking;
}

Rules varied(std::size_t sowings, std::size_t each, std::size_t trays, double mediumSowing,
             double mediumVariety)
{
    Rules rules = rulesOf(sowings, 4, trays);
    rules.varieties = 4;
    rules.varietiesEach = each;
    rules.mediumSowing = mediumSowing;
    rules.mediumVariety = mediumVariety;
    rules.varietyGrams = {120, 250, 400, 180};
    return rules;
}

} // namespace

Section varieties()
{
    Section section{"Several varieties; verdicts on average and by variety count together", {}};
    std::vector<Line>& lines = section.lines;
    for (const std::size_t sowings : {8U, 20U}) {
        const std::string after = ", " + std::to_string(sowings) + " trials";
        lines.push_back(seasonLine("one of four varieties in turn" + after,
                                   varied(sowings, 1, 3, 0, 0), withVarieties())
                            .atMost(5));
        lines.push_back(seasonLine("one of four in turn, medium × trial 1" + after,
                                   varied(sowings, 1, 3, 1, 0), withVarieties())
                            .atMost(5));
        lines.push_back(seasonLine("one of four in turn, medium × variety 1, as grown" + after,
                                   varied(sowings, 1, 3, 0, 1), withVarieties(true))
                            .atMost(5));
        lines.push_back(seasonLine("four in each trial, one tray a cell" + after,
                                   varied(sowings, 4, 1, 0, 0), withVarieties())
                            .atMost(5));
        lines.push_back(seasonLine("four in each trial, one tray a cell, medium × trial 1" + after,
                                   varied(sowings, 4, 1, 1, 0), withVarieties())
                            .atMost(5));
        lines.push_back(seasonLine("four in each trial, medium × variety 1, as grown" + after,
                                   varied(sowings, 4, 1, 1, 1), withVarieties(true))
                            .atMost(5));
        lines.push_back(seasonLine("two in each trial in turn, medium × trial 1" + after,
                                   varied(sowings, 2, 2, 1, 0), withVarieties())
                            .atMost(5));
        lines.push_back(
            seasonLine("four in each trial, media on two of them, drawn by trial" + after,
                       varied(sowings, 4, 2, 1, 0), withVarieties(), kFewerSets,
                       [] { return sowsOnSomeVarieties(2, false); })
                .atMost(5));
        lines.push_back(
            seasonLine("four in each trial, media on one of them, drawn by trial" + after,
                       varied(sowings, 4, 2, 1, 0), withVarieties(), kFewerSets,
                       [] { return sowsOnSomeVarieties(1, false); })
                .atMost(5));
    }
    return section;
}

} // namespace plumule::calibration
