#include "core/review/facts/pooled_spread.h"

#include "core/stats/samples/samples.h"

#include <cmath>

namespace plumule {

void SpreadCells::add(const PastYield& tray, double value)
{
    const int month = tray.trial ? 0 : monthOf(tray.sownOn);
    m_cells[{tray.medium, tray.variety, tray.trial.value_or(TrialId()), month}].push_back(value);
}

std::optional<PooledSpread> SpreadCells::ofValues() const
{
    return pooled(Unit::Values);
}

std::optional<PooledSpread> SpreadCells::ofShares() const
{
    return pooled(Unit::Shares);
}

std::optional<PooledSpread> SpreadCells::pooled(Unit unit) const
{
    const bool asShares = unit == Unit::Shares;
    PooledSpread result;
    double squares = 0;
    for (const auto& [cell, values] : m_cells) {
        const auto summary = stats::summarize(values);
        if (values.size() < 2 || !summary || (asShares && summary->mean <= 0)) {
            continue;
        }
        const double df = static_cast<double>(values.size()) - 1;
        const double sd = *summary->sd / (asShares ? summary->mean : 1);
        squares += df * sd * sd;
        result.df += df;
        result.trays += static_cast<int>(values.size());
    }
    if (result.df < kLeastPooledDf || squares <= 0) {
        return std::nullopt;
    }
    result.sd = std::sqrt(squares / result.df);
    return result;
}

} // namespace plumule
