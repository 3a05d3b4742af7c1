#include "core/stats/model/reml.h"

#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace plumule::stats {
namespace {

using reference::granted;

// So many numbers alike whose squares sum to that.
Eigen::VectorXd squaresOf(double sum, Eigen::Index count)
{
    return Eigen::VectorXd::Constant(count, std::sqrt(sum / static_cast<double>(count)));
}

// A balanced one-way table of `groups` of `each`: the groups' contrasts have the kernel's
// eigenvalue `each`, the rest is within groups.
RemlProblem oneWay(int groups, int each, double ssBetween, double ssWithin)
{
    RemlProblem problem;
    problem.diagonal = Eigen::VectorXd::Constant(groups - 1, each);
    problem.data = squaresOf(ssBetween, groups - 1);
    problem.restSs = ssWithin;
    problem.restRows = groups * (each - 1);
    return problem;
}

// Dyestuff (Davies and Goldsmith 1972, Statistical Methods in Research and Production; from
// memory): six batches of five, mean squares 11271.5 and 2451.25, so that the batches' variance is
// (11271.5 − 2451.25)/5 = 1764.05. Its published criterion 319.6543 has log|X'X| = log 30 in it.
TEST(Reml, GivesThePublishedDyestuff)
{
    const RemlSolution found = granted(solveReml(oneWay(6, 5, 56357.5, 58830)));
    EXPECT_NEAR(found.residualVariance, 2451.25, 1e-3);
    EXPECT_NEAR(found.ratios[0] * found.residualVariance, 1764.05, 1e-2);
    EXPECT_NEAR(found.deviance + std::log(30), 319.6543, 5e-5);
}

// In a balanced table the restricted likelihood falls apart into one of each mean square.
TEST(Reml, OfABalancedTableIsThatOfItsMeanSquares)
{
    const double between = 90.0 / 3;
    const double within = 48.0 / 8;
    const RemlSolution found = granted(solveReml(oneWay(4, 3, 90, 48)));
    EXPECT_NEAR(found.residualVariance, within, 1e-9);
    EXPECT_NEAR(found.ratios[0], (between / within - 1) / 3, 1e-8);
    EXPECT_NEAR(found.deviance,
                11 * (1 + std::log(2 * std::numbers::pi)) + 8 * std::log(within) +
                    3 * std::log(between),
                1e-9);
}

TEST(Reml, StaysAtNothingWhereGroupsDifferLessThanChance)
{
    const RemlSolution found = granted(solveReml(oneWay(4, 3, 12, 48)));
    EXPECT_EQ(found.ratios[0], 0) << "a mean square of 4 under one of 6";
    EXPECT_NEAR(found.residualVariance, 60.0 / 11, 1e-12) << "all taken together";
}

// Blocks and varieties at random, each upright on the other: every one has its own mean square.
RemlProblem twoFactors(double ssFirst, double ssSecond)
{
    RemlProblem problem;
    problem.kernels = {Eigen::MatrixXd::Zero(7, 7), Eigen::MatrixXd::Zero(7, 7)};
    problem.kernels[0].topLeftCorner(3, 3) = 5 * Eigen::MatrixXd::Identity(3, 3);
    problem.kernels[1].bottomRightCorner(4, 4) = 4 * Eigen::MatrixXd::Identity(4, 4);
    problem.data.resize(7);
    problem.data << squaresOf(ssFirst, 3), squaresOf(ssSecond, 4);
    problem.restSs = 24;
    problem.restRows = 12; // a mean square of 2
    return problem;
}

TEST(Reml, TellsTwoFactorsApart)
{
    const RemlSolution found = granted(solveReml(twoFactors(36, 40))); // 12 and 10
    EXPECT_NEAR(found.residualVariance, 2, 1e-7);
    EXPECT_NEAR(found.ratios[0], (12.0 / 2 - 1) / 5, 1e-6);
    EXPECT_NEAR(found.ratios[1], (10.0 / 2 - 1) / 4, 1e-6);
    EXPECT_NEAR(found.deviance,
                19 * (1 + std::log(2 * std::numbers::pi)) + 12 * std::log(2.0) +
                    3 * std::log(12.0) + 4 * std::log(10.0),
                1e-8);
}

TEST(Reml, PutsOneOfTwoFactorsOnTheBoundary)
{
    const RemlSolution found = granted(solveReml(twoFactors(3, 40))); // 1 and 10
    EXPECT_EQ(found.ratios[0], 0);
    const double rest = (24 + 3) / 15.0; // what the first has goes to the residual
    EXPECT_NEAR(found.residualVariance, rest, 1e-7);
    EXPECT_NEAR(found.ratios[1], (10 / rest - 1) / 4, 1e-6);
}

// −2 log L of a mean square s on d degrees of freedom with the variance λ is d log λ + d s/λ, of
// which the second derivative is expected to be d/λ²; λ is σ² within groups and σ² + 3 σb² between.
TEST(Reml, ExpectsTheInformationOfABalancedTable)
{
    const RemlProblem problem = oneWay(4, 3, 90, 48);
    const RemlSolution found = granted(solveReml(problem));
    const Eigen::MatrixXd information = expectedInformation(problem, found, {0});
    ASSERT_EQ(information.rows(), 2);
    const double ofBetween = 3 / (30.0 * 30);
    EXPECT_NEAR(information(0, 0), 8 / (6.0 * 6) + ofBetween, 1e-9);
    EXPECT_NEAR(information(0, 1), 3 * ofBetween, 1e-9);
    EXPECT_NEAR(information(1, 0), information(0, 1), 1e-12);
    EXPECT_NEAR(information(1, 1), 9 * ofBetween, 1e-9);
    EXPECT_EQ(expectedInformation(problem, found, {}).rows(), 1) << "none is above 0";
}

TEST(Reml, SumsItsKernelsAlikeWhicheverWayTheyAreKept)
{
    const RemlProblem turned = oneWay(4, 3, 90, 48);
    RemlProblem whole = turned;
    whole.kernels = {turned.diagonal.asDiagonal().toDenseMatrix()};
    whole.diagonal.resize(0);
    EXPECT_TRUE(turned.isDiagonal());
    EXPECT_FALSE(whole.isDiagonal());
    EXPECT_EQ(whole.factors(), 1);
    EXPECT_EQ(turned.trace(0), 9);
    EXPECT_EQ(whole.trace(0), 9);
    EXPECT_EQ(turned.product(0, 0), 27);
    EXPECT_EQ(whole.product(0, 0), 27);
    EXPECT_EQ(turned.freeRows(), 11);
    const RemlSolution one = granted(solveReml(turned));
    const RemlSolution other = granted(solveReml(whole));
    EXPECT_NEAR(one.ratios[0], other.ratios[0], 1e-7);
    EXPECT_NEAR(one.deviance, other.deviance, 1e-9);
}

} // namespace
} // namespace plumule::stats
