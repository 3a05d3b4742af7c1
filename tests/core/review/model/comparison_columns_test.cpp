#include "core/review/model/comparison_columns.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

class ComparisonColumnsTest : public testing::Test
{
protected:
    ComparisonColumns columns()
    {
        return columnsOf(season.facts, comparedTrays(season.facts, season.filter, {}));
    }
    SeasonRecord& record(std::size_t tray) { return season.facts.trays[tray]; }
    void feed(std::size_t tray, bool isFed)
    {
        record(tray).use.waterings = 8;
        record(tray).nutrientWaterings = isFed ? 3 : 0;
    }

    ComparisonSamples season;
};

TEST_F(ComparisonColumnsTest, AreARowATrayByMedium)
{
    season.addTrays(kMesh, {260}, {1}, TrialId{7});
    season.addTrays(kMix, {250, 251}, {2});
    const ComparisonColumns found = columns();
    EXPECT_EQ(found.table.rows(), 3u);
    EXPECT_EQ(found.table.numbers(column::kValue)->values,
              (std::vector<std::optional<double>>{250, 251, 260}));
    const auto codesOf = [&](const char* name) {
        std::vector<std::size_t> codes;
        for (const auto& code : found.table.factor(name)->codes) {
            codes.push_back(code.value());
        }
        return codes;
    };
    EXPECT_EQ(codesOf(column::kMedium), (std::vector<std::size_t>{0, 0, 1}));
    EXPECT_EQ(codesOf(column::kVariety), (std::vector<std::size_t>{0, 0, 1}));
    EXPECT_EQ(found.varieties, 2);
    EXPECT_EQ(found.trials, 1);
    EXPECT_EQ(found.trialLevels, 2) << "trays outside any trial are a level";
}

TEST_F(ComparisonColumnsTest, OfNoTraysAreEmpty)
{
    const ComparisonColumns none = columns();
    EXPECT_EQ(none.table.rows(), 0u);
    EXPECT_EQ(none.blocks, 0);
    EXPECT_EQ(none.columns, 0);
    EXPECT_FALSE(none.variesInFeeding || none.variesInDensity || none.isBlockPartlyUnknown);
}

TEST_F(ComparisonColumnsTest, FeedingIsWithinAMediumFromTwoTraysEachWay)
{
    season.addTrays(kMix, {250, 251, 252, 253});
    season.addTrays(kMesh, {260, 261});
    for (std::size_t i = 0; i < 6; ++i) {
        feed(i, i >= 3);
    }
    EXPECT_TRUE(columns().variesInFeeding);
    EXPECT_FALSE(columns().isFeedingWithinMedium) << "one of four was fed, perhaps by mistake";
    feed(2, true);
    EXPECT_TRUE(columns().isFeedingWithinMedium);
    EXPECT_FALSE(columns().isFeedingPartlyUnknown);
    record(5).use.waterings.reset();
    EXPECT_TRUE(columns().isFeedingPartlyUnknown);
    record(5).hasStages = true; // then by what they plan
    EXPECT_FALSE(columns().isFeedingPartlyUnknown);
}

TEST_F(ComparisonColumnsTest, SeedVariesWithinAVarietyByMoreThanAScalesSlip)
{
    season.addTrays(kMix, {250, 251}, {1});
    season.addTrays(kMesh, {260, 261}, {2});
    const auto sow = [&](double first, double second, double third, double fourth) {
        const double seeds[] = {first, second, third, fourth};
        for (std::size_t i = 0; i < 4; ++i) {
            record(i).tray.seed = grams(seeds[i]);
        }
    };
    sow(20, 20, 40, 40);
    EXPECT_FALSE(columns().variesInDensity) << "peas are always sown heavier";
    sow(20, 20.2, 40, 40);
    EXPECT_FALSE(columns().variesInDensity) << "one part in a hundred";
    sow(20, 20.3, 40, 40);
    EXPECT_TRUE(columns().variesInDensity);
    EXPECT_FALSE(columns().isDensityPartlyUnknown);
    // 20 g on 508 by 254 mm.
    EXPECT_NEAR(columns().table.numbers(column::kDensity)->values[0].value(), 155.0003, 1e-3);
    record(3).tray.seed.reset();
    EXPECT_TRUE(columns().isDensityPartlyUnknown);
    EXPECT_FALSE(columns().table.numbers(column::kDensity)->values[3]);
    season.facts.cost.layout.room.trayWidth = millimetres(0);
    EXPECT_FALSE(columns().table.numbers(column::kDensity)->values[0]) << "grams on nothing";
}

TEST_F(ComparisonColumnsTest, ABlockIsOneWithinItsTrial)
{
    season.nameTrials(2);
    season.addBlocks({1}, {250, 251}, {260, 261});
    season.addBlocks({2}, {270, 271}, {280, 281});
    ComparisonColumns found = columns();
    EXPECT_EQ(found.blockKind, BlockKind::BlockOfTrial);
    EXPECT_EQ(found.blocks, 4);
    for (SeasonRecord& tray : season.facts.trays) {
        tray.shelf = ShelfId{3};
    }
    found = columns();
    EXPECT_EQ(found.blockKind, BlockKind::Shelf) << "what several trials share";
    EXPECT_EQ(found.blocks, 1);
    record(0).shelf.reset();
    EXPECT_EQ(columns().blocks, 2) << "not known is a level, while most are";
}

TEST_F(ComparisonColumnsTest, ShelvesOfWhichHalfAreUnknownAreNone)
{
    season.addTrays(kMix, {250, 251});
    season.addTrays(kMesh, {260, 261});
    record(0).shelf = ShelfId{1};
    record(2).shelf = ShelfId{2};
    EXPECT_EQ(columns().blocks, 0);
    EXPECT_TRUE(columns().isBlockPartlyUnknown);
    record(0).shelf.reset();
    record(2).shelf.reset();
    EXPECT_FALSE(columns().isBlockPartlyUnknown) << "of none it is no part";
}

TEST_F(ComparisonColumnsTest, ATrialLeftToChanceHasNoBlocks)
{
    season.addBlocks({7}, {250, 251}, {260, 261});
    season.facts.designs[TrialId{7}] = Design::CompletelyRandom;
    EXPECT_EQ(columns().blocks, 0);
    season.facts.designs[TrialId{7}] = Design::RandomizedBlocks;
    EXPECT_EQ(columns().blocks, 2);
}

TEST_F(ComparisonColumnsTest, PlacesAlongTheShelfAreThoseOfOneWholeSquare)
{
    season.addBlocks({7}, {250, 251}, {260, 261});
    for (std::size_t i = 0; i < 4; ++i) {
        record(i).column = static_cast<int>(i % 2) + 1;
    }
    EXPECT_EQ(columns().columns, 2);
    record(3).column.reset();
    EXPECT_EQ(columns().columns, 0);
    EXPECT_EQ(columns().table.factor(column::kColumn), nullptr);
}

} // namespace
} // namespace plumule
