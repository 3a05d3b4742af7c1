#include "core/stats/verdict/critical_value.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"

#include <array>
#include <cassert>
#include <cmath>
#include <map>
#include <mutex>
#include <numbers>
#include <tuple>

namespace plumule::stats {
namespace {

// Steps of 1/df at which values are worked out; between them four are joined by a cubic, in logs,
// which run almost straight in 1/df.
constexpr int kStepsOfInverse = 64;

class CriticalValues
{
public:
    double at(std::size_t media, double df, double level)
    {
        const std::tuple key(media, df, level);
        {
            const std::lock_guard lock(m_mutex);
            if (const auto found = m_kept.find(key); found != m_kept.end()) {
                return found->second;
            }
        }
        const double value = workOut(media, df, level);
        const std::lock_guard lock(m_mutex);
        m_kept.emplace(key, value);
        return value;
    }

private:
    static double workOut(std::size_t media, double df, double level)
    {
        const auto quantile = studentizedRangeQuantile(1 - level, static_cast<int>(media), df);
        assert(quantile);
        return *quantile / std::numbers::sqrt2;
    }

    std::mutex m_mutex;
    std::map<std::tuple<std::size_t, double, double>, double> m_kept;
};

CriticalValues& criticalValues()
{
    static CriticalValues values;
    return values;
}

double interpolated(std::size_t media, double df, double level)
{
    const double place = kStepsOfInverse / df;
    const int first = std::max(0, static_cast<int>(std::floor(place)) - 1);
    double sum = 0;
    for (int i = 0; i < 4; ++i) {
        double weight = 1;
        for (int j = 0; j < 4; ++j) {
            if (j != i) {
                weight *= (place - first - j) / (i - j);
            }
        }
        const int step = first + i;
        const double nodeDf = step == 0 ? kInfiniteDf : static_cast<double>(kStepsOfInverse) / step;
        sum += weight * std::log(criticalValues().at(media, nodeDf, level));
    }
    return std::exp(sum);
}

} // namespace

double criticalValue(std::size_t media, double df, double level)
{
    assert(media >= 2 && df > 0 && level > 0 && level < 1);
    if (media == 2) {
        return tQuantile(1 - level / 2, df);
    }
    const bool isWhole = std::isinf(df) || df == std::floor(df);
    return isWhole || df < 1 ? criticalValues().at(media, df, level)
                             : interpolated(media, df, level);
}

} // namespace plumule::stats
