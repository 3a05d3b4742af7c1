#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

std::string numbered(const std::string& before, std::size_t number, const std::string& after)
{
    return before + std::to_string(number) + after;
}

void addBlocksOfOneTrial(std::vector<Line>& lines)
{
    for (const std::size_t media : {2U, 3U, 4U}) {
        for (const std::size_t trays : {2U, 3U, 4U, 6U}) {
            const std::string room =
                numbered("one trial, blocks: ", media, " media, ") + numbered("", trays, " trays");
            lines.push_back(
                oneTrialLine(room, rulesOf(1, media, trays), withOld(AsksOld::Last), kSets)
                    .atMost(5));
        }
    }
}

void addSeasonsOfEight(std::vector<Line>& lines)
{
    lines.push_back(
        seasonLine("8 trials × 4 media", rulesOf(8), withOld(AsksOld::Last), kSets).atMost(5));
    Rules weights = rulesOf(8);
    weights.varieties = 3;
    weights.varietyGrams = {120, 250, 400};
    lines.push_back(seasonLine("varieties of 120/250/400 g in turn, CV 7 %", weights,
                               withOld(AsksOld::Last), kSets)
                        .atMost(5));
    Rules spread = rulesOf(8);
    spread.spreads = unlikeSpreads(4);
    lines.push_back(
        seasonLine("spread 4–20 % by medium, 8 trials", spread, withOld(AsksOld::Last), kSets)
            .atMost(6));
    for (const double probability : {0.1, 0.25, 0.5, 1.0}) {
        Looking looking = withOld(AsksOld::Last);
        looking.asksDiscards = true;
        const auto share = static_cast<std::size_t>(probability * 100);
        lines.push_back(seasonLine(numbered("worst tray of one medium thrown away in ", share,
                                            " % of 8 trials"),
                                   rulesOf(8), looking, kSets, {}, throwsTheWorstAway(probability))
                            .atMost(5));
    }
}

void addVarietiesDrawn(std::vector<Line>& lines)
{
    Rules others = rulesOf(8);
    others.varieties = 3;
    others.varietiesEach = 3;
    others.mediumVariety = 1;
    lines.push_back(seasonLine("medium × variety, media on two of three varieties, drawn by trial",
                               others, withOld(AsksOld::Last), kSets,
                               [] { return sowsOnSomeVarieties(2, false); })
                        .atMost(5));
    Looking asGrown;
    asGrown.isAsGrown = true;
    lines.push_back(seasonLine("the same, drawn once; false against what was grown", others,
                               asGrown, kSets, [] { return sowsOnSomeVarieties(2, true); })
                        .atMost(5));
}

void addLooks(std::vector<Line>& lines)
{
    lines.push_back(
        seasonLine("looked at after each of 8 trials", rulesOf(8), withOld(AsksOld::Always))
            .atMost(5)
            .inShort(1500));
    lines.push_back(
        seasonLine("looked at after each of 20 trials", rulesOf(20), {}, kSets).atMost(5));
}

void addInteraction(std::vector<Line>& lines)
{
    Rules four = rulesOf(8);
    four.mediumSowing = 1;
    four.varieties = four.varietiesEach = 4;
    lines.push_back(seasonLine("medium × trial sd = tray sd, 8 trials, 4 varieties in each", four,
                               withOld(AsksOld::Last))
                        .atMost(5)
                        .inShort(400));
    Rules one = rulesOf(8);
    one.mediumSowing = 1;
    lines.push_back(
        seasonLine("the same, 1 variety", one, withOld(AsksOld::Last)).atMost(5).inShort(1000));
    Rules three = rulesOf(3);
    three.mediumSowing = 1;
    lines.push_back(
        seasonLine("the same, 3 trials", three, withOld(AsksOld::Last)).atMost(5).inShort(1500));
    Rules half = rulesOf(8);
    half.mediumSowing = 0.5;
    half.varieties = half.varietiesEach = 4;
    lines.push_back(seasonLine("the same, half the sd, 8 trials, 4 varieties in each", half,
                               withOld(AsksOld::Last))
                        .atMost(5)
                        .inShort(400));
    lines.push_back(seasonLine("two of the media introduced late, medium × trial sd = tray sd", one,
                               withOld(AsksOld::Last), kFewerSets, [] { return sowsLate(2, 4); })
                        .atMost(5)
                        .inShort(1000));
}

// Each medium on a shelf of its own, which shelves are unlike; the shelf is on record, so that
// every pair is named as confounded, as the fairness of a comparison does.
Line ownShelf()
{
    Rules rules = rulesOf(8);
    Looking looking;
    for (std::size_t a = 0; a < rules.media; ++a) {
        for (std::size_t b = a + 1; b < rules.media; ++b) {
            looking.ask.confounded.emplace_back(a, b);
        }
    }
    const GrowerMaker onShelves = [] {
        return [](const SoFar& soFar) -> std::optional<SowingPlan> {
            for (std::size_t medium = 0; medium < 4; ++medium) {
                soFar.room.shift(medium, 0.03 * static_cast<double>(medium));
            }
            return soFar.room.fullPlan();
        };
    };
    return seasonLine("each medium on its own shelf, on record", rules, looking, kFewerSets,
                      onShelves);
}

void addNeverMet(std::vector<Line>& lines)
{
    Rules drift = rulesOf(8);
    drift.sowingDrift = 0.03;
    Looking strangers;
    strangers.counts = [](std::size_t a, std::size_t b) { return a / 2 != b / 2; };
    lines.push_back(seasonLine("media that never met, drift 3 % a trial", drift, strangers,
                               kFewerSets, [] { return sowsInTeams(2); })
                        .atMost(0)
                        .inShort(1000));
    lines.push_back(seasonLine("sowings of one medium each, drift 3 %", drift, {}, kFewerSets,
                               [] { return sowsInTeams(1); })
                        .atMost(0)
                        .inShort(1000));
    lines.push_back(ownShelf().atMost(0).inShort(1000));
}

} // namespace

Section promisedRooms()
{
    Section section{"What is promised: media equal, any false verdict at any look", {}};
    addBlocksOfOneTrial(section.lines);
    addSeasonsOfEight(section.lines);
    addVarietiesDrawn(section.lines);
    addLooks(section.lines);
    addInteraction(section.lines);
    addNeverMet(section.lines);
    return section;
}

} // namespace plumule::calibration
