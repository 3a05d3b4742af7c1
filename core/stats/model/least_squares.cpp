#include "core/stats/model/least_squares.h"

#include <algorithm>

namespace plumule::stats {

LeastSquares::LeastSquares(const Eigen::Ref<const Matrix>& matrix,
                           const Eigen::Ref<const Vector>& response)
    : qr(matrix.rows(), matrix.cols())
{
    qr.setThreshold(kRankTolerance);
    qr.compute(matrix);
    rank = qr.rank();
    rotated = response;
    rotated.applyOnTheLeft(qr.householderQ().setLength(qr.nonzeroPivots()).adjoint());
    residualSs = rotated.tail(matrix.rows() - rank).squaredNorm();

    const auto r11 = qr.matrixQR().topLeftCorner(rank, rank).triangularView<Eigen::Upper>();
    const Eigen::Index missing = matrix.cols() - rank;
    Matrix inverse = Matrix::Zero(matrix.cols(), rank);
    inverse.topRows(rank).setIdentity();
    r11.solveInPlace(inverse.topRows(rank));
    spread = qr.colsPermutation() * inverse;
    Matrix unseen = Matrix::Zero(matrix.cols(), missing);
    if (missing > 0) {
        unseen.topRows(rank) = -r11.solve(qr.matrixQR().topRightCorner(rank, missing));
        unseen.bottomRows(missing).setIdentity();
    }
    nullSpace = qr.colsPermutation() * unseen;
    coefficients = spread * rotated.head(rank);
}

bool LeastSquares::isEstimable(std::span<const double> weights) const
{
    if (nullSpace.cols() == 0) {
        return true;
    }
    const Eigen::Map<const Vector> row(weights.data(), static_cast<Eigen::Index>(weights.size()));
    const Vector seen = nullSpace.transpose() * row;
    const double size = row.cwiseAbs().maxCoeff() * nullSpace.cwiseAbs().maxCoeff();
    return seen.cwiseAbs().maxCoeff() <= 1e-8 * std::max(size, 1e-300);
}

Eigen::VectorXd LeastSquares::reduced(std::span<const double> weights) const
{
    const Eigen::Map<const Vector> row(weights.data(), static_cast<Eigen::Index>(weights.size()));
    return spread.transpose() * row;
}

Eigen::MatrixXd LeastSquares::triangle() const
{
    const Matrix r = qr.matrixQR().topRows(rank).triangularView<Eigen::Upper>();
    return r * qr.colsPermutation().transpose();
}

Explained explainedBeyond(const Eigen::MatrixXd& first, const Eigen::MatrixXd& more,
                          const Eigen::VectorXd& response)
{
    Eigen::MatrixXd columns = more;
    Eigen::VectorXd rest = response;
    Eigen::Index used = 0;
    if (first.cols() > 0) {
        Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(first.rows(), first.cols());
        qr.setThreshold(kRankTolerance);
        qr.compute(first);
        used = qr.rank();
        const auto rotation = qr.householderQ().setLength(used).adjoint();
        columns.applyOnTheLeft(rotation);
        rest.applyOnTheLeft(rotation);
    }
    const Eigen::Index left = columns.rows() - used;
    if (left == 0 || columns.cols() == 0) {
        return {};
    }
    // What is left of a column is measured against the whole column, not against what is left of
    // the others: all of it may be rounding.
    const double whole = more.colwise().norm().maxCoeff();
    Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(columns.bottomRows(left));
    Explained explained;
    const Eigen::Index most = std::min(left, columns.cols());
    while (explained.df < most &&
           std::abs(qr.matrixQR()(explained.df, explained.df)) > kRankTolerance * whole) {
        ++explained.df;
    }
    Eigen::VectorXd tail = rest.tail(left);
    tail.applyOnTheLeft(qr.householderQ().setLength(explained.df).adjoint());
    explained.ss = tail.head(explained.df).squaredNorm();
    return explained;
}

Eigen::MatrixXd pickColumns(const Eigen::MatrixXd& matrix, const std::vector<Eigen::Index>& numbers)
{
    Eigen::MatrixXd picked(matrix.rows(), static_cast<Eigen::Index>(numbers.size()));
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        picked.col(static_cast<Eigen::Index>(i)) = matrix.col(numbers[i]);
    }
    return picked;
}

} // namespace plumule::stats
