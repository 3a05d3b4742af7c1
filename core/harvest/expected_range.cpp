#include "core/harvest/expected_range.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule {
namespace {

const double kNarrowest = std::log(1.1);
const double kWidest = std::log(10.0);

struct LogRange
{
    double mid = 0;
    double half = 0; // above and below the middle
};

std::optional<LogRange> predicted(const std::vector<double>& logs)
{
    if (logs.size() < kFewestForARange) {
        return std::nullopt;
    }
    const double n = static_cast<double>(logs.size());
    LogRange range;
    for (const double each : logs) {
        range.mid += each / n;
    }
    double squares = 0;
    for (const double each : logs) {
        squares += (each - range.mid) * (each - range.mid);
    }
    range.half =
        stats::tQuantile(0.975, n - 1) * std::sqrt(squares / (n - 1)) * std::sqrt(1 + 1 / n);
    range.half = std::max(range.half, kNarrowest);
    return range.half < kWidest ? std::optional(range) : std::nullopt;
}

void setRange(ExpectedRange& range, const std::optional<LogRange>& logs, double gramsPerUnit)
{
    if (logs) {
        range.low = grams(gramsPerUnit * std::exp(logs->mid - logs->half));
        range.high = grams(gramsPerUnit * std::exp(logs->mid + logs->half));
    }
}

} // namespace

ExpectedRange rangeFrom(RangeSource from, std::vector<PastWeight> past)
{
    std::erase_if(past, [](const PastWeight& each) { return each.net <= Mass{}; });
    std::vector<double> logs;
    logs.reserve(past.size());
    for (const PastWeight& each : past) {
        logs.push_back(std::log(inGrams(each.net)));
    }
    ExpectedRange range;
    range.from = from;
    range.past = std::move(past);
    setRange(range, predicted(logs), 1);
    return range;
}

ExpectedRange rangeBySeed(std::vector<PastWeight> past, VarietyId variety, Mass seed)
{
    std::erase_if(past, [&](const PastWeight& each) {
        return each.net <= Mass{} || each.variety == variety || !each.seed || *each.seed <= Mass{};
    });
    std::map<VarietyId, std::pair<double, int>> sums;
    for (const PastWeight& each : past) {
        auto& [sum, count] = sums[each.variety];
        sum += std::log(each.net / *each.seed);
        ++count;
    }
    std::vector<double> means;
    means.reserve(sums.size());
    for (const auto& [id, sum] : sums) {
        means.push_back(sum.first / sum.second);
    }
    ExpectedRange range;
    range.from = RangeSource::RoomBySeed;
    range.past = std::move(past);
    setRange(range, predicted(means), inGrams(seed));
    return range;
}

} // namespace plumule
