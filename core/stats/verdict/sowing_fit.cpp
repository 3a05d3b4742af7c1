#include "core/stats/verdict/sowing_fit.h"

#include "core/stats/verdict/tray_residuals.h"

#include <cassert>

namespace plumule::stats {
namespace {

std::vector<DesignRow> traysOf(std::span<const SownTray> trays, CellScale scale)
{
    auto sowings = scaledTrays(trays, scale);
    assert(sowings.size() <= 1);
    return sowings.empty() ? std::vector<DesignRow>() : std::move(sowings.begin()->second);
}

std::vector<DesignRow> rowsOf(const std::vector<VarietyCell>& cells)
{
    std::vector<DesignRow> rows;
    rows.reserve(cells.size());
    for (const VarietyCell& cell : cells) {
        rows.push_back({cell.medium, cell.variety, 0, cell.value});
    }
    return rows;
}

} // namespace

SowingFit::SowingFit(std::vector<SownTray> trays, CellScale scale)
    : m_scale(scale)
    , m_sowing(trays.empty() ? 0 : trays.front().sowing)
    , m_design(scale == CellScale::LogOfRatio ? rowsOf(varietyCellsOf(trays, scale).cells)
                                              : traysOf(trays, scale))
{
    const std::vector<DesignRow> rows = traysOf(trays, scale);
    for (const DesignRow& row : rows) {
        ++m_counts[row.medium];
    }
    if (scale != CellScale::LogOfRatio) {
        m_share.assign(rows.size(), 1);
        m_residualSs = m_design.residualSs();
        m_df = m_design.df();
        return;
    }
    for (const VarietyCell& cell : varietyCellsOf(trays, scale).cells) {
        m_share.push_back(1.0 / cell.trays);
        m_df += cell.trays - 1;
    }
    for (const DesignRow& row : rows) {
        m_residualSs += row.value * row.value;
    }
}

int SowingFit::countOf(std::size_t medium) const
{
    const auto found = m_counts.find(medium);
    return found == m_counts.end() ? 0 : found->second;
}

std::optional<SowingFit::Difference> SowingFit::difference(std::size_t a, std::size_t b) const
{
    const std::optional<Eigen::VectorXd> weights = m_design.weights(a, b);
    if (!weights) {
        return std::nullopt;
    }
    Difference difference;
    for (std::size_t row = 0; row < m_share.size(); ++row) {
        const double weight = (*weights)(static_cast<Eigen::Index>(row));
        difference.value += weight * m_design.rows()[row].value;
        difference.relativeVariance += weight * weight * m_share[row];
    }
    return difference;
}

std::optional<OwnVariance> SowingFit::ownVariance(std::size_t a, std::size_t b) const
{
    return m_scale == CellScale::LogOfRatio ? std::nullopt : ownVarianceOf(m_design, a, b);
}

std::vector<Cell> SowingFit::cells(std::size_t part) const
{
    std::vector<Cell> cells;
    for (const auto& [medium, count] : m_counts) {
        if (m_design.holds(medium)) {
            cells.push_back({m_sowing, part, medium, m_design.adjustedMean(medium), count});
        }
    }
    return cells;
}

} // namespace plumule::stats
