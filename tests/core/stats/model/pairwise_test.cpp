#include "core/stats/model/pairwise.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"
#include "core/stats/samples/two_samples.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;
using plumule::ErrorKind;

namespace {

using reference::Grouped;
using reference::Table;

Grouped sweetPotatoTrial()
{
    return reference::grouped(Table("handbook/stat_data/sweetpotato_crd.csv"), "yield", "virus");
}

double tukeyP(const Grouped& trial, const GroupPairs& pairs, const std::string& a,
              const std::string& b)
{
    for (const GroupPair& pair : pairs.pairs)
        if ((trial.levels[pair.i] == a && trial.levels[pair.j] == b) ||
            (trial.levels[pair.i] == b && trial.levels[pair.j] == a))
            return pair.pTukey;
    ADD_FAILURE() << "no pair " << a << ' ' << b;
    return -1;
}

std::string lettersOf(const Grouped& trial, const std::string& level)
{
    const GroupPairs pairs = allGroupPairs(trial.values).value();
    return tukeyLetters(trial.values, pairs)[trial.indexOf(level)];
}

} // namespace

// As printed with the sweet potato data: critical q 4.5, least difference 12.4, letters a, ab, bc,
// c from the highest mean down.
TEST(Tukey, GivesTheSweetPotatoItsLetters)
{
    const Grouped trial = sweetPotatoTrial();
    const GroupPairs pairs = allGroupPairs(trial.values).value();
    EXPECT_NEAR(pairs.criticalQ, 4.53, 0.005);
    EXPECT_NEAR(pairs.criticalQ * std::sqrt(oneWayAnova(trial.values).value().msWithin / 3), 12.400,
                0.0005);
    EXPECT_EQ(lettersOf(trial, "oo"), "a");
    EXPECT_EQ(lettersOf(trial, "ff"), "ab");
    EXPECT_EQ(lettersOf(trial, "cc"), "bc");
    EXPECT_EQ(lettersOf(trial, "fc"), "c");
}

// The same with rows 4, 5 and 7 dropped, Tukey-Kramer, printed to three or four decimals.
TEST(Tukey, AgreesOnTheUnbalancedSweetPotato)
{
    Grouped trial = sweetPotatoTrial();
    auto& fc = trial.values[trial.indexOf("fc")];
    auto& ff = trial.values[trial.indexOf("ff")];
    fc.erase(fc.begin(), fc.begin() + 2);
    ff.erase(ff.begin());
    const GroupPairs pairs = allGroupPairs(trial.values).value();
    EXPECT_NEAR(tukeyP(trial, pairs, "cc", "fc"), 0.3165, 5e-5);
    EXPECT_NEAR(tukeyP(trial, pairs, "cc", "ff"), 0.2974, 5e-5);
    EXPECT_NEAR(tukeyP(trial, pairs, "cc", "oo"), 0.0961, 5e-5);
    EXPECT_NEAR(tukeyP(trial, pairs, "fc", "ff"), 0.0714, 5e-5);
    EXPECT_NEAR(tukeyP(trial, pairs, "fc", "oo"), 0.0334, 5e-5);
    EXPECT_NEAR(tukeyP(trial, pairs, "ff", "oo"), 0.8849, 5e-5);
    // A group of one has no spread of its own to compare with.
    for (const GroupPair& pair : pairs.pairs)
        EXPECT_EQ(pair.welch.has_value(),
                  pair.i != trial.indexOf("fc") && pair.j != trial.indexOf("fc"));
}

TEST(Tukey, IsThePooledTForTwoGroups)
{
    const std::vector<std::vector<double>> groups = {{3, 5, 4.5}, {6, 7.5, 8, 5}};
    const GroupPairs pairs = allGroupPairs(groups).value();
    ASSERT_EQ(pairs.pairs.size(), 1U);
    const GroupPair& pair = pairs.pairs.front();
    const TEstimate pooled = pooledT(groups[1], groups[0]).value();
    EXPECT_NEAR(pair.test.t, pooled.t, 1e-13);
    EXPECT_NEAR(pair.pTukey, pooled.p, 1e-13);
    EXPECT_NEAR(pair.lowerTukey, pooled.lower, 1e-10);
    EXPECT_NEAR(pair.upperTukey, pooled.upper, 1e-10);
    EXPECT_EQ(pair.pHolm, pair.test.p);
    ASSERT_TRUE(pair.welch);
    const TEstimate welch = welchT(groups[1], groups[0]).value();
    EXPECT_NEAR(pair.welch->pGamesHowell, welch.p, 1e-13);
    EXPECT_NEAR(pair.welch->lowerGamesHowell, welch.lower, 1e-10);
}

