#include "core/stats/verdict/media_answer.h"
#include "core/stats/verdict/sown_trays.h"
#include "core/stats/verdict/verdict_cases.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

std::vector<SownTray> twoVarieties()
{
    return verdicts::traysOf(verdicts::verdictCase("by_variety").at("input"));
}

TEST(ByVariety, StaysSilentWhereTheGateIsShut)
{
    std::vector<SownTray> trays = twoVarieties();
    for (SownTray& tray : trays) {
        // The second variety does as the first.
        for (const SownTray& other : twoVarieties()) {
            if (tray.variety == 1 && other.sowing == tray.sowing - 1 &&
                other.medium == tray.medium) {
                tray.value = *other.value * 1.5;
            }
        }
    }
    const MediaAnswer answer = answerOfSeries(trays, {});
    ASSERT_TRUE(answer.gate.has_value());
    EXPECT_FALSE(answer.gate->isOpen);
    EXPECT_NEAR(answer.gate->f, 0, 1e-9);
    for (const VarietyAnswer& variety : answer.byVariety) {
        for (const PairAnswer& pair : variety.pairs) {
            EXPECT_EQ(pair.why, NoVerdictReason::VarietiesAlike);
            EXPECT_TRUE(pair.interval().has_value());
        }
    }
}

TEST(ByVariety, LeavesTheAverageAsItIs)
{
    std::vector<SownTray> trays = twoVarieties();
    const MediaAnswer answer = answerOfSeries(trays, {});
    for (SownTray& tray : trays) {
        tray.variety = 0;
    }
    const MediaAnswer together = answerOfSeries(trays, {});
    EXPECT_FALSE(together.gate.has_value());
    EXPECT_EQ(answer.pairs, together.pairs);
}

TEST(ByVariety, NeedsTwoVarietiesOfTwoTrialsAndThreeTrialsForAVerdict)
{
    std::vector<SownTray> trays = twoVarieties();
    // Of the second variety (trials 2, 4, 6, 8) two trials are left, then one.
    std::erase_if(trays, [](const SownTray& tray) { return tray.variety == 1 && tray.sowing > 4; });
    const MediaAnswer two = answerOfSeries(trays, {});
    ASSERT_EQ(two.byVariety.size(), 2U);
    ASSERT_TRUE(two.gate->isOpen);
    EXPECT_EQ(two.byVariety[1].sowings, 2);
    EXPECT_EQ(two.byVariety[1].pairs[0].why, NoVerdictReason::FewSowings);
    EXPECT_FALSE(two.byVariety[0].pairs[0].why.has_value());
    std::erase_if(trays, [](const SownTray& tray) { return tray.variety == 1 && tray.sowing > 2; });
    EXPECT_FALSE(answerOfSeries(trays, {}).gate.has_value());
}

TEST(ByVariety, KeepsItsTongueWhereTheWholeDoes)
{
    VerdictAsk ask;
    ask.isFiltered = true;
    const MediaAnswer answer = answerOfSeries(twoVarieties(), ask);
    EXPECT_EQ(answer.byVariety.at(0).pairs.at(1).why, NoVerdictReason::Filtered);
}

} // namespace
} // namespace plumule::stats
