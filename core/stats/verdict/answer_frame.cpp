#include "core/stats/verdict/answer_frame.h"

#include "core/stats/verdict/critical_value.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace plumule::stats {
namespace {

bool givesNumber(const SownTray& tray, CellScale scale)
{
    return tray.value && (scale != CellScale::Log || *tray.value > 0);
}

} // namespace

MediaAnswer frameOf(std::span<const SownTray> trays, const VerdictAsk& ask)
{
    MediaAnswer answer;
    answer.scale = ask.scale;
    std::map<std::size_t, MediumMean> means;
    std::map<std::size_t, std::set<std::size_t>> sowings;
    for (const SownTray& tray : trays) {
        MediumMean& mean = means[tray.medium];
        mean.medium = tray.medium;
        if (givesNumber(tray, ask.scale)) {
            ++mean.trays;
            ++answer.trays;
            sowings[tray.medium].insert(tray.sowing);
        }
    }
    for (auto& [medium, mean] : means) {
        mean.sowings = static_cast<int>(sowings[medium].size());
        answer.means.push_back(mean);
    }
    for (std::size_t i = 0; i < answer.means.size(); ++i) {
        for (std::size_t j = i + 1; j < answer.means.size(); ++j) {
            PairAnswer& pair = answer.pairs.emplace_back();
            pair.a = answer.means[i].medium;
            pair.b = answer.means[j].medium;
        }
    }
    return answer;
}

double sharedRisk(double risk, const VerdictAsk& ask)
{
    return ask.sideMetrics > 0 ? risk / ask.sideMetrics : risk;
}

bool isConfounded(const VerdictAsk& ask, std::size_t a, std::size_t b)
{
    return std::any_of(ask.confounded.begin(), ask.confounded.end(), [&](const auto& pair) {
        return pair == std::pair(a, b) || pair == std::pair(b, a);
    });
}

bool isOfSurvivors(const VerdictAsk& ask, std::size_t a, std::size_t b)
{
    return std::any_of(ask.survivors.begin(), ask.survivors.end(),
                       [&](std::size_t medium) { return medium == a || medium == b; });
}

bool hasNoSpread(double variance, CellScale scale, double mean)
{
    return variance < kLeastVariance * (isLog(scale) ? 1 : mean * mean);
}

void takeInterval(PairAnswer& pair, const PairGround& ground)
{
    pair.df = ground.df;
    pair.level = ground.level;
    pair.se = std::sqrt(ground.variance * ground.relativeVariance);
    pair.critical = criticalValue(ground.media, ground.df, ground.level);
    pair.halfWidth = *pair.critical * *pair.se;
}

void refuse(PairAnswer& pair, Verdict verdict, NoVerdictReason why)
{
    pair.verdict = verdict;
    pair.why = why;
}

bool refusedBeforehand(PairAnswer& pair, const MediaAnswer& answer, const VerdictAsk& ask)
{
    const auto hasNone = [&](std::size_t medium) {
        return std::any_of(answer.means.begin(), answer.means.end(), [&](const MediumMean& mean) {
            return mean.medium == medium && mean.trays == 0;
        });
    };
    if (hasNone(pair.a) || hasNone(pair.b)) {
        refuse(pair, Verdict::NoVerdict, NoVerdictReason::NothingHarvested);
    } else if (pair.sowingsShared == 0) {
        refuse(pair, Verdict::NotComparable, NoVerdictReason::NeverMet);
    } else if (isConfounded(ask, pair.a, pair.b)) {
        refuse(pair, Verdict::NotComparable, NoVerdictReason::Confounded);
    } else if (ask.series == Series::PlanRunning) {
        pair.halfWidth.reset();
        refuse(pair, Verdict::NoVerdict, NoVerdictReason::PlanRunning);
    } else if (ask.isFiltered) {
        refuse(pair, Verdict::NoVerdict, NoVerdictReason::Filtered);
    } else if (isOfSurvivors(ask, pair.a, pair.b)) {
        refuse(pair, Verdict::NoVerdict, NoVerdictReason::SurvivorsOnly);
    } else {
        return false;
    }
    return true;
}

void judge(PairAnswer& pair, double margin)
{
    pair.verdict = verdictOf(*pair.interval(), margin);
    pair.why.reset();
}

} // namespace plumule::stats
