#include "core/review/comparison/pair_conversion.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

std::optional<double> meanOf(const PairContext& context, std::size_t medium)
{
    const auto found = context.means.find(medium);
    return found == context.means.end() ? std::nullopt : std::optional(found->second);
}

// A number of the scale, as percent of b and in the unit.
struct OnBothScales
{
    std::optional<double> percent;
    std::optional<double> inUnit;
};

OnBothScales onBoth(double onScale, stats::CellScale scale, std::optional<double> meanOfB)
{
    if (stats::isLog(scale)) {
        return {stats::percentOfLog(onScale),
                meanOfB ? std::optional(*meanOfB * std::expm1(onScale)) : std::nullopt};
    }
    return {meanOfB && *meanOfB > 0 ? std::optional(100 * onScale / *meanOfB) : std::nullopt,
            onScale};
}

void takeNumbers(MediaPair& pair, std::optional<double> difference,
                 const std::optional<stats::Interval>& interval, const PairContext& context)
{
    const auto meanOfB = meanOf(context, pair.b);
    if (difference) {
        const OnBothScales mid = onBoth(*difference, context.scale, meanOfB);
        pair.percent = mid.percent;
        pair.difference = mid.inUnit;
    }
    if (interval) {
        const OnBothScales low = onBoth(interval->lower(), context.scale, meanOfB);
        const OnBothScales high = onBoth(interval->upper(), context.scale, meanOfB);
        pair.lowerPercent = low.percent;
        pair.lower = low.inUnit;
        pair.upperPercent = high.percent;
        pair.upper = high.inUnit;
    }
}

// Whether more trials would help.
bool isOpen(const MediaPair& pair)
{
    if (pair.verdict == stats::Verdict::CantTellYet) {
        return true;
    }
    return pair.why == stats::NoVerdictReason::FewSowings ||
           pair.why == stats::NoVerdictReason::OneTrayEach ||
           pair.why == stats::NoVerdictReason::FewDegrees;
}

stats::PairAnswer asRead(const stats::PairAnswer& pair, const PairContext& context)
{
    return context.reversed.count({pair.a, pair.b}) > 0 ? stats::reversed(pair) : pair;
}

} // namespace

PairContext contextOf(const stats::MediaAnswer& answer, PairContext shared)
{
    shared.scale = answer.scale;
    shared.means.clear();
    for (const stats::MediumMean& mean : answer.means) {
        if (mean.value) {
            shared.means[mean.medium] = *mean.value;
        }
    }
    return shared;
}

MediaPair mediaPair(const stats::PairAnswer& answer, const PairContext& context)
{
    const stats::PairAnswer found = asRead(answer, context);
    MediaPair pair;
    pair.a = found.a;
    pair.b = found.b;
    pair.trialsShared = found.sowingsShared;
    pair.verdict = found.verdict;
    pair.why = found.why;
    takeNumbers(pair, found.difference, found.interval(), context);
    const std::pair<std::size_t, std::size_t> key = std::minmax(found.a, found.b);
    if (context.fedUnalike.count(key) > 0) {
        pair.as = ComparedAs::AsFed;
    }
    if (const auto mixed = context.mixedWith.find(key);
        mixed != context.mixedWith.end() && found.why == stats::NoVerdictReason::Confounded) {
        pair.mixedWith = mixed->second;
    }
    if (isOpen(pair)) {
        pair.more = context.more;
    }
    return pair;
}

MediaPair mediaPair(const stats::GroupContrast& found, const PairContext& context)
{
    stats::PairAnswer answer;
    answer.a = found.a;
    answer.b = found.b;
    answer.difference = found.difference;
    answer.halfWidth = found.halfWidth;
    answer.verdict = found.verdict;
    answer.why = found.why;
    return mediaPair(found.difference.value_or(0) < 0 ? stats::reversed(answer) : answer, context);
}

} // namespace plumule
