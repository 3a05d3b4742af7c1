#include "core/stats/mixed_fit.h"

#include <cmath>

namespace plumule::stats {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

Eigen::Map<const MatrixXd> fixedMatrix(const ModelDesign& design)
{
    return {design.matrix().data(), static_cast<Index>(design.rows()),
            static_cast<Index>(design.columns())};
}

Eigen::Map<const VectorXd> responseVector(const ModelDesign& design)
{
    return {design.response().data(), static_cast<Index>(design.rows())};
}

// log of the determinant of the cross product of the columns that add something to those before
// them.
double logSequentialDeterminant(MatrixXd columns)
{
    double log = 0;
    std::vector<VectorXd> basis;
    for (Index c = 0; c < columns.cols(); ++c) {
        VectorXd rest = columns.col(c);
        const double whole = rest.norm();
        for (int pass = 0; pass < 2; ++pass) {
            for (const VectorXd& direction : basis)
                rest -= direction.dot(rest) * direction;
        }
        if (rest.norm() <= kRankTolerance * whole)
            continue;
        log += 2 * std::log(rest.norm());
        basis.push_back(rest.normalized());
    }
    return log;
}

} // namespace

MixedModel::Fit::Fit(std::shared_ptr<const ModelDesign> ofDesign)
    : design(std::move(ofDesign))
    , squares(fixedMatrix(*design), responseVector(*design))
{
    offsets.push_back(0);
    for (const DesignFactor& random : design->randomFactors()) {
        offsets.push_back(offsets.back() + static_cast<Index>(random.levels.size()));
        components.push_back({random.name, random.levels.size(), 0, false});
    }
}

// What X explains is turned away from y and from the random columns; what is left of y outside the
// random columns only tells of the residual.
void MixedModel::Fit::rotate()
{
    const auto n = static_cast<Index>(design->rows());
    MatrixXd z = MatrixXd::Zero(n, offsets.back());
    for (std::size_t k = 0; k < components.size(); ++k) {
        const auto& codes = design->randomFactors()[k].codes;
        for (Index row = 0; row < n; ++row)
            z(row, offsets[k] + static_cast<Index>(codes[static_cast<std::size_t>(row)])) = 1;
    }
    randomCross = z.transpose() * z;
    randomResponse = z.transpose() * responseVector(*design);
    const double whole = z.colwise().norm().maxCoeff();
    z.applyOnTheLeft(squares.qr.householderQ().setLength(squares.qr.nonzeroPivots()).adjoint());
    fixedRandom = z.topRows(squares.rank);
    const Index left = n - squares.rank;
    const Eigen::ColPivHouseholderQR<MatrixXd> qr(z.bottomRows(left));
    const Index most = std::min(left, z.cols());
    Index seen = 0;
    while (seen < most && std::abs(qr.matrixQR()(seen, seen)) > kRankTolerance * whole)
        ++seen;
    VectorXd tail = squares.rotated.tail(left);
    tail.applyOnTheLeft(qr.householderQ().setLength(seen).adjoint());
    problem.data = tail.head(seen);
    problem.restSs = tail.tail(left - seen).squaredNorm();
    problem.restRows = left - seen;
    const MatrixXd upper = qr.matrixQR().topRows(seen).triangularView<Eigen::Upper>();
    const MatrixXd reduced = upper * qr.colsPermutation().transpose();
    for (std::size_t k = 0; k < components.size(); ++k) {
        const auto part = reduced.middleCols(offsets[k], levels(k));
        problem.kernels.push_back(part * part.transpose());
    }
}

// The variances can be told apart when identity and kernels are linearly independent.
Done MixedModel::Fit::checkIdentified() const
{
    const auto count = static_cast<Index>(components.size()) + 1;
    MatrixXd gram(count, count);
    gram(0, 0) = problem.freeRows();
    for (Index j = 1; j < count; ++j) {
        const MatrixXd& kernel = problem.kernels[static_cast<std::size_t>(j - 1)];
        const std::string& name = components[static_cast<std::size_t>(j - 1)].group;
        if (problem.data.size() == 0 || !(kernel.trace() > 1e-12))
            return fail(ErrorKind::NotEstimable, name);
        gram(0, j) = gram(j, 0) = kernel.trace();
        for (Index k = 1; k <= j; ++k)
            gram(j, k) = gram(k, j) =
                kernel.cwiseProduct(problem.kernels[static_cast<std::size_t>(k - 1)]).sum();
        const VectorXd size = gram.diagonal().head(j + 1).cwiseSqrt().cwiseInverse();
        const MatrixXd cosine =
            size.asDiagonal() * gram.topLeftCorner(j + 1, j + 1) * size.asDiagonal();
        const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(cosine, Eigen::EigenvaluesOnly);
        if (eigen.eigenvalues()[0] < 1e-9)
            return fail(ErrorKind::NotEstimable, name);
    }
    const double total = problem.data.squaredNorm() + problem.restSs;
    const bool noSpread = total <= 1e-26 * responseVector(*design).squaredNorm();
    if (noSpread || (problem.restRows > 0 && problem.restSs <= 1e-26 * total))
        return fail(ErrorKind::NotEstimable, "residual");
    return {};
}

Done MixedModel::Fit::solve()
{
    const auto n = static_cast<Index>(design->rows());
    if (n - squares.rank < 2)
        return fail(ErrorKind::TooFew, "residual", std::to_string(n));
    rotate();
    if (auto identified = checkIdentified(); !identified)
        return identified;
    auto solved = solveReml(problem);
    if (!solved)
        return tl::unexpected(solved.error());
    solution = std::move(*solved);
    for (std::size_t k = 0; k < components.size(); ++k) {
        const double ratio = solution.ratios[static_cast<Index>(k)];
        components[k].variance = ratio * solution.residualVariance;
        components[k].singular = ratio <= 0;
        if (ratio > 0)
            active.push_back(k);
    }
    estimateFixed();
    return {};
}

void MixedModel::Fit::estimateFixed()
{
    VectorXd root(offsets.back());
    for (std::size_t k = 0; k < components.size(); ++k)
        root.segment(offsets[k], levels(k))
            .setConstant(std::sqrt(solution.ratios[static_cast<Index>(k)]));
    MatrixXd bracket = root.asDiagonal() * randomCross * root.asDiagonal();
    bracket.diagonal().array() += 1;
    const MatrixXd scaled = root.asDiagonal();
    inner = root.asDiagonal() * Eigen::LLT<MatrixXd>(bracket).solve(scaled);
    const Index rank = squares.rank;
    const MatrixXd information =
        MatrixXd::Identity(rank, rank) - fixedRandom * inner * fixedRandom.transpose();
    const Eigen::LLT<MatrixXd> factor(information);
    gamma = factor.solve(squares.rotated.head(rank) - fixedRandom * (inner * randomResponse));
    covariance = solution.residualVariance * factor.solve(MatrixXd::Identity(rank, rank));
}

double MixedModel::Fit::logCrossDeterminant() const
{
    MatrixXd triangle = squares.triangle();
    for (std::size_t c = 0; c < design->columns(); ++c)
        triangle.col(static_cast<Index>(c)) /= design->coefficientWeights(c)[c];
    return logSequentialDeterminant(std::move(triangle));
}

} // namespace plumule::stats
