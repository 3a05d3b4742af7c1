#include "tests/core/review/comparison/comparison_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Small offsets that sum to nothing, so that effects put in come out exactly.
const std::vector<double> kNoise = {-2, 1, 1};

std::vector<double> around(double mean)
{
    std::vector<double> values;
    for (const double noise : kNoise) {
        values.push_back(mean + noise);
    }
    return values;
}

TermPlace placeOf(const TrayModel& answer, ModelPart part)
{
    const ModelTerm* term = answer.model.find(part);
    EXPECT_NE(term, nullptr);
    return term == nullptr ? TermPlace::LeftOut : term->place;
}

void shelve(ComparisonSamples& season, const std::vector<int>& shelves)
{
    ASSERT_EQ(season.facts.trays.size(), shelves.size());
    for (std::size_t i = 0; i < shelves.size(); ++i) {
        season.facts.trays[i].shelf = ShelfId{shelves[i]};
    }
}

TEST(ComparisonModel, IsTheMediumAloneWhereNothingElseVaries)
{
    ComparisonSamples season;
    season.addTrays(kMix, around(250));
    season.addTrays(kMesh, around(260));
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.model.terms.size(), 1u);
    EXPECT_EQ(answer.model.terms[0].part, ModelPart::Medium);
    EXPECT_EQ(answer.model.terms[0].levels, 2);
    // Two groups of three, each with a variance of 3: t = 10 / √2.
    EXPECT_NEAR(*answer.model.terms[0].f, 50, 1e-9);
    EXPECT_NEAR(answer.sd, std::sqrt(3.0), 1e-9);
    EXPECT_EQ(answer.df, 4);
    EXPECT_TRUE(answer.checks.pWelch);
    EXPECT_EQ(answer.means[1].n, 3);
    EXPECT_NEAR(*answer.means[1].mean, 260, 1e-9);
}

TEST(ComparisonModel, AdjustsForVarietiesThatMediaHadUnlikeSharesOf)
{
    // Mesh is 10 g better on both, but grew more of the light variety.
    ComparisonSamples season;
    season.addTrays(kMix, around(250), {1});
    season.addTrays(kMesh, around(260), {1});
    season.addTrays(kMesh, around(260), {1});
    season.addTrays(kMix, around(400), {2});
    season.addTrays(kMix, around(400), {2});
    season.addTrays(kMesh, around(410), {2});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Variety), TermPlace::Fixed);
    EXPECT_NEAR(*answer.pairs[0].difference, 10, 1e-9);
    EXPECT_NEAR(*answer.means[0].mean, 325, 1e-9);
}

TEST(ComparisonModel, NeverAveragesTrialsRaw)
{
    // Mesh 10 g better in both trials; the rich trial had more mix.
    ComparisonSamples season;
    season.nameTrials(2);
    season.addTrays(kMix, around(200), {1}, TrialId{1});
    season.addTrays(kMesh, around(210), {1}, TrialId{1});
    season.addTrays(kMesh, around(210), {1}, TrialId{1});
    season.addTrays(kMix, around(300), {1}, TrialId{2});
    season.addTrays(kMix, around(300), {1}, TrialId{2});
    season.addTrays(kMesh, around(310), {1}, TrialId{2});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Trial), TermPlace::Fixed);
    EXPECT_EQ(answer.model.trials, 2);
    EXPECT_NEAR(*answer.pairs[0].difference, 10, 1e-9);
}

TEST(ComparisonModel, TakesTrialsAtRandomFromFiveOn)
{
    for (const int trials : {4, 5}) {
        ComparisonSamples season;
        season.nameTrials(trials);
        for (int trial = 1; trial <= trials; ++trial) {
            season.addTrays(kMix, around(250 + 12 * (trial % 3)), {1}, TrialId{trial});
            season.addTrays(kMesh, around(262 + 12 * (trial % 3)), {1}, TrialId{trial});
        }
        const TrayModel answer = season.model();
        EXPECT_EQ(placeOf(answer, ModelPart::Trial),
                  trials < 5 ? TermPlace::Fixed : TermPlace::Random);
        EXPECT_EQ(answer.model.trialSd.has_value(), trials == 5);
        EXPECT_NEAR(*answer.pairs[0].difference, 12, 1e-6);
        EXPECT_GT(*answer.pairs[0].lower, 0);
    }
}

TEST(ComparisonModel, SaysWhereTrialsDoNotDifferAtAll)
{
    ComparisonSamples season;
    season.nameTrials(5);
    for (int trial = 1; trial <= 5; ++trial) {
        season.addTrays(kMix, around(250), {1}, TrialId{trial});
        season.addTrays(kMesh, around(262), {1}, TrialId{trial});
    }
    const TrayModel answer = season.model();
    EXPECT_TRUE(answer.model.isTrialSpreadZero);
    EXPECT_EQ(answer.model.trialSd, 0.0);
}

