#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

Line runs(double mediumSowing, double memory, std::size_t sowings)
{
    Rules rules = rulesOf(sowings);
    rules.mediumSowing = mediumSowing;
    rules.mediumMemory = memory;
    char room[100];
    std::snprintf(room, sizeof room,
                  "a medium's good trials come in runs: correlation %.1f, medium × trial %.1f, %zu "
                  "trials",
                  memory, mediumSowing, sowings);
    return seasonLine(room, rules, {}, kFewerSets);
}

// Verdicts from four varieties, held against a fifth that is never grown: the media differ from
// variety to variety, and the fifth's differences are drawn with the others'.
Line neverGrown(std::size_t sowings)
{
    Rules rules = rulesOf(sowings);
    rules.varieties = 4;
    rules.mediumVariety = 1;
    Looking looking;
    looking.isOfNewVariety = true;
    return seasonLine("said of a variety never grown, medium × variety sd = tray sd, " +
                          std::to_string(sowings) + " trials",
                      rules, looking);
}

} // namespace

Section whatBreaksIt()
{
    Section section{"What breaks it, said where it matters", {}};
    for (const double memory : {0.3, 0.5}) {
        for (const double sd : {0.5, 1.0}) {
            section.lines.push_back(runs(sd, memory, 20));
        }
        section.lines.push_back(runs(1, memory, 8));
    }
    section.lines.push_back(neverGrown(8));
    section.lines.push_back(neverGrown(20));
    return section;
}

} // namespace plumule::calibration
