#pragma once

#include "core/stats/verdict/cells.h"

#include <Eigen/Dense>

#include <map>
#include <optional>

// Within core/stats only: it shows Eigen.
namespace plumule::stats {

// y = sowing + medium by unweighted least squares over the parts of sowings with two media or more.
// Media are named by the caller's numbers; those of no such part are not in the fit.
class CellFit
{
public:
    explicit CellFit(std::span<const Cell> cells);

    [[nodiscard]] const std::vector<std::size_t>& media() const { return m_media; } // ascending
    [[nodiscard]] int sowings() const { return static_cast<int>(m_rows.size()); }
    [[nodiscard]] bool holds(std::size_t medium) const { return m_index.contains(medium); }
    [[nodiscard]] double residualSs() const { return m_residualSs; }
    [[nodiscard]] double df() const { return m_df; } // cells − sowings − media + connected parts
    [[nodiscard]] std::optional<double> variance() const; // none without a degree of freedom

    // None where no chain of sowings connects them.
    [[nodiscard]] std::optional<double> difference(std::size_t a, std::size_t b) const;
    // Variance of the difference in units of variance(); balanced 2/sowings. For connected media.
    [[nodiscard]] double relativeVariance(std::size_t a, std::size_t b) const;
    // y_ta − y_tb of the sowings in which both grew.
    [[nodiscard]] std::vector<double> sharedDifferences(std::size_t a, std::size_t b) const;
    // The medium's mean over all sowings of its connected part.
    [[nodiscard]] std::optional<double> mean(std::size_t medium) const;

private:
    using Row = std::vector<std::pair<std::size_t, double>>; // medium's index, value

    void readRows(std::span<const Cell> cells);
    void connect();
    void solve();
    void takeResiduals();
    [[nodiscard]] bool areConnected(std::size_t a, std::size_t b) const;

    std::vector<Row> m_rows;
    std::vector<std::size_t> m_media;
    std::map<std::size_t, std::size_t> m_index;
    std::vector<std::size_t> m_component; // by medium's index
    std::size_t m_components = 0;
    Eigen::VectorXd m_effects;
    Eigen::MatrixXd m_inverse;
    std::vector<double> m_levels; // by component: mean of its sowings' levels
    double m_residualSs = 0;
    double m_df = 0;
};

} // namespace plumule::stats
