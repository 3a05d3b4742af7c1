#include "core/review/comparison/planning_spread.h"

#include "core/review/facts/pooled_spread.h"
#include "tests/core/review/comparison/comparison_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

// Two trays 10 % below and above their mean vary by √2 · 10 %.
const double kTenPercentEachWay = 0.1 * std::sqrt(2.0);

class PlanningSpreadTest : public testing::Test
{
protected:
    void addPairs(int trials)
    {
        season.nameTrials(trials);
        for (int trial = 1; trial <= trials; ++trial) {
            season.addTrays(kMix, {90, 110}, {1}, TrialId{trial});
            season.addTrays(kMesh, {180, 220}, {1}, TrialId{trial});
        }
    }

    double spread(Response response = Response::YieldPerTray)
    {
        priceTrays(season.facts);
        ComparisonAsk ask;
        ask.response = response;
        return spreadToPlanBy(season.facts, season.filter, ask);
    }

    ComparisonSamples season;
};

TEST_F(PlanningSpreadTest, IsTheDefaultWhereNothingTellsIt)
{
    EXPECT_EQ(spread(), 0.1);
    addPairs(1);
    EXPECT_EQ(spread(), 0.1) << "two degrees of freedom tell less than the default";
}

TEST_F(PlanningSpreadTest, IsPooledOverLikeTraysAsAShare)
{
    addPairs(2);
    EXPECT_NEAR(spread(), kTenPercentEachWay, 1e-12)
        << "media of 100 and 200 g vary by as much of their own";
}

TEST_F(PlanningSpreadTest, IsTheRoomsWhateverWasChosenOfIt)
{
    addPairs(2);
    season.filter.trials = {TrialId{1}};
    season.filter.varieties = {VarietyId{2}};
    season.filter.shelves = {ShelfId{1}};
    season.filter.sownFrom = date(2026, 2, 20);
    season.filter.from = date(2026, 3, 1);
    EXPECT_NEAR(spread(), kTenPercentEachWay, 1e-12);
}

TEST_F(PlanningSpreadTest, KnowsNothingOfWhatCameLater)
{
    addPairs(2);
    season.filter.to = date(2026, 2, 1); // all were cut after that
    EXPECT_EQ(spread(), 0.1);
}

TEST_F(PlanningSpreadTest, CountsYieldsOfThePastForYieldsAlone)
{
    for (const double yield : {95.0, 100.0, 100.0, 100.0, 105.0}) {
        season.facts.past.push_back({kMix, {1}, TrialId{9}, date(2025, 6, 1), grams(yield)});
    }
    // Squares of 5, 0, 0, 0 and 5 over four degrees of freedom.
    const double past = std::sqrt(50.0 / 4) / 100;
    for (const Response yield :
         {Response::YieldPerTray, Response::YieldPerTraySown, Response::YieldPerArea}) {
        EXPECT_NEAR(spread(yield), past, 1e-12) << static_cast<int>(yield);
    }
    EXPECT_EQ(spread(Response::YieldPerDay), 0.1);
    EXPECT_EQ(spread(Response::DaysToHarvest), 0.1);
}

TEST_F(PlanningSpreadTest, OfTraysThatAreAllAlikeIsNoSpread)
{
    season.addTrays(kMix, {100, 100, 100, 100, 100, 100}, {1}, TrialId{7});
    EXPECT_EQ(spread(), kDefaultSpread);
}

} // namespace
} // namespace plumule
