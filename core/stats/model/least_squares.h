#pragma once

#include <Eigen/Dense>

#include <span>
#include <vector>

// Within core/stats only: it shows Eigen.
namespace plumule::stats {

// Pivots below this part of the largest are taken for rounding: the columns have unit spread.
inline constexpr double kRankTolerance = 1e-9;

// One rank-revealing factorisation X P = Q [R11 R12; 0 0] of a matrix and what follows from it.
struct LeastSquares
{
    using Matrix = Eigen::MatrixXd;
    using Vector = Eigen::VectorXd;

    Eigen::ColPivHouseholderQR<Matrix> qr;
    Eigen::Index rank = 0;
    Vector rotated;        // Q'y, all rows
    double residualSs = 0; // of its rows below the rank
    Vector coefficients;   // 0 where a column was not needed
    Matrix spread;         // P [R11^-1; 0]: coefficients = spread * (first rows of Q'y)
    Matrix nullSpace;      // columns span what the data cannot see

    LeastSquares(const Eigen::Ref<const Matrix>& matrix, const Eigen::Ref<const Vector>& response);

    [[nodiscard]] bool isEstimable(std::span<const double> weights) const;
    // weights * spread: the weights on the first rows of Q'y.
    [[nodiscard]] Vector reduced(std::span<const double> weights) const;
    // The R with columns in their own order: X = Q1 * triangle().
    [[nodiscard]] Matrix triangle() const;
};

// Sum of squares and degrees of freedom that `more` adds to a fit on `first`.
struct Explained
{
    double ss = 0;
    Eigen::Index df = 0;
};
[[nodiscard]] Explained explainedBeyond(const Eigen::MatrixXd& first, const Eigen::MatrixXd& more,
                                        const Eigen::VectorXd& response);

// The columns numbered.
[[nodiscard]] Eigen::MatrixXd pickColumns(const Eigen::MatrixXd& matrix,
                                          const std::vector<Eigen::Index>& numbers);

} // namespace plumule::stats
