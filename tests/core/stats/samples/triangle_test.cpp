#include "core/stats/samples/triangle.h"

#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

namespace {

std::optional<double> asNumber(std::optional<int> value)
{
    return value ? std::optional<double>(*value) : std::nullopt;
}

} // namespace

TEST(Triangle, AgreesWithEveryCellOfTheFaoTable)
{
    // FAO V7180E, Appendix A.
    const reference::Table table("handbook/sensory_triangle_fao.csv");
    const auto n = table.numbers("n");
    ASSERT_EQ(table.rows(), 44U);
    const std::vector<std::pair<std::string, double>> columns = {{"min_correct_10pct", 0.1},
                                                                 {"min_correct_5pct", 0.05},
                                                                 {"min_correct_1pct", 0.01},
                                                                 {"min_correct_0.1pct", 0.001}};
    for (const auto& [column, alpha] : columns) {
        const auto expected = table.maybeNumbers(column);
        for (std::size_t row = 0; row < table.rows(); ++row) {
            EXPECT_EQ(asNumber(fewestRight(static_cast<int>(n[row]), 1.0 / 3, alpha)),
                      expected[row])
                << n[row] << " tasters, " << column;
        }
    }
}

TEST(Triangle, AgreesWithTheComputedTableOfChoices)
{
    const reference::Table table("handbook/sensory_critical_values_computed.csv");
    const auto n = table.numbers("n");
    const auto check = [&](const std::string& column, auto fewest) {
        const auto expected = table.maybeNumbers(column);
        for (std::size_t row = 0; row < table.rows(); ++row) {
            EXPECT_EQ(asNumber(fewest(static_cast<int>(n[row]))), expected[row])
                << n[row] << " tasters, " << column;
        }
    };
    check("triangle_p=1/3_a05", [](int t) { return fewestRight(t, 1.0 / 3, 0.05); });
    check("triangle_a01", [](int t) { return fewestRight(t, 1.0 / 3, 0.01); });
    check("duo_trio_or_directional_paired_1tail_p=1/2_a05",
          [](int t) { return fewestRight(t, 0.5, 0.05); });
    check("1tail_a01", [](int t) { return fewestRight(t, 0.5, 0.01); });
    check("paired_preference_2tail_a05", [](int t) { return fewestRight(t, 0.5, 0.025); });
    check("2tail_a01", [](int t) { return fewestRight(t, 0.5, 0.005); });
}

TEST(Triangle, CountsTheGuesses)
{
    const auto result = triangleTest(5, 4);
    ASSERT_TRUE(result);
    // 5·(1/3)⁴·(2/3) + (1/3)⁵ = 11/243.
    EXPECT_NEAR(result->p, 11.0 / 243, 1e-14);
    EXPECT_NEAR(result->discriminators, 0.7, 1e-14);
    EXPECT_EQ(triangleTest(9, 2)->discriminators, 0);
    EXPECT_EQ(triangleTest(9, 0)->p, 1);
}

TEST(Triangle, RefusesImpossibleCounts)
{
    EXPECT_EQ(triangleTest(0, 0).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(triangleTest(5, 6).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(triangleTest(5, -1).error().kind, ErrorKind::Invalid);
}