// Dunnett 1955 blood counts: t 0.857 and 3.694, p .6201 and .0058, intervals -1.256 to 2.556 and
// 0.840 to 4.416, as two independent programs give them.
TEST(Dunnett, AgreesWithTheBloodCounts)
{
    const Grouped trial =
        reference::grouped(Table("handbook/stat_data/dunnett1955_blood.csv"), "y", "group");
    const GroupsAgainstControl all =
        groupsAgainstControl(trial.values, trial.indexOf("control")).value();
    ASSERT_EQ(all.comparisons.size(), 2U);
    const auto& a = all.comparisons[0];
    const auto& b = all.comparisons[1];
    EXPECT_NEAR(a.test.t, 0.857, 0.0005);
    EXPECT_NEAR(b.test.t, 3.694, 0.0005);
    EXPECT_NEAR(a.pDunnett, 0.62010, 5e-6);
    EXPECT_NEAR(b.pDunnett, 0.00583, 5e-6);
    EXPECT_NEAR(a.lower, -1.256, 0.0005);
    EXPECT_NEAR(a.upper, 2.556, 0.0005);
    EXPECT_NEAR(b.lower, 0.840, 0.0005);
    EXPECT_NEAR(b.upper, 4.416, 0.0005);
}

// Cochran and Cox 1957, scab disease: control with 8 plots, six treatments with 4. No p values were
// readable; whatever they are, they lie between the single comparison's and Bonferroni's.
TEST(Dunnett, LiesBetweenOneComparisonAndBonferroni)
{
    const Grouped trial =
        reference::grouped(Table("handbook/stat_data/cochran_scab_crd.csv"), "inf", "trt");
    const std::size_t control = trial.indexOf("O");
    ASSERT_EQ(trial.values[control].size(), 8U);
    const GroupsAgainstControl all = groupsAgainstControl(trial.values, control).value();
    ASSERT_EQ(all.comparisons.size(), 6U);
    for (const GroupAgainstControl& comparison : all.comparisons) {
        EXPECT_GT(comparison.pDunnett, comparison.test.p);
        EXPECT_LE(comparison.pDunnett, std::min(1.0, 6 * comparison.test.p));
        EXPECT_LT(comparison.lower, comparison.test.lower);
        EXPECT_GT(comparison.upper, comparison.test.upper);
        // The interval misses 0 exactly when p is below 0.05.
        EXPECT_EQ(comparison.pDunnett<0.05, comparison.lower> 0 || comparison.upper < 0);
    }
    EXPECT_GT(all.criticalTwoSided, all.criticalOneSided);
}

TEST(Dunnett, IsTheTTestForOneTreatment)
{
    const std::vector<std::vector<double>> groups = {{1, 2, 3.5}, {4, 4.5, 6}};
    const GroupsAgainstControl all = groupsAgainstControl(groups, 1).value();
    ASSERT_EQ(all.comparisons.size(), 1U);
    EXPECT_LT(all.comparisons[0].test.estimate, 0);
    EXPECT_NEAR(all.comparisons[0].pDunnett, all.comparisons[0].test.p, 1e-14);
    EXPECT_NEAR(all.comparisons[0].lower, all.comparisons[0].test.lower, 1e-10);
    EXPECT_GT(all.comparisons[0].pDunnettGreater, 0.9);
}

TEST(Pairs, SayWhatIsWrongInsteadOfANumber)
{
    const std::vector<std::vector<double>> flat = {{1, 1}, {2, 2}};
    const std::vector<std::vector<double>> fine = {{1, 2}, {2, 4}};
    EXPECT_EQ(allGroupPairs(flat).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(allGroupPairs(fine, 0).error().subject, "level");
    EXPECT_EQ(groupsAgainstControl(fine, 2).error().subject, "control");
    EXPECT_EQ(groupsAgainstControl(flat, 0).error().kind, ErrorKind::NotEstimable);
}

TEST(Pairs, LeaveOutWhatTwoFlatGroupsCannotTell)
{
    const std::vector<std::vector<double>> groups = {{1, 1}, {2, 2}, {3, 5}};
    const GroupPairs pairs = allGroupPairs(groups).value();
    EXPECT_FALSE(pairs.pairs[0].welch);
    EXPECT_FALSE(pairs.pairs[0].cohensD);
    ASSERT_TRUE(pairs.pairs[1].welch);
    EXPECT_EQ(pairs.pairs[1].welch->test.df, 1);
    EXPECT_GT(pairs.pairs[0].test.se, 0);
}

TEST(Adjustment, KeepsOrderAndStaysBelowOne)
{
    EXPECT_EQ(bonferroniAdjusted({0.01, 0.6}), (std::vector<double>{0.02, 1}));
    // Benjamini and Hochberg by hand: 0.01*3/1, 0.03*3/2, 0.04*3/3, the larger never below.
    const std::vector<double> stepUp = benjaminiHochbergAdjusted({0.04, 0.01, 0.03});
    EXPECT_NEAR(stepUp[0], 0.04, 1e-15);
    EXPECT_NEAR(stepUp[1], 0.03, 1e-15);
    EXPECT_NEAR(stepUp[2], 0.04, 1e-15);
    EXPECT_TRUE(benjaminiHochbergAdjusted({}).empty());
}

TEST(HedgesFactor, IsCloseToItsCommonApproximation)
{
    EXPECT_NEAR(hedgesFactor(2), 1 / std::sqrt(std::acos(-1.0)), 1e-14);
    EXPECT_NEAR(hedgesFactor(40), 1 - 3.0 / (4 * 40 - 1), 2e-5);
}
