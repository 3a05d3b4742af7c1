#include "core/stats/verdict/media_design.h"

#include <algorithm>

namespace plumule::stats {
namespace {

constexpr double kDesignRank = 1e-9;

} // namespace

MediaDesign::MediaDesign(std::vector<DesignRow> rows)
    : m_rows(std::move(rows))
{
    if (m_rows.empty()) {
        return; // a decomposition of nothing is a fault to Eigen
    }
    for (const DesignRow& row : m_rows) {
        m_columns.try_emplace({Factor::Medium, row.medium}, 0);
        m_columns.try_emplace({Factor::Variety, row.variety}, 0);
        m_columns.try_emplace({Factor::Block, row.block}, 0);
        m_columns.try_emplace({Factor::Column, row.column}, 0);
    }
    Eigen::Index columns = 0;
    for (auto& [key, column] : m_columns) {
        column = columns++;
    }
    const auto count = static_cast<Eigen::Index>(m_rows.size());
    m_design = Eigen::MatrixXd::Zero(count, columns);
    Eigen::VectorXd values(count);
    for (Eigen::Index row = 0; row < count; ++row) {
        const DesignRow& held = m_rows[static_cast<std::size_t>(row)];
        m_design(row, m_columns.at({Factor::Medium, held.medium})) = 1;
        m_design(row, m_columns.at({Factor::Variety, held.variety})) = 1;
        m_design(row, m_columns.at({Factor::Block, held.block})) = 1;
        m_design(row, m_columns.at({Factor::Column, held.column})) = 1;
        values(row) = held.value;
    }
    Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> decomposition(count, columns);
    decomposition.setThreshold(kDesignRank);
    decomposition.compute(m_design);
    m_inverse = decomposition.pseudoInverse();
    m_effects = m_inverse * values;
    m_residuals = values - m_design * m_effects;
    m_df = static_cast<double>(count - decomposition.rank());
}

double MediaDesign::effect(Factor factor, std::size_t number) const
{
    return m_effects(m_columns.at({factor, number}));
}

double MediaDesign::withoutVarietyAndColumn(std::size_t row) const
{
    return m_rows[row].value - effect(Factor::Variety, m_rows[row].variety) -
           effect(Factor::Column, m_rows[row].column);
}

std::size_t MediaDesign::countOfColumns() const
{
    return static_cast<std::size_t>(
        std::count_if(m_columns.begin(), m_columns.end(),
                      [](const auto& each) { return each.first.first == Factor::Column; }));
}

double MediaDesign::leverage(std::size_t row) const
{
    const auto index = static_cast<Eigen::Index>(row);
    return m_design.row(index).dot(m_inverse.col(index));
}

bool MediaDesign::holds(std::size_t medium) const
{
    return m_columns.contains({Factor::Medium, medium});
}

std::optional<Eigen::VectorXd> MediaDesign::weights(std::size_t a, std::size_t b) const
{
    if (!holds(a) || !holds(b)) {
        return std::nullopt;
    }
    Eigen::VectorXd contrast = Eigen::VectorXd::Zero(m_design.cols());
    contrast(m_columns.at({Factor::Medium, a})) = 1;
    contrast(m_columns.at({Factor::Medium, b})) = -1;
    const Eigen::VectorXd weights = m_inverse.transpose() * contrast;
    const double off = (m_design.transpose() * weights - contrast).cwiseAbs().maxCoeff();
    return off < kDesignRank ? std::optional(weights) : std::nullopt;
}

double MediaDesign::adjustedMean(std::size_t medium) const
{
    double sum = effect(Factor::Medium, medium);
    std::map<Factor, double> levels;
    for (const auto& [key, column] : m_columns) {
        ++levels[key.first];
    }
    for (const auto& [key, column] : m_columns) {
        if (key.first != Factor::Medium) {
            sum += m_effects(column) / levels[key.first];
        }
    }
    return sum;
}

} // namespace plumule::stats
