#include "core/stats/model/mixed_fit.h"

#include <cmath>

namespace plumule::stats {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// What is left of squares after another part was taken off, below this share, is taken for
// rounding.
constexpr double kExplainedTolerance = 1e-12;

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
            for (const VectorXd& direction : basis) {
                rest -= direction.dot(rest) * direction;
            }
        }
        if (rest.norm() <= kRankTolerance * whole) {
            continue;
        }
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

// Z is never written out: its products are sums over the rows of each level.
void MixedModel::Fit::crossColumns()
{
    const auto matrix = fixedMatrix(*design);
    const auto response = responseVector(*design);
    const Index q = offsets.back();
    MatrixXd fixedCross = MatrixXd::Zero(matrix.cols(), q);
    randomResponse = VectorXd::Zero(q);
    std::vector<std::vector<Index>> places;
    for (std::size_t k = 0; k < components.size(); ++k) {
        places.emplace_back();
        for (const std::size_t code : design->randomFactors()[k].codes) {
            places.back().push_back(offsets[k] + static_cast<Index>(code));
        }
        for (Index row = 0; row < matrix.rows(); ++row) {
            const Index place = places[k][static_cast<std::size_t>(row)];
            randomResponse[place] += response[row];
            fixedCross.col(place) += matrix.row(row).transpose();
        }
    }
    fixedRandom = squares.spread.transpose() * fixedCross;
    std::vector<Eigen::Triplet<double>> entries;
    for (std::size_t row = 0; row < design->rows(); ++row) {
        for (const auto& one : places) {
            for (const auto& other : places) {
                entries.emplace_back(one[row], other[row], 1.0);
            }
        }
    }
    randomCross = Sparse(q, q);
    randomCross.setFromTriplets(entries.begin(), entries.end());
}

// What X explains is turned away from y and from the random columns, and the rest of these into
// their principal directions; what is left of y outside them only tells of the residual.
void MixedModel::Fit::rotate()
{
    const MatrixXd left = MatrixXd(randomCross) - fixedRandom.transpose() * fixedRandom;
    const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(left);
    const Index q = left.cols();
    const double most = MatrixXd(randomCross).diagonal().maxCoeff();
    Index seen = 0;
    while (seen < q && eigen.eigenvalues()[q - 1 - seen] > kExplainedTolerance * most) {
        ++seen;
    }
    const VectorXd root = eigen.eigenvalues().tail(seen).cwiseSqrt();
    const MatrixXd directions = eigen.eigenvectors().rightCols(seen);
    problem.data = root.cwiseInverse().cwiseProduct(
        directions.transpose() *
        (randomResponse - fixedRandom.transpose() * squares.rotated.head(squares.rank)));
    problem.restRows = static_cast<Index>(design->rows()) - squares.rank - seen;
    problem.restSs = std::max(0.0, squares.residualSs - problem.data.squaredNorm());
    if (components.size() == 1) {
        problem.diagonal = eigen.eigenvalues().tail(seen);
        return;
    }
    const MatrixXd reduced = root.asDiagonal() * directions.transpose();
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
        const std::string& name = components[static_cast<std::size_t>(j - 1)].group;
        if (problem.data.size() == 0 || !(problem.trace(j - 1) > 1e-12)) {
            return fail(ErrorKind::NotEstimable, ModelReason::Inseparable, name);
        }
        gram(0, j) = gram(j, 0) = problem.trace(j - 1);
        for (Index k = 1; k <= j; ++k) {
            gram(j, k) = gram(k, j) = problem.product(j - 1, k - 1);
        }
        const VectorXd size = gram.diagonal().head(j + 1).cwiseSqrt().cwiseInverse();
        const MatrixXd cosine =
            size.asDiagonal() * gram.topLeftCorner(j + 1, j + 1) * size.asDiagonal();
        const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(cosine, Eigen::EigenvaluesOnly);
        if (eigen.eigenvalues()[0] < 1e-9) {
            return fail(ErrorKind::NotEstimable, ModelReason::Inseparable, name);
        }
    }
    const double total = squares.residualSs;
    const double whole = responseVector(*design).squaredNorm();
    const double shift = design->responseShift() * design->responseShift();
    // The mean taken off leaves rounding of its own size.
    const bool noSpread = total <= 1e-26 * whole || whole <= 1e-28 * shift;
    if (noSpread || (problem.restRows > 0 && problem.restSs <= kExplainedTolerance * total)) {
        return fail(ErrorKind::NotEstimable, ModelReason::NoSpread);
    }
    return {};
}

Done MixedModel::Fit::solve()
{
    const auto n = static_cast<Index>(design->rows());
    if (n - squares.rank < 2) {
        return fail(ErrorKind::TooFew, ModelReason::NoRowsToRest);
    }
    crossColumns();
    rotate();
    if (auto identified = checkIdentified(); !identified) {
        return identified;
    }
    auto solved = solveReml(problem);
    if (!solved) {
        return tl::unexpected(solved.error());
    }
    solution = std::move(*solved);
    for (std::size_t k = 0; k < components.size(); ++k) {
        const double ratio = solution.ratios[static_cast<Index>(k)];
        components[k].variance = ratio * solution.residualVariance;
        components[k].singular = ratio <= 0;
        if (ratio > 0) {
            active.push_back(k);
        }
    }
    estimateFixed();
    return {};
}

// M of V^-1 = (I - Z M Z') / s2, which is root (I + root Z'Z root)^-1 root.
void MixedModel::Fit::findInner()
{
    const Index q = offsets.back();
    VectorXd ratio(q);
    for (std::size_t k = 0; k < components.size(); ++k) {
        ratio.segment(offsets[k], levels(k)).setConstant(solution.ratios[static_cast<Index>(k)]);
    }
    inner = Sparse(q, q);
    if (components.size() == 1) {
        for (Index level = 0; level < q; ++level) {
            inner.insert(level, level) =
                ratio[level] / (1 + ratio[level] * randomCross.coeff(level, level));
        }
        return;
    }
    const VectorXd root = ratio.cwiseSqrt();
    MatrixXd bracket = root.asDiagonal() * MatrixXd(randomCross) * root.asDiagonal();
    bracket.diagonal().array() += 1;
    const MatrixXd scaled = root.asDiagonal();
    const MatrixXd dense = root.asDiagonal() * Eigen::LLT<MatrixXd>(bracket).solve(scaled);
    inner = dense.sparseView();
}

void MixedModel::Fit::estimateFixed()
{
    findInner();
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
    for (std::size_t c = 0; c < design->columns(); ++c) {
        triangle.col(static_cast<Index>(c)) *= design->columnScale(c);
    }
    return logSequentialDeterminant(std::move(triangle));
}

} // namespace plumule::stats
