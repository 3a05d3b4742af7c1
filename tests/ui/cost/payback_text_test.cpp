#include "ui/cost/payback_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

Payback meshPayback()
{
    Payback payback;
    payback.medium.name = "Steel mesh";
    payback.against.name = "Coir mix";
    payback.at = 16;
    payback.hasBand = true;
    payback.low = 10;
    payback.high = 35;
    return payback;
}

TEST(PaybackWords, SaysTheUseAndHowSureItIs)
{
    Payback payback = meshPayback();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (95% interval 10 to 35).");
    payback.high.reset();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (95% interval 10 to never).");
    payback.at.reset();
    payback.low.reset();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh never pays back against Coir mix (as these trays differ, mostly never).");
    payback.at = 16;
    payback.hasBand = false;
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (no interval from fewer than three "
              "trays of each).");
}

TEST(PaybackWords, SaysWhichPricesACurveLacks)
{
    CurveLack mesh;
    mesh.medium.name = "Steel mesh";
    mesh.prices = {{PriceItem::Medium, date(2026, 3, 12)}, {PriceItem::Washing, std::nullopt}};
    const QString said = paybackWords(std::vector<CurveLack>{mesh}).join('|');
    EXPECT_TRUE(said.startsWith("Steel mesh has no curve. The first price of Steel mesh is from 12 "
                                "Mar 2026, after the sowing. There is no price of "))
        << said.toStdString();
    EXPECT_TRUE(paybackWords(std::vector<CurveLack>()).isEmpty());
}

TEST(PaybackWords, OfASeasonAreThoseOfMediaWithACurveThenOfThoseWithout)
{
    SeasonAnswer answer;
    EXPECT_TRUE(paybackWords(answer).isEmpty());
    answer.paybacks = {meshPayback()};
    CurveLack felt;
    felt.medium.name = "Felt";
    answer.curveLacks = {felt};
    const QStringList lines = paybackWords(answer);
    ASSERT_EQ(lines.size(), 2);
    EXPECT_TRUE(lines[0].startsWith("Steel mesh pays back")) << lines[0].toStdString();
    EXPECT_EQ(lines[1], "Felt has no curve.");
}

TEST(PaybackWords, LeavesNamesWithMarksAsTheyStand)
{
    Payback payback = meshPayback();
    payback.medium.name = "Mesh %2";
    payback.against.name = "Mix %3 %4";
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Mesh %2 pays back against Mix %3 %4 at use 16 (95% interval 10 to 35).");
}

} // namespace
} // namespace plumule::ui