TEST(ComparisonModel, TakesOutTheBlocksOfATrial)
{
    // Extra hours of sleep under two drugs, ten people as blocks (Student 1908, Biometrika 6:1;
    // R's `sleep`, as in references/sleep.csv), 100 added. Paired t 4.0621, p 0.002833, difference
    // 1.58, interval 0.7001 to 2.4599 (R 4: t.test(paired = TRUE)).
    ComparisonSamples season;
    season.nameTrials(1);
    season.addBlocks({1}, {100.7, 98.4, 99.8, 98.8, 99.9, 103.4, 103.7, 100.8, 100.0, 102.0},
                     {101.9, 100.8, 101.1, 100.1, 99.9, 104.4, 105.5, 101.6, 104.6, 103.4});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Block), TermPlace::Fixed);
    EXPECT_EQ(answer.model.block, BlockKind::BlockOfTrial);
    EXPECT_NEAR(*answer.model.terms[0].f, 4.0621 * 4.0621, 1e-3);
    const ModelPair& pair = answer.pairs[0];
    EXPECT_NEAR(*pair.difference, 1.58, 1e-9);
    EXPECT_NEAR(*pair.p, 0.002833, 1e-6);
    EXPECT_NEAR(*pair.lower, 0.7001142, 1e-6);
    EXPECT_NEAR(*pair.upper, 2.4598858, 1e-6);
}

TEST(ComparisonModel, BlocksOfSeveralTrialsStandForTheirTrials)
{
    ComparisonSamples season;
    season.nameTrials(2);
    season.addBlocks({1}, {250, 262, 241}, {260, 273, 250});
    season.addBlocks({2}, {300, 290, 307}, {311, 299, 317});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Block), TermPlace::Fixed);
    EXPECT_EQ(answer.model.find(ModelPart::Block)->levels, 6);
    EXPECT_EQ(answer.model.find(ModelPart::Trial)->why, WhyLeftOut::WithinBlocks);
    EXPECT_TRUE(answer.model.accountsFor(ModelPart::Trial));
    EXPECT_TRUE(answer.means[0].isEstimable);
    EXPECT_EQ(answer.df, 5);
}

TEST(ComparisonModel, TakesShelvesAsBlocksWhereTheyAreShared)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 251, 270, 272});
    season.addTrays(kMesh, {260, 262, 281, 280});
    shelve(season, {1, 1, 2, 2, 1, 1, 2, 2});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Block), TermPlace::Fixed);
    EXPECT_EQ(answer.model.block, BlockKind::Shelf);
    EXPECT_LT(answer.sd, 2);
}

TEST(ComparisonModel, LeavesOutAShelfThatIsOneWithTheMediumAndSaysSo)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 251, 270, 272});
    season.addTrays(kMesh, {260, 262, 281, 280});
    shelve(season, {1, 1, 1, 1, 2, 2, 2, 2});
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Block), TermPlace::LeftOut);
    EXPECT_EQ(answer.model.find(ModelPart::Block)->why, WhyLeftOut::Confounded);
    EXPECT_TRUE(answer.pairs[0].difference);
}

TEST(ComparisonModel, LeavesOutShelvesThatAreTooManyOrUnknown)
{
    ComparisonSamples season;
    season.addTrays(kMix, around(250));
    season.addTrays(kMesh, around(260));
    shelve(season, {1, 2, 3, 4, 5, 6});
    EXPECT_EQ(season.model().model.find(ModelPart::Block)->why, WhyLeftOut::TooFewTrays);
    for (std::size_t tray : {0u, 2u, 4u}) {
        season.facts.trays[tray].shelf.reset();
    }
    EXPECT_EQ(season.model().model.find(ModelPart::Block)->why, WhyLeftOut::PartlyUnknown);
}

TEST(ComparisonModel, TakesSeedDensityAsACovariateWhereItVaries)
{
    // 2 g more of yield for each g of seed; mesh was sown thicker.
    ComparisonSamples season;
    season.addTrays(kMix, {250, 253, 254, 259, 258});
    season.addTrays(kMesh, {264, 266, 270, 269, 273});
    const double seeds[] = {20, 21, 22, 24, 24, 22, 23, 24, 25, 26};
    for (std::size_t i = 0; i < season.facts.trays.size(); ++i) {
        season.facts.trays[i].tray.seed = grams(seeds[i]);
    }
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::SeedDensity), TermPlace::Fixed);
    EXPECT_EQ(answer.model.find(ModelPart::SeedDensity)->levels, 0);
    EXPECT_LT(*answer.pairs[0].difference, 13.6);
    season.facts.trays[0].tray.seed.reset();
    EXPECT_EQ(season.model().model.find(ModelPart::SeedDensity)->why, WhyLeftOut::PartlyUnknown);
    for (SeasonRecord& record : season.facts.trays) {
        record.tray.seed = grams(20);
    }
    EXPECT_EQ(season.model().model.find(ModelPart::SeedDensity), nullptr);
}

TEST(ComparisonModel, OneMediumHasAMeanAndNoPair)
{
    ComparisonSamples season;
    season.addTrays(kMix, around(250));
    const TrayModel answer = season.model();
    EXPECT_TRUE(answer.pairs.empty());
    ASSERT_EQ(answer.means.size(), 1u);
    EXPECT_NEAR(*answer.means[0].mean, 250, 1e-9);
    ComparisonSamples none;
    EXPECT_TRUE(none.model().means.empty());
}

} // namespace
} // namespace plumule
