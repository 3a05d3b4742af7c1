#include "core/exchange/import_doubts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

ImportedTray weighed(int line, double netGrams, std::optional<double> seedGrams = 30,
                     const std::string& variety = "Radish")
{
    ImportedTray tray;
    tray.line = line;
    tray.code = "X" + std::to_string(line);
    tray.variety = variety;
    tray.sown = date(2026, 3, 2);
    tray.harvested = date(2026, 3, 12);
    tray.net = grams(netGrams);
    if (seedGrams) {
        tray.seed = grams(*seedGrams);
    }
    return tray;
}

std::vector<int> doubtedLines(const std::vector<ImportedTray>& trays)
{
    std::vector<int> lines;
    for (const ImportDoubt& doubt : doubtsAbout(trays)) {
        lines.push_back(doubt.line);
    }
    return lines;
}

TEST(ImportDoubts, FindsTheSlippedDecimalPointAmongTraysOfItsVariety)
{
    const auto doubts =
        doubtsAbout({weighed(2, 251.5), weighed(3, 265), weighed(4, 25.3), weighed(5, 240)});
    ASSERT_EQ(doubts.size(), 1U);
    EXPECT_EQ(doubts[0].line, 4);
    EXPECT_EQ(doubts[0].code, "X4");
    EXPECT_EQ(doubts[0].kind, ImportDoubtKind::WeightOfOthers);
    EXPECT_EQ(doubts[0].net, grams(25.3));
    // The median of 240, 251.5, 265 and 25.3 is 245.75, all from 30 g of seed.
    EXPECT_NEAR(inGrams(doubts[0].against), 245.75, 0.001);
}

TEST(ImportDoubts, JudgeByTheSeedSoThatASmallSowingIsNoSlip)
{
    EXPECT_THAT(
        doubtedLines({weighed(2, 250), weighed(3, 260), weighed(4, 255), weighed(5, 41, 5)}),
        IsEmpty());
    // Without its seed the same weight is judged by the others' weights alone.
    EXPECT_THAT(doubtedLines({weighed(2, 250), weighed(3, 260), weighed(4, 255),
                              weighed(5, 41, std::nullopt)}),
                ElementsAre(5));
}

TEST(ImportDoubts, ThinkOfOneVarietyAtATimeAndOfItsNameInAnyCase)
{
    EXPECT_THAT(doubtedLines({weighed(2, 30, 5, "Basil"), weighed(3, 300, 50, "basil"),
                              weighed(4, 31, 5, "BASIL"), weighed(5, 290), weighed(6, 300),
                              weighed(7, 2900), weighed(8, 310), weighed(9, 295)}),
                ElementsAre(7));
}

TEST(ImportDoubts, FallBackToTheSeedWhereOthersAreTooFew)
{
    const auto doubts = doubtsAbout({weighed(2, 1.234), weighed(3, 251.5), weighed(4, 2515)});
    ASSERT_EQ(doubts.size(), 2U);
    EXPECT_EQ(doubts[0].line, 2);
    EXPECT_EQ(doubts[0].kind, ImportDoubtKind::WeightOfSeed);
    EXPECT_EQ(doubts[0].against, grams(30));
    EXPECT_EQ(doubts[1].line, 4);
    // At the bounds themselves nothing is asked.
    EXPECT_THAT(doubtedLines({weighed(2, 6), weighed(3, 1800)}), IsEmpty());
    EXPECT_THAT(doubtedLines({weighed(2, 5.9), weighed(3, 1801)}), ElementsAre(2, 3));
    EXPECT_THAT(doubtedLines({weighed(2, 1, std::nullopt)}), IsEmpty());
}

TEST(ImportDoubts, AskAboutAYearMistyped)
{
    ImportedTray tray = weighed(2, 250);
    tray.harvested = tray.sown + 60;
    EXPECT_THAT(doubtedLines({tray}), IsEmpty());
    tray.harvested = tray.sown + 61;
    const auto doubts = doubtsAbout({tray});
    ASSERT_EQ(doubts.size(), 1U);
    EXPECT_EQ(doubts[0].kind, ImportDoubtKind::LongGrowth);
    EXPECT_EQ(doubts[0].days, 61);
}

TEST(ImportDoubts, AreNoneOfTraysThatStillGrow)
{
    ImportedTray tray = weighed(2, 250);
    tray.net.reset();
    tray.harvested.reset();
    EXPECT_THAT(doubtsAbout({tray, tray, tray, tray}), IsEmpty());
    EXPECT_THAT(doubtsAbout({}), IsEmpty());
}

} // namespace
} // namespace plumule
