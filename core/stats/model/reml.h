#pragma once

#include "core/base/result.h"

#include <Eigen/Dense>

#include <vector>

// Within core/stats only: it shows Eigen.
namespace plumule::stats {

// The restricted likelihood of y ~ N(X b, s2 (I + sum r_k Z_k Z_k')), after everything X explains
// was rotated away: in `data` what the random columns can explain, in `restSs` and `restRows` what
// only the residual can. With one random factor the rows are turned so that its kernel is diagonal.
struct RemlProblem
{
    std::vector<Eigen::MatrixXd> kernels; // Z_k Z_k' in the rotated rows; empty with one factor
    Eigen::VectorXd diagonal;             // of the only kernel, else empty
    Eigen::VectorXd data;
    double restSs = 0;
    Eigen::Index restRows = 0;

    [[nodiscard]] bool isDiagonal() const { return kernels.empty(); }
    [[nodiscard]] Eigen::Index factors() const
    {
        return isDiagonal() ? 1 : static_cast<Eigen::Index>(kernels.size());
    }
    [[nodiscard]] double trace(Eigen::Index k) const;
    // tr(kernel j * kernel k)
    [[nodiscard]] double product(Eigen::Index j, Eigen::Index k) const;
    [[nodiscard]] double freeRows() const { return static_cast<double>(data.size() + restRows); }
};

struct RemlSolution
{
    Eigen::VectorXd ratios; // r_k, exactly 0 on the boundary
    double residualVariance = 0;
    double deviance = 0; // -2 log likelihood, without log|X'X|
};

// The lowest deviance over ratios >= 0. NoConvergence when the search fails.
[[nodiscard]] Result<RemlSolution> solveReml(const RemlProblem& problem);

// Expected second derivatives of the deviance in (residual variance, the variances numbered by
// `active`).
[[nodiscard]] Eigen::MatrixXd expectedInformation(const RemlProblem& problem,
                                                  const RemlSolution& solution,
                                                  const std::vector<std::size_t>& active);

} // namespace plumule::stats
