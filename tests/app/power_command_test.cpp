#include "tests/app/program_run.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

ordered_json planned(const QStringList& options)
{
    const Answer answer = run(QStringList{"power"} + options + QStringList{"--json"});
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_EQ(answer.error.toStdString(), "");
    return answer.json();
}

} // namespace

// Case power_a: t of two samples, both tails counted.
TEST(PowerCommand, PlansTwoMediaByT)
{
    const auto& counts = expectedOf("power_a").at("t_sample_size");
    const ordered_json plan = planned({"--difference", "12", "--spread", "15", "--power", "0.9"});
    EXPECT_EQ(plan.at("test"), "t");
    EXPECT_EQ(plan.at("per_medium"), counts.at("n_ceiling")[1]);
    expectClose(plan.at("per_medium_exact"), counts.at("n_exact_per_group")[1], 1e-5);
    EXPECT_EQ(plan.at("trays"), 68);
    EXPECT_GE(plan.at("power").get<double>(), 0.9);
    const ordered_json given =
        planned({"--difference", "12", "--spread", "15", "--per-medium", "20"});
    expectClose(given.at("power"),
                expectedOf("power_a").at("t_power").at("power_strict_both_tails")[1], 1e-7);
    EXPECT_TRUE(given.at("per_medium_exact").is_null());
    EXPECT_EQ(given.at("power_wanted"), 0.8);
}

// Case power_a: three groups of eight, the smallest difference that power 0.8 sees.
TEST(PowerCommand, PlansMoreMediaByFWithTwoExtremes)
{
    const auto& anova = expectedOf("power_a").at("anova");
    const ordered_json plan =
        planned({"--difference", "20", "--spread", "15", "--media", "3", "--per-medium", "8"});
    EXPECT_EQ(plan.at("test"), "f");
    expectClose(plan.at("smallest_difference"), anova.at("min_detectable_max_difference")[1], 1e-6);
}

TEST(PowerCommand, CountsBlocksAsPairsForTwoMedia)
{
    // A difference within a block has sqrt(2) times a tray's spread: paired, n 6, delta 10, sd 8.
    const ordered_json plan = planned(
        {"--difference", "10", "--spread", "5.65685424949238", "--per-medium", "6", "--blocks"});
    EXPECT_EQ(plan.at("test"), "f");
    EXPECT_EQ(plan.at("blocks"), true);
    expectClose(plan.at("power"),
                expectedOf("power_a").at("t_power").at("power_strict_both_tails")[2], 1e-7);
}

TEST(PowerCommand, NamesItsKeysInTheDocumentedOrder)
{
    EXPECT_EQ(keysOf(planned({"--difference", "1", "--spread", "1"})),
              "test media blocks difference spread alpha per_medium per_medium_exact trays power "
              "power_wanted smallest_difference");
}

TEST(PowerCommand, CanBeReadWithoutJson)
{
    const Answer answer = run({"power", "--difference", "1", "--spread", "1"});
    EXPECT_EQ(answer.exitCode, 0);
    EXPECT_TRUE(answer.out.contains("2 media with 17 trays each, 34 trays in all"));
}

TEST(PowerCommand, TakesTwoTraysForADifferenceThatCannotBeMissed)
{
    EXPECT_EQ(planned({"--difference", "1e9", "--spread", "1"}).at("per_medium"), 2);
    EXPECT_EQ(planned({"--difference", "1e9", "--spread", "1", "--media", "4"}).at("per_medium"),
              2);
}

TEST(PowerCommand, RefusesWhatItCannotUnderstand)
{
    const QStringList fine{"power", "--difference", "1", "--spread", "1"};
    expectBadCall({"power"}, "--difference is missing");
    expectBadCall({"power", "--difference", "1"}, "--spread is missing");
    expectBadCall({"power", "--difference", "0", "--spread", "1"}, "--difference wants");
    expectBadCall({"power", "--difference", "nan", "--spread", "1"}, "--difference wants");
    expectBadCall({"power", "--difference", "1", "--spread", "-1"}, "--spread wants");
    expectBadCall(fine + QStringList{"--media", "1"}, "--media wants");
    expectBadCall(fine + QStringList{"--media", "2.5"}, "--media wants");
    expectBadCall(fine + QStringList{"--per-medium", "1"}, "--per-medium wants");
    expectBadCall(fine + QStringList{"--power", "1"}, "--power wants");
    expectBadCall(fine + QStringList{"--power", "0.8", "--per-medium", "5"}, "do not go together");
    expectBadCall(fine + QStringList{"file.csv"}, "one argument too many");
    expectNoAnswer({"power", "--difference", "1e-9", "--spread", "1"}, "No number of trays");
}

} // namespace plumule::app
