#include "core/stats/model/least_squares.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule::stats {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

MatrixXd anyMatrix(std::mt19937& draw, Eigen::Index rows, Eigen::Index columns)
{
    std::normal_distribution<double> noise;
    return MatrixXd::NullaryExpr(rows, columns, [&] { return noise(draw); });
}

// Draper and Smith's straight line through five points, worked out by hand: x 1…5, y 2 4 5 4 5 has
// the slope 0.6, the intercept 2.2 and a residual sum of squares of 2.4.
TEST(LeastSquares, FitsALineAsByHand)
{
    MatrixXd matrix(5, 2);
    matrix << 1, 1, 1, 2, 1, 3, 1, 4, 1, 5;
    VectorXd response(5);
    response << 2, 4, 5, 4, 5;
    const LeastSquares fit(matrix, response);
    EXPECT_EQ(fit.rank, 2);
    EXPECT_NEAR(fit.coefficients(0), 2.2, 1e-13);
    EXPECT_NEAR(fit.coefficients(1), 0.6, 1e-13);
    EXPECT_NEAR(fit.residualSs, 2.4, 1e-13);
    EXPECT_EQ(fit.nullSpace.cols(), 0);
}

// Seed 17: the normal equations hold, and X = Q R in the columns' own order.
TEST(LeastSquares, LeavesWhatStandsUprightOnEveryColumn)
{
    std::mt19937 draw(17);
    for (int round = 0; round < 40; ++round) {
        const Eigen::Index columns = 1 + static_cast<Eigen::Index>(draw() % 5);
        const Eigen::Index rows = columns + static_cast<Eigen::Index>(draw() % 6);
        const MatrixXd matrix = anyMatrix(draw, rows, columns);
        const VectorXd response = anyMatrix(draw, rows, 1);
        const LeastSquares fit(matrix, response);
        const VectorXd rest = response - matrix * fit.coefficients;
        EXPECT_LT((matrix.transpose() * rest).cwiseAbs().maxCoeff(), 1e-9);
        EXPECT_NEAR(rest.squaredNorm(), fit.residualSs, 1e-9);
        const MatrixXd triangle = fit.triangle();
        EXPECT_LT(
            (triangle.transpose() * triangle - matrix.transpose() * matrix).cwiseAbs().maxCoeff(),
            1e-9);
    }
}

// Three columns of which the third is the sum of the others: what hangs on how they share is not
// told, what does not is.
TEST(LeastSquares, TellsWhatTheDataCanSee)
{
    MatrixXd matrix(4, 3);
    matrix << 1, 0, 1, 1, 0, 1, 0, 1, 1, 0, 1, 1;
    VectorXd response(4);
    response << 3, 5, 10, 12;
    const LeastSquares fit(matrix, response);
    EXPECT_EQ(fit.rank, 2);
    EXPECT_EQ(fit.nullSpace.cols(), 1);
    EXPECT_NEAR((matrix * fit.nullSpace).norm(), 0, 1e-12);
    EXPECT_NEAR(fit.residualSs, 4, 1e-12);
    const std::vector<double> difference{1, -1, 0};
    const std::vector<double> first{1, 0, 0};
    const std::vector<double> cell{1, 0, 1};
    EXPECT_TRUE(fit.isEstimable(difference));
    EXPECT_TRUE(fit.isEstimable(cell));
    EXPECT_FALSE(fit.isEstimable(first));
    EXPECT_NEAR(fit.reduced(difference).dot(fit.rotated.head(fit.rank)), 4 - 11, 1e-12);
    EXPECT_NEAR(fit.reduced(cell).squaredNorm(), 0.5, 1e-12) << "the mean of two rows";
}

TEST(ExplainedBeyond, AddsWhatTheFirstColumnsLeftOver)
{
    MatrixXd ones = MatrixXd::Ones(6, 1);
    MatrixXd groups(6, 2);
    groups << 1, 0, 1, 0, 1, 0, 0, 1, 0, 1, 0, 1;
    VectorXd response(6);
    response << 1, 2, 3, 7, 8, 9;
    // Two groups of three with the means 2 and 8: 3 · (3² + 3²).
    const Explained between = explainedBeyond(ones, groups, response);
    EXPECT_EQ(between.df, 1);
    EXPECT_NEAR(between.ss, 54, 1e-12);
    const Explained alone = explainedBeyond(MatrixXd(6, 0), groups, response);
    EXPECT_EQ(alone.df, 2);
    EXPECT_NEAR(alone.ss, 3 * (4 + 64), 1e-11);
}

TEST(ExplainedBeyond, FindsNothingInColumnsThatAreThereAlready)
{
    std::mt19937 draw(5);
    const MatrixXd first = anyMatrix(draw, 8, 3);
    const MatrixXd again = first * anyMatrix(draw, 3, 2) * 1e6;
    const Explained none = explainedBeyond(first, again, anyMatrix(draw, 8, 1));
    EXPECT_EQ(none.df, 0);
    EXPECT_EQ(none.ss, 0);
    EXPECT_EQ(
        explainedBeyond(anyMatrix(draw, 3, 3), anyMatrix(draw, 3, 1), anyMatrix(draw, 3, 1)).df, 0)
        << "no row is left over";
}

// Type I sums add up to what the whole model explains, in whatever order; seed 23.
TEST(ExplainedBeyond, AddsUpToTheWhole)
{
    std::mt19937 draw(23);
    for (int round = 0; round < 20; ++round) {
        const MatrixXd a = anyMatrix(draw, 12, 2);
        const MatrixXd b = anyMatrix(draw, 12, 3);
        const VectorXd y = anyMatrix(draw, 12, 1);
        MatrixXd both(12, 5);
        both << a, b;
        const double inTurn =
            explainedBeyond(MatrixXd(12, 0), a, y).ss + explainedBeyond(a, b, y).ss;
        EXPECT_NEAR(inTurn, y.squaredNorm() - LeastSquares(both, y).residualSs, 1e-9);
        EXPECT_NEAR(inTurn, explainedBeyond(MatrixXd(12, 0), b, y).ss + explainedBeyond(b, a, y).ss,
                    1e-9);
    }
}

TEST(PickColumns, TakesThemInTheOrderAsked)
{
    MatrixXd matrix(2, 3);
    matrix << 1, 2, 3, 4, 5, 6;
    const MatrixXd picked = pickColumns(matrix, {2, 0});
    EXPECT_EQ(picked(0, 0), 3);
    EXPECT_EQ(picked(1, 1), 4);
    EXPECT_EQ(pickColumns(matrix, {}).cols(), 0);
}

} // namespace
} // namespace plumule::stats
