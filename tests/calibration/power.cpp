#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

Line found(const std::string& room, std::size_t sowings, std::size_t media, std::size_t trays,
           bool isPlanned)
{
    Rules rules = rulesOf(sowings, media, trays);
    rules.effects = oneBetter(media);
    return seasonLine(room + ", " + std::to_string(media) + " media of " + std::to_string(trays) +
                          " trays",
                      rules, seeking(isPlanned), kSets)
        .atMost(5);
}

// Media at the margin's two ends: to call any such pair the same is false.
Line same(const std::string& room, std::size_t sowings, std::size_t trays,
          std::vector<double> effects, bool isPlanned)
{
    Rules rules = rulesOf(sowings, effects.size(), trays);
    rules.effects = std::move(effects);
    Looking looking;
    looking.isPlanned = isPlanned;
    looking.countsSame = true;
    return seasonLine(room, rules, looking, kSets).atMost(5);
}

// Media truly equal: "same within 10 %" is what shall be found.
Line equal(const std::string& room, std::size_t sowings, bool isPlanned, double percent)
{
    Looking looking = seeking(isPlanned);
    looking.ask.margin = stats::logMargin(percent);
    looking.countsSame = true;
    return seasonLine(room, rulesOf(sowings, 4, 6), looking);
}

} // namespace

Section power()
{
    Section section{"Power: one medium gives 10 % more, CV 7 %, no interaction", {}};
    std::vector<Line>& lines = section.lines;
    for (const std::size_t media : {2U, 4U}) {
        lines.push_back(found("plan of 8", 8, media, 4, true).finds(95).inShort(1000));
        lines.push_back(found("plan of 3", 3, media, 4, true).finds(44).inShort(1000));
        lines.push_back(
            found("open season by 8 trials", 8, media, 4, false).finds(88).inShort(1000));
        lines.push_back(found("plan of 8", 8, media, 3, true));
        lines.push_back(found("plan of 3", 3, media, 3, true));
        lines.push_back(found("open season by 8 trials", 8, media, 3, false));
    }
    const double at = kTenPercent;
    lines.push_back(same("four of six pairs at the margin: false same, 8 trials of 6 trays", 8, 6,
                         {0, 0, at, at}, false)
                        .inShort(1000));
    lines.push_back(same("the same, plan of 8", 8, 6, {0, 0, at, at}, true).inShort(1000));
    lines.push_back(same("three pairs at the margin, three beyond: false same, 8 trials", 8, 6,
                         {0, at, 2 * at, 3 * at}, false));
    lines.push_back(same("the same, plan of 3", 3, 6, {0, at, 2 * at, 3 * at}, true));
    lines.push_back(equal("true same within 10 %, 6 trays, plan of 3", 3, true, 10));
    lines.push_back(equal("true same within 10 %, 6 trays, plan of 5", 5, true, 10));
    lines.push_back(equal("true same within 10 %, 6 trays, open season by 5", 5, false, 10));
    lines.push_back(equal("true same within 10 %, 6 trays, open season by 8", 8, false, 10));
    lines.push_back(equal("true same within 5 %, 6 trays, plan of 8", 8, true, 5));
    return section;
}

} // namespace plumule::calibration
