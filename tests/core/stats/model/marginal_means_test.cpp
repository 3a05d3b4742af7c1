#include "core/stats/model/marginal_means.h"

#include "core/stats/model/linear_model.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace plumule::stats {
namespace {

using reference::granted;

struct GrownTray
{
    const char* medium;
    const char* variety;
    double y = 0;
};

LinearModel fitOf(const std::vector<GrownTray>& rows, std::vector<TermColumns> terms)
{
    std::vector<std::string> media;
    std::vector<std::string> varieties;
    std::vector<std::optional<double>> values;
    for (const GrownTray& row : rows) {
        media.push_back(row.medium);
        varieties.push_back(row.variety);
        values.push_back(row.y);
    }
    DataTable table;
    EXPECT_TRUE(table.addFactor("medium", media));
    EXPECT_TRUE(table.addFactor("variety", varieties));
    EXPECT_TRUE(table.addNumbers("y", values));
    return granted(LinearModel::fit(table, {"y", std::move(terms), {}}));
}

// Cells of 11 (two trays), 30, 15 and 35 (two trays): what speaks against adding up is
// 11 − 30 − 15 + 35 = 1, and least squares takes a third of it from each cell over its trays. The
// cells become 65/6, 91/3, 46/3 and 209/6.
const std::vector<GrownTray> kUneven = {{"mix", "radish", 10}, {"mix", "radish", 12},
                                        {"mix", "pea", 30},    {"mesh", "radish", 15},
                                        {"mesh", "pea", 33},   {"mesh", "pea", 37}};

TEST(MarginalMeans, WeighOtherFactorsEquallyHoweverManyTraysTheyHave)
{
    const LinearModel fit = fitOf(kUneven, {{"medium"}, {"variety"}});
    const auto means = granted(marginalMeans(fit, "medium"));
    ASSERT_EQ(means.size(), 2u);
    EXPECT_EQ(means[0].level, "mix");
    EXPECT_EQ(means[0].n, 3u);
    EXPECT_NEAR(*means[0].mean, (65.0 / 6 + 91.0 / 3) / 2, 1e-9);
    EXPECT_NEAR(*means[1].mean, (46.0 / 3 + 209.0 / 6) / 2, 1e-9);
    // As weights of the cells that is 7, 5, −1 and 1 twelfths, whose squares over the trays sum to
    // 51/144; the residual sum of squares is 2 + 8 + 1/3 with 3 degrees of freedom.
    const double se = std::sqrt((2 + 8 + 1.0 / 3) / 3 * 51 / 144);
    EXPECT_NEAR(*means[0].se, se, 1e-9);
    EXPECT_EQ(means[0].df, 3);
    // t(0.975; 3) = 3.182446 (any table of t).
    EXPECT_NEAR(*means[0].upper - *means[0].mean, 3.182446 * se, 1e-5);
    EXPECT_NEAR(*means[0].mean - *means[0].lower, 3.182446 * se, 1e-5);
}

TEST(MarginalMeans, OfOneFactorArePlainMeans)
{
    const LinearModel fit = fitOf(kUneven, {{"medium"}});
    const auto means = granted(marginalMeans(fit, "medium"));
    EXPECT_NEAR(*means[0].mean, 52.0 / 3, 1e-9);
    EXPECT_NEAR(*means[1].mean, 85.0 / 3, 1e-9);
}

TEST(MarginalMeans, AreWiderAtAHigherLevel)
{
    const LinearModel fit = fitOf(kUneven, {{"medium"}, {"variety"}});
    const auto usual = granted(marginalMeans(fit, "medium"));
    const auto narrow = granted(marginalMeans(fit, "medium", 0.9));
    // t(0.95; 3) = 2.353363.
    EXPECT_NEAR((*narrow[0].upper - *narrow[0].lower) / (*usual[0].upper - *usual[0].lower),
                2.353363 / 3.182446, 1e-6);
}

TEST(MarginalMeans, AreMissingWhereTheyCantBeTold)
{
    const LinearModel fit = fitOf(
        {{"mix", "radish", 10}, {"mix", "radish", 12}, {"mesh", "pea", 33}, {"mesh", "pea", 37}},
        {{"medium"}, {"variety"}});
    const auto means = granted(marginalMeans(fit, "medium"));
    ASSERT_EQ(means.size(), 2u);
    for (const MarginalMean& mean : means) {
        EXPECT_FALSE(mean.estimable) << mean.level;
        EXPECT_EQ(mean.n, 2u);
        EXPECT_FALSE(mean.mean || mean.se || mean.df || mean.lower || mean.upper);
    }
}

TEST(MarginalMeans, RefuseAFactorThatIsNotThereAndALevelThatIsNone)
{
    const LinearModel fit = fitOf(kUneven, {{"medium"}});
    EXPECT_TRUE(marginalMeans(fit, "variety").error().is(ModelReason::TermUnknown));
    for (const double level : {0.0, 1.0, -0.5, 95.0, std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_TRUE(marginalMeans(fit, "medium", level).error().is(ModelReason::ConfidenceLevel))
            << level;
    }
}

} // namespace
} // namespace plumule::stats
