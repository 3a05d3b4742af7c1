#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

std::string traysOf(std::size_t trays)
{
    return ", " + std::to_string(trays) + " trays";
}

void addUnlike(std::vector<Line>& lines, bool hasBlocks)
{
    const std::string layout = hasBlocks ? "one trial, blocks" : "one trial, no blocks";
    for (const std::size_t trays : {3U, 4U, 6U}) {
        Rules rules = rulesOf(1, 4, trays);
        rules.hasBlocks = hasBlocks;
        if (!hasBlocks) {
            lines.push_back(
                oneTrialLine(layout + ", 4 media" + traysOf(trays), rules, {}, kSets).atMost(5));
        }
        rules.spreads = unlikeSpreads(4);
        lines.push_back(oneTrialLine(layout + ", spread 4–20 % by medium" + traysOf(trays), rules,
                                     withOld(AsksOld::Last), kSets)
                            .atMost(6));
        rules.spreads = {0.252, 0.07, 0.07, 0.07};
        lines.push_back(oneTrialLine(layout + ", one medium 3.6 times as unsteady" + traysOf(trays),
                                     rules, withOld(AsksOld::Last), kSets));
    }
}

void addUneven(std::vector<Line>& lines)
{
    for (const std::size_t media : {2U, 4U}) {
        Rules rules = rulesOf(1, media);
        rules.hasBlocks = false;
        const std::string room = "one trial, no blocks, " + std::to_string(media) +
                                 " media, 6 trays of one, 3 of others";
        lines.push_back(oneTrialLine(room, rules, {}, kSets, [] { return sowsUnevenly(6, 3); }));
        rules.spreads.assign(media, 0.14);
        rules.spreads[0] = 0.04;
        lines.push_back(oneTrialLine(room + ", the one steadier", rules, {}, kSets,
                                     [] { return sowsUnevenly(6, 3); }));
        rules.spreads.assign(media, 0.04);
        rules.spreads[0] = 0.14;
        lines.push_back(oneTrialLine(room + ", the one less steady", rules, {}, kSets,
                                     [] { return sowsUnevenly(6, 3); }));
    }
}

} // namespace

Section oneTrial()
{
    Section section{"One or two trials, answered once", {}};
    addUnlike(section.lines, true);
    addUnlike(section.lines, false);
    addUneven(section.lines);
    std::vector<Line>& lines = section.lines;
    for (const std::size_t media : {2U, 4U}) {
        Rules two = rulesOf(2, media);
        lines.push_back(
            oneTrialLine("two trials, " + std::to_string(media) + " media", two, {}, kSets)
                .atMost(5));
        Rules few = rulesOf(1, media, 4);
        lines.push_back(oneTrialLine("one trial, a tray in five lost, " + std::to_string(media) +
                                         " media, 4 trays",
                                     few, {}, kSets, {}, losesTrays(0.2))
                            .atMost(5));
        few.effects = oneBetter(media);
        few.effects[0] = stats::logMargin(15);
        lines.push_back(oneTrialLine("one trial, 15 % more of one of " + std::to_string(media) +
                                         " media, 4 trays",
                                     few, seeking(false)));
    }
    Rules mixed = rulesOf(1, 4, 2);
    mixed.varieties = mixed.varietiesEach = 2;
    lines.push_back(
        oneTrialLine("one trial of two varieties, 2 trays a cell", mixed, {}, kSets).atMost(5));
    Rules heavy = rulesOf(1, 4, 4);
    heavy.errors = Errors::StudentT;
    lines.push_back(
        oneTrialLine("one trial, t errors with 3 df, 4 trays", heavy, {}, kSets).atMost(5));
    return section;
}

} // namespace plumule::calibration
