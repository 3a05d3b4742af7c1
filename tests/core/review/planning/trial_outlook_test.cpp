#include "core/review/facts/review_reason.h"
#include "core/trial/trial_reason.h"
#include "tests/core/review/comparison/comparison_samples.h"
#include "tests/core/review/planning/plan_samples.h"

#include "core/stats/planning/power.h"
#include "core/stats/probability/steady_draw.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace plumule {
namespace {

// The two-sample t test's power by the noncentral t: sd 16 and a difference of 30, as any power
// program gives it to two digits.
TEST(TrialOutlook, OfOnePairIsTheTwoSampleTTest)
{
    PlanSamples plan;
    plan.draft.plan.traysEach = 4;
    EXPECT_NEAR(plan.outlook().chosen.powerOfOnePair, 0.60, 0.01);
    plan.draft.plan.traysEach = 6;
    EXPECT_NEAR(plan.outlook().chosen.powerOfOnePair, 0.83, 0.01);
    // Of two media Tukey's method is the t test.
    EXPECT_NEAR(plan.outlook().chosen.power, plan.outlook().chosen.powerOfOnePair, 1e-6);
}

// Trays of each for a power of 80 % in a two-sided t test at 5 %, a CV of 10 %, by the noncentral
// t (as computed for references/): 17, 9, 6 and 4 for 10, 15, 20 and 30 %.
TEST(TrialOutlook, FindsTheCountThatIsEnough)
{
    PlanSamples plan;
    plan.draft.plan.spread = grams(10);
    for (const auto& [margin, trays] :
         std::vector<std::pair<double, int>>{{10, 17}, {15, 9}, {20, 6}, {30, 4}}) {
        plan.draft.trial.margin = grams(margin);
        const PlanOutlook outlook = plan.outlook();
        ASSERT_TRUE(outlook.enough);
        EXPECT_EQ(outlook.enough->trays, trays);
        EXPECT_GE(outlook.enough->power, 0.8);
    }
    plan.draft.trial.margin = grams(1);
    EXPECT_FALSE(plan.outlook().enough) << "it would take over 500 of each";
}

// Error degrees of freedom by the analysis of variance of each design (e.g. Gomez and Gomez 1984):
// the chosen power is that of the noncentral t with them.
TEST(TrialOutlook, TakesTheDesignsOwnDegreesOfFreedom)
{
    PlanSamples plan(2);
    plan.draft.plan.traysEach = 4;
    plan.draft.plan.blocks = 4;
    const auto powerWith = [](double df) {
        return stats::tPowerOfShift(30 / (16 * std::sqrt(2.0 / 4)), df, 0.05).value();
    };
    plan.draft.plan.design = Design::CompletelyRandom;
    EXPECT_NEAR(plan.outlook().chosen.power, powerWith(2 * 3), 1e-9);
    plan.draft.plan.design = Design::RandomizedBlocks;
    EXPECT_NEAR(plan.outlook().chosen.power, powerWith(7 - 1 - 3), 1e-9);
    plan.draft.plan.blocks = 2;
    EXPECT_NEAR(plan.outlook().chosen.power, powerWith(7 - 1 - 1), 1e-9);
}

TEST(TrialOutlook, SaysWhatTheChosenCountSees)
{
    PlanSamples plan(3);
    plan.draft.plan.design = Design::RandomizedBlocks;
    const PlanOutlook outlook = plan.outlook();
    ASSERT_TRUE(outlook.smallestDifference);
    plan.draft.trial.margin = grams(*outlook.smallestDifference);
    EXPECT_NEAR(plan.outlook().chosen.power, 0.8, 1e-4);
    // Two of two in a square of two: too little is left over to judge by.
    PlanSamples square(2);
    square.draft.plan.design = Design::LatinSquare;
    square.draft.plan.traysEach = 2;
    EXPECT_EQ(square.outlook().chosen.power, 0);
    EXPECT_FALSE(square.outlook().smallestDifference);
}

TEST(TrialOutlook, DrawsACurveThatRises)
{
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        PlanSamples plan(3);
        plan.draft.plan.design = design;
        const PlanOutlook outlook = plan.outlook();
        ASSERT_GE(outlook.curve.size(), 8u);
        ASSERT_LE(outlook.curve.size(), 22u);
        EXPECT_EQ(outlook.curve.front().trays, 2);
        for (std::size_t i = 1; i < outlook.curve.size(); ++i) {
            EXPECT_GE(outlook.curve[i].power, outlook.curve[i - 1].power);
            EXPECT_GE(outlook.curve[i].powerOfOnePair, outlook.curve[i].power);
        }
    }
    // Two trays of each in every block: counts go by twos.
    PlanSamples plan;
    plan.draft.plan.design = Design::RandomizedBlocks;
    plan.draft.plan.blocks = 3;
    plan.draft.plan.traysEach = 6;
    EXPECT_EQ(plan.outlook().curve.at(1).trays, 4);
}

