#pragma once

#include "core/stats/model/least_squares.h"
#include "core/stats/model/mixed_model.h"
#include "core/stats/model/reml.h"

#include <Eigen/Sparse>

// Within core/stats only: it shows Eigen.
namespace plumule::stats {

// The fixed part is worked in the coordinates of Q1, X = Q1 R: `gamma` are the coefficients there.
struct MixedModel::Fit
{
    using Matrix = Eigen::MatrixXd;
    using Vector = Eigen::VectorXd;
    using Sparse = Eigen::SparseMatrix<double>;

    std::shared_ptr<const ModelDesign> design;
    LeastSquares squares;
    std::vector<Eigen::Index> offsets; // first column of each random factor, and the end
    Sparse randomCross;                // Z'Z
    Matrix fixedRandom;                // Q1'Z
    Vector randomResponse;             // Z'y
    RemlProblem problem;
    RemlSolution solution;
    std::vector<VarianceComponent> components;
    std::vector<std::size_t> active; // components above 0
    Sparse inner;                    // V^-1 = (I - Z inner Z') / residual variance
    Matrix covariance;               // of gamma
    Vector gamma;

    Fit(std::shared_ptr<const ModelDesign> ofDesign);
    Done solve();

    [[nodiscard]] Eigen::Index levels(std::size_t component) const
    {
        return offsets[component + 1] - offsets[component];
    }
    [[nodiscard]] double logCrossDeterminant() const;

private:
    void crossColumns();
    void rotate();
    void findInner();
    [[nodiscard]] Done checkIdentified() const;
    void estimateFixed();
};

// Covariance of gamma and how it moves with the variances.
struct FixedSpread
{
    Eigen::MatrixXd plain;              // (X'V^-1 X)^-1
    Eigen::MatrixXd adjusted;           // what standard errors come from
    std::vector<Eigen::MatrixXd> slope; // d plain / d variance: residual first, then the active
    Eigen::MatrixXd varianceOfVariances;
};
[[nodiscard]] FixedSpread fixedSpread(const MixedModel::Fit& fit);

} // namespace plumule::stats
