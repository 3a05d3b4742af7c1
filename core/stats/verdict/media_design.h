#pragma once

#include <Eigen/Dense>

#include <map>
#include <optional>
#include <utility>
#include <vector>

// Within core/stats only: it shows Eigen.
namespace plumule::stats {

// Rows of one sowing (trays or cells): value = medium + variety + block + column, by least
// squares.
struct DesignRow
{
    std::size_t medium = 0;
    std::size_t variety = 0;
    std::size_t block = 0;
    double value = 0;
    std::size_t column = 0;
};

class MediaDesign
{
public:
    explicit MediaDesign(std::vector<DesignRow> rows);

    [[nodiscard]] const std::vector<DesignRow>& rows() const { return m_rows; }
    [[nodiscard]] const Eigen::VectorXd& residuals() const { return m_residuals; }
    // Its value less the effects of its variety and column, up to a constant.
    [[nodiscard]] double withoutVarietyAndColumn(std::size_t row) const;
    [[nodiscard]] std::size_t countOfColumns() const;
    // Rows that the fit follows whatever they are have leverage 1.
    [[nodiscard]] double leverage(std::size_t row) const;
    [[nodiscard]] double df() const { return m_df; }
    [[nodiscard]] double residualSs() const { return m_residuals.squaredNorm(); }

    [[nodiscard]] bool holds(std::size_t medium) const;
    // What each row counts in a − b; none where the rows cannot tell it.
    [[nodiscard]] std::optional<Eigen::VectorXd> weights(std::size_t a, std::size_t b) const;
    // The medium's mean over the sowing's varieties, blocks and columns as
    // if all were equally many.
    [[nodiscard]] double adjustedMean(std::size_t medium) const;

private:
    enum class Factor
    {
        Medium,
        Variety,
        Block,
        Column
    };
    [[nodiscard]] double effect(Factor factor, std::size_t number) const;

    std::vector<DesignRow> m_rows;
    std::map<std::pair<Factor, std::size_t>, Eigen::Index> m_columns;
    Eigen::MatrixXd m_design;
    Eigen::MatrixXd m_inverse; // Moore and Penrose's
    Eigen::VectorXd m_effects;
    Eigen::VectorXd m_residuals;
    double m_df = 0;
};

} // namespace plumule::stats