TEST(TrialOutlook, CountsFeedingsOfOneMediumTogether)
{
    PlanSamples plan;
    plan.draft.treatments.clear();
    for (const MediumId medium : {kMix, kMesh}) {
        plan.addTreatment(medium, Feeding::Nutrient);
        plan.addTreatment(medium, Feeding::NoNutrient);
    }
    plan.draft.plan.traysEach = 4;
    const PlanOutlook outlook = plan.outlook();
    EXPECT_EQ(outlook.chosen.trays, 8);
    EXPECT_NEAR(outlook.chosen.power, stats::tPowerOfShift(30 / 8.0, 12, 0.05).value(), 1e-6);
    EXPECT_EQ(outlook.curve.front().trays, 2);
    EXPECT_EQ(outlook.curve.at(1).trays, 4);
}

// Trays of like medium, variety and trial: sd 10 of the first variety; of the second 2 %.
class OutlookOfYieldsTest : public testing::Test
{
protected:
    OutlookOfYieldsTest()
    {
        plan.draft.plan.spread.reset();
        plan.draft.trial.margin.reset();
    }
    void addPast(MediumId medium, VarietyId variety, const std::vector<double>& yields)
    {
        for (const double yield : yields) {
            plan.facts.past.push_back({medium, variety, {}, date(2025, 5, 5), grams(yield)});
        }
    }
    PlanSamples plan;
};

TEST_F(OutlookOfYieldsTest, PoolsTheVarietysOwnTrays)
{
    addPast(kMix, {1}, {190, 200, 210});
    addPast(kMesh, {1}, {290, 300, 310});
    addPast(kMix, {2}, {490, 500, 510});
    const PlanOutlook outlook = plan.outlook();
    EXPECT_NEAR(outlook.spread, 10, 1e-9);
    EXPECT_TRUE(outlook.isOfVariety);
    EXPECT_EQ(outlook.spreadTrays, 6);
    EXPECT_EQ(outlook.spreadFrom, SpreadFrom::Room);
    EXPECT_NEAR(outlook.mean, 250, 1e-9);
    EXPECT_NEAR(outlook.margin, 25, 1e-9);
    EXPECT_TRUE(outlook.isDefaultMargin);
}

TEST_F(OutlookOfYieldsTest, ElseTheRoomsAsAShare)
{
    addPast(kMix, {1}, {240, 260});
    addPast(kMix, {2}, {490, 500, 510});
    addPast(kMesh, {2}, {490, 500, 510});
    const PlanOutlook outlook = plan.outlook();
    EXPECT_FALSE(outlook.isOfVariety);
    EXPECT_EQ(outlook.spreadFrom, SpreadFrom::Room);
    EXPECT_EQ(outlook.spreadTrays, 8);
    // By hand: shares 0.96 and 1.04 with 1 df, twice 0.98, 1, 1.02 with 2.
    const double share = std::sqrt((2 * 0.04 * 0.04 + 2 * (2 * 0.02 * 0.02)) / 5);
    EXPECT_NEAR(outlook.spread, 250 * share, 1e-9);
}

TEST_F(OutlookOfYieldsTest, ElseATenthOfTheMean)
{
    addPast(kMix, {2}, {400});
    const PlanOutlook outlook = plan.outlook();
    EXPECT_EQ(outlook.spreadFrom, SpreadFrom::Default);
    EXPECT_DOUBLE_EQ(outlook.spread, 40);
    EXPECT_EQ(outlook.spreadTrays, 0);
    plan.draft.plan.spread = grams(16);
    EXPECT_TRUE(plan.outlook().isOwnSpread);
    EXPECT_DOUBLE_EQ(plan.outlook().spread, 16);
}

TEST_F(OutlookOfYieldsTest, TakesReviewedTraysThatAreNotSetAside)
{
    plan.add("A1", kMix, 200);
    plan.add("A2", kMix, 900).tray.setAsideReason = "tipped over";
    plan.add("A3", kMesh, 800).lastCut.reset();
    EXPECT_DOUBLE_EQ(plan.outlook().mean, 200);
}

