#include "lines.h"
#include "rules.h"

#include <cmath>

namespace plumule::calibration {
namespace {

Looking throughThePages(const PagesAsk& ask = {})
{
    Looking looking;
    looking.pages = ask;
    looking.ask.scale = ask.scale;
    return looking;
}

// Shelves are unlike, and each medium stands on one of its own.
Grower shiftsByShelf()
{
    return [](const SoFar& soFar) -> std::optional<SowingPlan> {
        for (std::size_t medium = 0; medium < 4; ++medium) {
            soFar.room.shift(medium, 0.03 * static_cast<double>(medium));
        }
        return soFar.room.fullPlan();
    };
}

Harvest failsInTen()
{
    return [](std::vector<SownTray>& trays, Draw& draw) {
        for (SownTray& tray : trays) {
            tray.per = draw.uniform() < 0.1 ? 0 : *tray.value;
            tray.value = 1.2 * std::exp(draw.normal(0.02));
        }
    };
}

void addRooms(std::vector<Line>& lines)
{
    lines.push_back(
        oneTrialLine("one trial, blocks: 4 media, 3 trays", rulesOf(1), throughThePages())
            .atMost(5)
            .inShort(300));
    Rules interaction = rulesOf(8);
    interaction.mediumSowing = 1;
    lines.push_back(seasonLine("medium × trial sd = tray sd, looked at after each of 8 trials",
                               interaction, throughThePages())
                        .atMost(5)
                        .inShort(200));
    Rules plan = interaction;
    plan.sowings = 5;
    PagesAsk ofFive;
    ofFive.plannedTrials = 5;
    lines.push_back(
        seasonLine("medium × trial sd = tray sd, a plan of 5", plan, throughThePages(ofFive))
            .atMost(5)
            .inShort(300));
    PagesAsk cost;
    cost.scale = stats::CellScale::LogOfRatio;
    lines.push_back(oneTrialLine("cost, one trial: 2 media, 3 trays, 10 % failing", rulesOf(1, 2),
                                 throughThePages(cost), kFewerSets, {}, failsInTen())
                        .atMost(5)
                        .inShort(300));
}

// No verdict may be given here.
void addRoomsThatCantTell(std::vector<Line>& lines)
{
    Rules drift = rulesOf(8);
    drift.sowingDrift = 0.03;
    Looking strangers = throughThePages();
    strangers.counts = [](std::size_t a, std::size_t b) { return a / 2 != b / 2; };
    lines.push_back(seasonLine("media that never met, drift 3 % a trial", drift, strangers,
                               kFewerSets, [] { return sowsInTeams(2); })
                        .atMost(0)
                        .inShort(100));
    PagesAsk shelves;
    shelves.isOnOwnShelves = true;
    lines.push_back(seasonLine("each medium on its own shelf, on record", rulesOf(8),
                               throughThePages(shelves), kFewerSets, [] { return shiftsByShelf(); })
                        .atMost(0)
                        .inShort(100));
}

} // namespace

Section throughPages()
{
    Section section{"The same rooms through the pages' own question (records of a journal)", {}};
    addRooms(section.lines);
    addRoomsThatCantTell(section.lines);
    return section;
}

} // namespace plumule::calibration
