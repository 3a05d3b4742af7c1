#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

Rules interacting(std::size_t sowings, double mediumSowing, std::size_t media = 4)
{
    Rules rules = rulesOf(sowings, media);
    rules.mediumSowing = mediumSowing;
    return rules;
}

void addInteractions(std::vector<Line>& lines)
{
    for (const double sd : {0.5, 1.5}) {
        for (const std::size_t sowings : {3U, 8U, 20U}) {
            char room[64];
            std::snprintf(room, sizeof room, "medium × trial %.1f tray sds, %zu trials", sd,
                          sowings);
            lines.push_back(seasonLine(room, interacting(sowings, sd)).atMost(5));
        }
    }
    lines.push_back(
        seasonLine("2 media, medium × trial 1, 20 trials", interacting(20, 1, 2), {}, kSets)
            .atMost(5));
    lines.push_back(seasonLine("60 trials", rulesOf(60), {}, 1000).atMost(5));
}

void addTrayNumbers(std::vector<Line>& lines)
{
    lines.push_back(seasonLine("one tray a cell, 20 trials", rulesOf(20, 4, 1)).atMost(5));
    lines.push_back(seasonLine("6 trays of one medium, 2 of the others, 20 trials", rulesOf(20), {},
                               kFewerSets, [] { return sowsUnevenly(6, 2); })
                        .atMost(5));
    lines.push_back(seasonLine("a tray in five missing, 20 trials", rulesOf(20), {}, kFewerSets, {},
                               losesTrays(0.2))
                        .atMost(5));
    lines.push_back(seasonLine("a cell in five missing, medium × trial 1, 20 trials",
                               interacting(20, 1), {}, kFewerSets, {}, losesCells(0.2))
                        .atMost(5));
}

void addErrors(std::vector<Line>& lines)
{
    const std::pair<Errors, const char*> kinds[] = {
        {Errors::StudentT, "t errors with 3 df, 20 trials"},
        {Errors::BadTray, "one bad tray in 20, 20 trials"},
        {Errors::Additive, "additive errors, 20 trials"}};
    for (const auto& [errors, room] : kinds) {
        Rules rules = rulesOf(20);
        rules.errors = errors;
        lines.push_back(seasonLine(room, rules).atMost(5));
    }
}

void addSpreads(std::vector<Line>& lines)
{
    for (const std::size_t sowings : {3U, 20U}) {
        Rules rules = rulesOf(sowings);
        rules.spreads = unlikeSpreads(4);
        lines.push_back(
            seasonLine("spread 4–20 % by medium, " + std::to_string(sowings) + " trials", rules)
                .atMost(6));
    }
    for (const std::size_t sowings : {8U, 20U}) {
        Rules rules = rulesOf(sowings);
        rules.spreads = {0.252, 0.07, 0.07, 0.07};
        lines.push_back(seasonLine("one medium's trays 3.6 times as unsteady, " +
                                       std::to_string(sowings) + " trials",
                                   rules));
        Rules cells = interacting(sowings, 1);
        cells.unsteady = {3.6, 1, 1, 1};
        lines.push_back(seasonLine("one medium's trials 3.6 times as unsteady, medium × trial 1, " +
                                       std::to_string(sowings) + " trials",
                                   cells));
    }
}

void addTogether(std::vector<Line>& lines)
{
    Rules drifting = interacting(20, 1);
    drifting.sowingDrift = 0.03;
    drifting.sowingMemory = 0.9;
    drifting.sowingSd = 0.2;
    lines.push_back(
        seasonLine("trials that drift together, medium × trial 1, 20 trials", drifting).atMost(5));
    lines.push_back(seasonLine("late media in trials that drift, medium × trial 1, 20 trials",
                               drifting, {}, kFewerSets, [] { return sowsLate(2, 8); })
                        .atMost(5));
    for (const double loss : {0.005, 0.02}) {
        char room[80];
        std::snprintf(room, sizeof room, "a mat that gives %.1f %% less each use of 12, 20 trials",
                      100 * loss);
        lines.push_back(
            seasonLine(room, rulesOf(20), {}, kFewerSets, [loss] { return agesItsMat(loss, 12); }));
    }
    Rules width = rulesOf(8);
    lines.push_back(seasonLine("coverage of all intervals at the 8th trial", width).covers(95));
}

} // namespace

Section seasons()
{
    Section section{"Open seasons, looked at after every trial from the third on: media equal", {}};
    addInteractions(section.lines);
    addTrayNumbers(section.lines);
    addErrors(section.lines);
    addSpreads(section.lines);
    addTogether(section.lines);
    return section;
}

} // namespace plumule::calibration
