#include "ui/review/ageing_card.h"
#include "ui/review/payback_text.h"
#include "ui/review/verdict_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

Payback meshPayback()
{
    Payback payback;
    payback.medium.name = "Steel mesh";
    payback.against.name = "Coir mix";
    payback.at = 16;
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
}

TEST(AgeingWords, TellsAClearSlopeFromNone)
{
    PieceAgeing ageing;
    ageing.medium.name = "Steel mesh";
    ageing.trays = 38;
    ageing.pieces = 6;
    ageing.mostUses = 9;
    EXPECT_TRUE(ageingWords(ageing).contains("can't tell"));
    ageing.slope = -6.1;
    ageing.lower = -10.5;
    ageing.upper = -1.8;
    EXPECT_EQ(ageingWords(ageing).toStdString(),
              "Steel mesh yields 6.1 g a tray less with each further use (95% interval −10.5 to "
              "−1.8; 38 trays on 6 pieces, up to their use 9).");
    ageing.upper = 0.4;
    EXPECT_TRUE(ageingWords(ageing).contains("no ageing to be told"));
}

SeasonComparison openComparison(int needed)
{
    SeasonComparison comparison;
    comparison.means.resize(3);
    for (std::size_t i = 0; i < 3; ++i) {
        comparison.means[i].medium.name = std::string(1, static_cast<char>('A' + i));
        for (std::size_t j = 0; j < i; ++j) {
            MediaPair pair;
            pair.a = i;
            pair.b = j;
            pair.difference = 1;
            pair.lower = -20;
            pair.upper = 22;
            pair.verdict = PairVerdict::CantTellYet;
            pair.needed = TraysNeeded{needed, 0, 0, 5, SpreadFrom::TheseTrays};
            comparison.pairs.push_back(pair);
        }
    }
    return comparison;
}

TEST(VerdictWords, SaysAtOnceWhenNothingCanBeToldApart)
{
    SeasonComparison comparison = openComparison(25);
    EXPECT_EQ(verdictWords(comparison).headline,
              "None of the 3 media can be told apart yet; it takes about 25 trays of each.");
    EXPECT_TRUE(verdictWords(comparison).detail.contains("B and A can't be told apart yet"));
    comparison.pairs[1].verdict = PairVerdict::More;
    comparison.pairs[1].lower = 0.5;
    EXPECT_TRUE(verdictWords(comparison).headline.contains("out-yields"))
        << verdictWords(comparison).headline.toStdString();
}

} // namespace
} // namespace plumule::ui
