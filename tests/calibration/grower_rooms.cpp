#include "lines.h"
#include "rules.h"

#include "core/stats/verdict/advice.h"

#include <algorithm>
#include <memory>

namespace plumule::calibration {
namespace {

constexpr std::size_t kLongest = 60;

// Looks after three trials, then when as many more are in as the advice said, until every pair is
// answered or the advice is more than a year of trials.
Outcome obeysTheAdvice(const Rules& rules, Looking looking, Draw& draw)
{
    std::size_t nextLook = 3;
    std::size_t lastLook = 0;
    looking.isLookedAt = [&](std::size_t sowings) { return sowings == nextLook; };
    const Grower grower = [&](const SoFar& soFar) -> std::optional<SowingPlan> {
        const SowingPlan plan = soFar.room.fullPlan();
        if (soFar.room.sowings() != nextLook || lastLook == nextLook) {
            return plan;
        }
        lastLook = nextLook;
        const auto& pairs = soFar.answer->pairs;
        const bool isAnswered = std::none_of(pairs.begin(), pairs.end(), [](const auto& pair) {
            return pair.verdict == stats::Verdict::CantTellYet;
        });
        const auto advice =
            stats::adviceFor(*soFar.answer, looking.ask, static_cast<double>(rules.trays));
        if (isAnswered || !advice || !advice->moreSowings) {
            return std::nullopt;
        }
        nextLook += static_cast<std::size_t>(*advice->moreSowings);
        return plan;
    };
    return season(rules, looking, draw, grower);
}

Line obedient(const std::string& room, std::vector<double> effects, double mediumSowing)
{
    Rules rules = rulesOf(kLongest, 2, 4);
    rules.effects = std::move(effects);
    rules.mediumSowing = mediumSowing;
    const Looking looking = rules.effects.empty() ? Looking{} : seeking(false);
    return Line{"obeys the advice: " + room, kFewerSets,
                [=](Draw& draw) { return obeysTheAdvice(rules, looking, draw); }}
        .atMost(5);
}

// Stops at the first look at which the favourite leads, and believes that look.
Grower stopsWhenPleased()
{
    return [](const SoFar& soFar) -> std::optional<SowingPlan> {
        if (soFar.answer != nullptr) {
            const auto& means = soFar.answer->means;
            const bool leads = std::all_of(means.begin(), means.end(), [&](const auto& mean) {
                return mean.onScale <= means.front().onScale;
            });
            if (leads) {
                return std::nullopt;
            }
        }
        return soFar.room.fullPlan();
    };
}

} // namespace

Section growers()
{
    Section section{"Growers who act on what they see: media equal unless said", {}};
    std::vector<Line>& lines = section.lines;
    Rules interacting = rulesOf(20);
    interacting.mediumSowing = 1;
    lines.push_back(seasonLine("stops when the favourite leads, 20 trials at most", interacting, {},
                               kFewerSets, stopsWhenPleased)
                        .atMost(5));
    lines.push_back(seasonLine("grows the winner more (6 trays, others 2), 20 trials", rulesOf(20),
                               {}, kFewerSets, [] { return sowsTheWinnerMore(6, 2); })
                        .atMost(5));
    lines.push_back(seasonLine("the same, medium × trial 1", interacting, {}, kFewerSets, [] {
                        return sowsTheWinnerMore(6, 2);
                    }).atMost(5));
    lines.push_back(
        seasonLine("drops the worst, 20 trials", rulesOf(20), {}, kFewerSets, dropsTheWorst)
            .atMost(5));
    lines.push_back(
        seasonLine("the same, medium × trial 1", interacting, {}, kFewerSets, dropsTheWorst)
            .atMost(5));
    for (const double mediumSowing : {0.0, 1.0}) {
        const std::string after = mediumSowing > 0 ? ", medium × trial 1" : "";
        lines.push_back(obedient("two media equal" + after, {}, mediumSowing));
        lines.push_back(obedient("one gives 10 % more" + after, oneBetter(2), mediumSowing));
    }
    return section;
}

} // namespace plumule::calibration
