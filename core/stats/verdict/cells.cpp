#include "core/stats/verdict/cells.h"

#include "core/stats/verdict/connected.h"

#include <Eigen/Dense>

#include <cmath>
#include <map>
#include <tuple>

namespace plumule::stats {
namespace {

struct CellSums
{
    double values = 0; // logs on the log scale
    double per = 0;
    int trays = 0;

    void add(const SownTray& tray, CellScale scale)
    {
        if (!tray.value || (scale == CellScale::Log && !(*tray.value > 0))) {
            return;
        }
        values += scale == CellScale::Log ? std::log(*tray.value) : *tray.value;
        per += tray.per;
        ++trays;
    }

    [[nodiscard]] std::optional<double> value(CellScale scale) const
    {
        if (trays == 0) {
            return std::nullopt;
        }
        if (scale != CellScale::LogOfRatio) {
            return values / trays;
        }
        return values > 0 && per > 0 ? std::optional(std::log(values / per)) : std::nullopt;
    }
};

using CellIterator = std::span<const VarietyCell>::iterator;

// The cells of one sowing as a graph of varieties and media.
class SowingCells
{
public:
    SowingCells(CellIterator begin, CellIterator end)
        : m_cells(begin, end)
    {
        for (const VarietyCell& cell : m_cells) {
            m_varieties.try_emplace(cell.variety, m_varieties.size());
            m_media.try_emplace(cell.medium, m_media.size());
        }
    }

    // Appends a cell a medium and returns how many parts there were.
    std::size_t appendTo(std::vector<Cell>& cells, std::size_t firstPart) const
    {
        Connected graph(m_varieties.size() + m_media.size());
        for (const VarietyCell& cell : m_cells) {
            graph.join(varietyOf(cell), m_varieties.size() + mediumOf(cell));
        }
        const std::vector<std::size_t> components = graph.components();
        const std::vector<double> values = adjusted(components);
        std::size_t parts = 0;
        for (const std::size_t component : components) {
            parts = std::max(parts, component + 1);
        }
        for (const auto& [medium, index] : m_media) {
            cells.push_back({m_cells.front().sowing,
                             firstPart + components[m_varieties.size() + index], medium,
                             values[index], traysOf(medium)});
        }
        return parts;
    }

private:
    [[nodiscard]] std::size_t varietyOf(const VarietyCell& cell) const
    {
        return m_varieties.at(cell.variety);
    }
    [[nodiscard]] std::size_t mediumOf(const VarietyCell& cell) const
    {
        return m_media.at(cell.medium);
    }
    [[nodiscard]] int traysOf(std::size_t medium) const
    {
        int trays = 0;
        for (const VarietyCell& cell : m_cells) {
            trays += cell.medium == medium ? cell.trays : 0;
        }
        return trays;
    }

    // By medium: its effect plus the mean effect of the varieties it is connected with.
    [[nodiscard]] std::vector<double> adjusted(const std::vector<std::size_t>& components) const
    {
        const auto varieties = static_cast<Eigen::Index>(m_varieties.size());
        const auto media = static_cast<Eigen::Index>(m_media.size());
        std::vector<double> values(m_media.size(), 0);
        if (varieties == 1) {
            for (const VarietyCell& cell : m_cells) {
                values[mediumOf(cell)] = cell.value;
            }
            return values;
        }
        const auto rows = static_cast<Eigen::Index>(m_cells.size());
        Eigen::MatrixXd design = Eigen::MatrixXd::Zero(rows, varieties + media);
        Eigen::VectorXd response(rows);
        for (Eigen::Index row = 0; row < rows; ++row) {
            const VarietyCell& cell = m_cells[static_cast<std::size_t>(row)];
            design(row, static_cast<Eigen::Index>(varietyOf(cell))) = 1;
            design(row, varieties + static_cast<Eigen::Index>(mediumOf(cell))) = 1;
            response(row) = cell.value;
        }
        const Eigen::VectorXd effects = design.completeOrthogonalDecomposition().solve(response);
        for (std::size_t medium = 0; medium < values.size(); ++medium) {
            const std::size_t component = components[m_varieties.size() + medium];
            double sum = 0;
            int count = 0;
            for (std::size_t variety = 0; variety < m_varieties.size(); ++variety) {
                if (components[variety] == component) {
                    sum += effects(static_cast<Eigen::Index>(variety));
                    ++count;
                }
            }
            values[medium] = effects(varieties + static_cast<Eigen::Index>(medium)) + sum / count;
        }
        return values;
    }

    std::vector<VarietyCell> m_cells;
    std::map<std::size_t, std::size_t> m_varieties;
    std::map<std::size_t, std::size_t> m_media;
};

} // namespace

VarietyCells varietyCellsOf(std::span<const SownTray> trays, CellScale scale)
{
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, CellSums> sums;
    std::map<std::pair<std::size_t, std::size_t>, bool> gaveNumber;
    for (const SownTray& tray : trays) {
        sums[{tray.sowing, tray.variety, tray.medium}].add(tray, scale);
    }
    VarietyCells result;
    for (const auto& [key, cell] : sums) {
        const auto& [sowing, variety, medium] = key;
        const std::optional<double> value = cell.value(scale);
        gaveNumber[{sowing, medium}] |= value.has_value();
        if (value) {
            result.cells.push_back({sowing, variety, medium, *value, cell.trays});
        }
    }
    for (const auto& [key, isGiven] : gaveNumber) {
        if (!isGiven) {
            result.empty.push_back({key.first, key.second});
        }
    }
    return result;
}

std::vector<Cell> mediumCells(std::span<const VarietyCell> cells)
{
    std::vector<Cell> result;
    std::size_t parts = 0;
    for (auto begin = cells.begin(); begin != cells.end();) {
        auto end = begin;
        while (end != cells.end() && end->sowing == begin->sowing) {
            ++end;
        }
        parts += SowingCells(begin, end).appendTo(result, parts);
        begin = end;
    }
    return result;
}

} // namespace plumule::stats
