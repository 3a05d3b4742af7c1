#include "core/stats/verdict/cell_fit.h"

#include "core/stats/verdict/connected.h"

#include <algorithm>

namespace plumule::stats {
namespace {

Eigen::Index at(std::size_t index)
{
    return static_cast<Eigen::Index>(index);
}

} // namespace

CellFit::CellFit(std::span<const Cell> cells)
{
    readRows(cells);
    connect();
    solve();
    takeResiduals();
}

void CellFit::readRows(std::span<const Cell> cells)
{
    std::map<std::size_t, std::vector<const Cell*>> byPart;
    for (const Cell& cell : cells) {
        byPart[cell.part].push_back(&cell);
    }
    std::erase_if(byPart, [](const auto& part) { return part.second.size() < 2; });
    for (const auto& [part, held] : byPart) {
        for (const Cell* cell : held) {
            m_index.try_emplace(cell->medium, 0);
        }
    }
    for (auto& [medium, index] : m_index) {
        index = m_media.size();
        m_media.push_back(medium);
    }
    for (const auto& [part, held] : byPart) {
        Row& row = m_rows.emplace_back();
        for (const Cell* cell : held) {
            row.emplace_back(m_index.at(cell->medium), cell->value);
        }
    }
}

void CellFit::connect()
{
    Connected graph(m_media.size());
    for (const Row& row : m_rows) {
        for (const auto& [medium, value] : row) {
            graph.join(medium, row.front().first);
        }
    }
    m_component = graph.components();
    for (const std::size_t component : m_component) {
        m_components = std::max(m_components, component + 1);
    }
}

// The sowings eliminated: a Laplacian of the media, made regular within each component by fixing
// the sum of its effects.
void CellFit::solve()
{
    const Eigen::Index media = at(m_media.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(media, media);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(media);
    for (const Row& row : m_rows) {
        const double share = 1 / static_cast<double>(row.size());
        double mean = 0;
        for (const auto& [medium, value] : row) {
            mean += value * share;
        }
        for (const auto& [medium, value] : row) {
            matrix(at(medium), at(medium)) += 1;
            right(at(medium)) += value - mean;
            for (const auto& [other, unused] : row) {
                matrix(at(medium), at(other)) -= share;
            }
        }
    }
    for (std::size_t a = 0; a < m_media.size(); ++a) {
        for (std::size_t b = 0; b < m_media.size(); ++b) {
            matrix(at(a), at(b)) += m_component[a] == m_component[b] ? 1 : 0;
        }
    }
    m_inverse = matrix.inverse();
    m_effects = m_inverse * right;
}

void CellFit::takeResiduals()
{
    std::vector<int> counts(m_components, 0);
    m_levels.assign(m_components, 0);
    std::size_t cells = 0;
    for (const Row& row : m_rows) {
        double level = 0;
        for (const auto& [medium, value] : row) {
            level += (value - m_effects(at(medium))) / static_cast<double>(row.size());
        }
        for (const auto& [medium, value] : row) {
            const double residual = value - m_effects(at(medium)) - level;
            m_residualSs += residual * residual;
        }
        m_levels[m_component[row.front().first]] += level;
        ++counts[m_component[row.front().first]];
        cells += row.size();
    }
    for (std::size_t component = 0; component < m_components; ++component) {
        m_levels[component] /= counts[component];
    }
    m_df = static_cast<double>(cells + m_components - m_rows.size() - m_media.size());
}

std::optional<double> CellFit::variance() const
{
    return m_df > 0 ? std::optional(m_residualSs / m_df) : std::nullopt;
}

bool CellFit::areConnected(std::size_t a, std::size_t b) const
{
    return holds(a) && holds(b) && m_component[m_index.at(a)] == m_component[m_index.at(b)];
}

std::optional<double> CellFit::difference(std::size_t a, std::size_t b) const
{
    if (!areConnected(a, b)) {
        return std::nullopt;
    }
    return m_effects(at(m_index.at(a))) - m_effects(at(m_index.at(b)));
}

double CellFit::relativeVariance(std::size_t a, std::size_t b) const
{
    const Eigen::Index i = at(m_index.at(a));
    const Eigen::Index j = at(m_index.at(b));
    return m_inverse(i, i) + m_inverse(j, j) - 2 * m_inverse(i, j);
}

std::vector<double> CellFit::sharedDifferences(std::size_t a, std::size_t b) const
{
    std::vector<double> differences;
    if (!holds(a) || !holds(b)) {
        return differences;
    }
    const std::size_t first = m_index.at(a);
    const std::size_t second = m_index.at(b);
    for (const Row& row : m_rows) {
        std::optional<double> ofFirst;
        std::optional<double> ofSecond;
        for (const auto& [medium, value] : row) {
            if (medium == first) {
                ofFirst = value;
            } else if (medium == second) {
                ofSecond = value;
            }
        }
        if (ofFirst && ofSecond) {
            differences.push_back(*ofFirst - *ofSecond);
        }
    }
    return differences;
}

std::optional<double> CellFit::mean(std::size_t medium) const
{
    if (!holds(medium)) {
        return std::nullopt;
    }
    const std::size_t index = m_index.at(medium);
    return m_levels[m_component[index]] + m_effects(at(index));
}

} // namespace plumule::stats