TEST_F(OutlookOfYieldsTest, RefusesAPlanWithoutAnAnswer)
{
    const auto errorOf = [&] { return outlookOf(plan.draft, plan.facts).error(); };
    EXPECT_EQ(errorOf(), fail(ErrorKind::TooFew, ReviewReason::NoYieldYet).value());
    plan.draft.plan.spread = grams(16);
    EXPECT_EQ(errorOf(), fail(ErrorKind::TooFew, ReviewReason::NoYieldYet).value())
        << "there is no margin";
    plan.draft.trial.margin = grams(30);
    EXPECT_TRUE(outlookOf(plan.draft, plan.facts));
    plan.draft.plan.spread = grams(0);
    EXPECT_EQ(errorOf(), (fail(ErrorKind::Invalid, TrialReason::Spread).value()));
    plan.draft.trial.margin = grams(0);
    EXPECT_EQ(errorOf(), (fail(ErrorKind::Invalid, TrialReason::Margin).value()));
    plan.draft.trial.margin = grams(30);
    plan.draft.plan.spread.reset();
    plan.draft.treatments.pop_back();
    EXPECT_EQ(errorOf(), (fail(ErrorKind::TooFew, TrialReason::TooFewMedia).value()));
}

TEST(TrialOutlook, IsShownAsACurveWithTheChosenCount)
{
    PlanSamples plan;
    const PlanOutlook outlook = plan.outlook();
    const ChartSpec chart = powerChart(outlook);
    EXPECT_EQ(chart.key, "power_curve");
    EXPECT_EQ(chart.form, ChartForm::Curves);
    EXPECT_EQ(chart.x.key, "trays_each");
    EXPECT_EQ(chart.y.key, "power");
    EXPECT_EQ(chart.y.unit, "%");
    ASSERT_EQ(chart.series.size(), 2u);
    EXPECT_EQ(chart.series[0].points.size(), outlook.curve.size());
    ASSERT_EQ(chart.series[1].points.size(), 1u);
    EXPECT_DOUBLE_EQ(chart.series[1].points[0].x, 4);
    EXPECT_NEAR(chart.series[1].points[0].y, 100 * outlook.chosen.power, 1e-9);
    ASSERT_EQ(chart.marks.size(), 1u);
    EXPECT_EQ(chart.marks[0], (ChartMark{"power_wanted", "", 80, false}));
}

// Yields drawn by chance and judged by the review itself.
class SimulatedTrials
{
public:
    explicit SimulatedTrials(Design design)
        : m_design(design)
    {}

    // Share of trials in which the last medium is told from the first, 30 g and sd 16 apart.
    [[nodiscard]] double shareTold(int trials)
    {
        int told = 0;
        for (int trial = 0; trial < trials; ++trial) {
            const SeasonComparison answer = grow().compare();
            for (const MediaPair& pair : answer.pairs) {
                if (std::min(pair.a, pair.b) == 0 &&
                    std::max(pair.a, pair.b) + 1 == answer.means.size()) {
                    told += *pair.lowerPercent > 0 || *pair.upperPercent < 0 ? 1 : 0;
                }
            }
        }
        return static_cast<double>(told) / trials;
    }

private:
    static constexpr int kMedia = 4;

    // Box and Muller 1958, Ann. Math. Stat. 29:610.
    double normal()
    {
        const auto uniform = [&] {
            return (static_cast<double>(m_draw.below(1U << 30U)) + 0.5) / (1U << 30U);
        };
        return std::sqrt(-2 * std::log(uniform())) * std::cos(2 * std::numbers::pi * uniform());
    }

    ComparisonSamples grow()
    {
        ComparisonSamples season;
        season.facts.designs[TrialId{7}] = m_design;
        for (int medium = 3; medium <= kMedia; ++medium) {
            season.facts.media[MediumId{medium}].id = {medium};
        }
        for (int row = 0; row < 4; ++row) {
            for (int medium = 0; medium < kMedia; ++medium) {
                const int place = (row + medium) % kMedia;
                const double yield = 300 + (medium == kMedia - 1 ? 30 : 0) + 16 * normal() +
                                     (m_design == Design::CompletelyRandom ? 0 : 25 * row);
                season.addTrays({medium + 1}, {yield}, {1}, TrialId{7});
                SeasonRecord& tray = season.facts.trays.back();
                tray.tray.block = m_design == Design::CompletelyRandom ? 1 : row + 1;
                tray.shelf = ShelfId{place + 1};
                if (m_design == Design::LatinSquare) {
                    tray.column = place + 1;
                }
            }
        }
        return season;
    }

    Design m_design;
    stats::SteadyDraw m_draw{20260401};
};

TEST(TrialOutlook, IsWhatTheReviewThenShows)
{
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        PlanSamples plan(4);
        plan.draft.plan.design = design;
        plan.draft.plan.traysEach = 4;
        plan.draft.plan.blocks = 4;
        const double power = plan.outlook().chosen.power;
        constexpr int kTrials = 250;
        const double error = std::sqrt(power * (1 - power) / kTrials);
        EXPECT_NEAR(SimulatedTrials(design).shareTold(kTrials), power, 3 * error)
            << static_cast<int>(design);
    }
}

} // namespace
} // namespace plumule
