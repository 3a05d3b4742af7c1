#include "core/review/facts/pooled_spread.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

PastYield inTrial(std::int64_t trial, std::int64_t medium = 1)
{
    PastYield tray;
    tray.medium = {medium};
    tray.variety = {1};
    tray.trial = TrialId{trial};
    tray.sownOn = date(2026, 2, 2);
    return tray;
}

PastYield outsideTrials(Date sownOn)
{
    PastYield tray = inTrial(1);
    tray.trial.reset();
    tray.sownOn = sownOn;
    return tray;
}

// Two cells of three by hand: 9 10 11 about 10 and 16 20 24 about 20: 2 + 32 over 2 + 2 degrees.
TEST(SpreadCells, PoolWithinCellsOnly)
{
    SpreadCells cells;
    for (const double value : {9.0, 10.0, 11.0}) {
        cells.add(inTrial(1), value);
    }
    for (const double value : {16.0, 20.0, 24.0}) {
        cells.add(inTrial(2), value);
    }
    const PooledSpread spread = cells.ofValues().value();
    EXPECT_NEAR(spread.sd, std::sqrt(34.0 / 4), 1e-12);
    EXPECT_EQ(spread.df, 4);
    EXPECT_EQ(spread.trays, 6);
    // As shares of their cells: 0.1 and 0.2, each over two degrees.
    EXPECT_NEAR(cells.ofShares()->sd, std::sqrt((0.01 + 0.04) / 2), 1e-12);
}

TEST(SpreadCells, NeedFourDegreesOfFreedom)
{
    SpreadCells cells;
    EXPECT_FALSE(cells.ofValues());
    for (const double value : {1.0, 2.0, 3.0, 4.0}) {
        cells.add(inTrial(1), value);
        EXPECT_FALSE(cells.ofValues());
    }
    cells.add(inTrial(1), 5);
    EXPECT_TRUE(cells.ofValues());
}

TEST(SpreadCells, TellNothingOfTraysThatAreAllAlikeOrAlone)
{
    SpreadCells alike;
    for (int i = 0; i < 9; ++i) {
        alike.add(inTrial(1), 120);
    }
    EXPECT_FALSE(alike.ofValues());
    SpreadCells alone;
    for (int trial = 1; trial <= 9; ++trial) {
        alone.add(inTrial(trial), 10.0 * trial);
    }
    EXPECT_FALSE(alone.ofValues());
}

TEST(SpreadCells, HaveNoShareOfAMeanThatIsNotAboveZero)
{
    SpreadCells cells;
    for (const double value : {-2.0, -1.0, 0.0, 1.0, 2.0}) {
        cells.add(inTrial(1), value);
    }
    EXPECT_TRUE(cells.ofValues());
    EXPECT_FALSE(cells.ofShares());
}

TEST(SpreadCells, PartTraysByMediumVarietyTrialAndMonth)
{
    const auto dfOf = [](const std::vector<PastYield>& trays) {
        SpreadCells cells;
        double value = 0;
        for (const PastYield& tray : trays) {
            cells.add(tray, ++value);
        }
        const auto spread = cells.ofValues();
        return spread ? spread->df : 0;
    };
    const Date first = date(2026, 2, 1);
    EXPECT_EQ(dfOf(std::vector<PastYield>(6, outsideTrials(first))), 5);
    std::vector<PastYield> february(3, outsideTrials(first));
    february.insert(february.end(), 3, outsideTrials(date(2026, 2, 28)));
    EXPECT_EQ(dfOf(february), 5) << "a month of sowing is one cell";
    std::vector<PastYield> turned(3, outsideTrials(date(2026, 2, 28)));
    turned.insert(turned.end(), 3, outsideTrials(date(2026, 3, 1)));
    EXPECT_EQ(dfOf(turned), 4);
    std::vector<PastYield> years(3, outsideTrials(first));
    years.insert(years.end(), 3, outsideTrials(date(2025, 2, 1)));
    EXPECT_EQ(dfOf(years), 4) << "February of another year is another month";
    std::vector<PastYield> sameTrial(3, inTrial(1));
    sameTrial.insert(sameTrial.end(), 3, inTrial(1));
    sameTrial.back().sownOn = date(2026, 3, 9);
    EXPECT_EQ(dfOf(sameTrial), 5) << "a trial is one cell whenever it was sown";
    std::vector<PastYield> media(3, inTrial(1, 1));
    media.insert(media.end(), 3, inTrial(1, 2));
    EXPECT_EQ(dfOf(media), 4);
}

// Seed 10: shares do not hang on the unit, values scale with it.
TEST(SpreadCells, ScaleWithTheUnit)
{
    std::mt19937 draw(10);
    std::normal_distribution<double> noise(100, 12);
    SpreadCells grams;
    SpreadCells ounces;
    constexpr double kOunce = 28.349523125; // g, NIST SP 811
    for (int i = 0; i < 40; ++i) {
        const double value = noise(draw);
        grams.add(inTrial(i % 5), value);
        ounces.add(inTrial(i % 5), value / kOunce);
    }
    EXPECT_NEAR(grams.ofValues()->sd, ounces.ofValues()->sd * kOunce, 1e-9);
    EXPECT_NEAR(grams.ofShares()->sd, ounces.ofShares()->sd, 1e-12);
    EXPECT_EQ(grams.ofShares()->df, 35);
}

} // namespace
} // namespace plumule
