#include "core/trial/trial_rules.h"

#include "core/trial/trial_reason.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(TrialRules, CodesAreNumberedOn)
{
    EXPECT_EQ(nextTrialCode({}), "T1");
    EXPECT_EQ(nextTrialCode({"T1", "T9", "T3"}), "T10");
    EXPECT_EQ(nextTrialCode({"T007"}), "T8");
}

TEST(TrialRules, CodesThatAreNoNumberCountForNothing)
{
    EXPECT_EQ(nextTrialCode({"spring", "T", "Tx", "X7", "T-5", "T1.5", "", "9"}), "T1");
}

// The journal takes t9 and T9 for one.
TEST(TrialRules, CodesCountInEitherLetterCase)
{
    EXPECT_EQ(nextTrialCode({"t9"}), "T10");
    EXPECT_EQ(nextTrialCode({"t1", "T2"}), "T3");
}

// A grower may type any code: one beyond all counting must not turn the next one round.
TEST(TrialRules, CodesBeyondCountingAreLeftAlone)
{
    EXPECT_EQ(nextTrialCode({"T9223372036854775807"}), "T1");
    EXPECT_EQ(nextTrialCode({"T2147483647", "T4"}), "T5");
    EXPECT_EQ(nextTrialCode({"T99999999"}), "T100000000");
    EXPECT_EQ(nextTrialCode({"T99999999", "T100000000"}), "T100000001");
}

TEST(TrialRules, ATrialNeedsANameAndAMarginThatMeansSomething)
{
    Trial trial;
    EXPECT_EQ(checkTrial(trial).error().reason, TrialReason::NameMissing);
    trial.name = " \t ";
    EXPECT_EQ(checkTrial(trial).error().reason, TrialReason::NameMissing);
    trial.name = "Mesh against mix";
    EXPECT_TRUE(checkTrial(trial));
    for (const double margin : {0.0, -0.001, -20.0}) {
        trial.margin = grams(margin);
        EXPECT_EQ(checkTrial(trial).error().reason, TrialReason::Margin) << margin;
    }
    trial.margin = grams(0.001);
    EXPECT_TRUE(checkTrial(trial));
}

} // namespace
} // namespace plumule
