#include "core/review/model/model_plan.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Columns of so many trays on two media, with factors of so many levels in turn.
class ModelPlanTest : public testing::Test
{
protected:
    void grow(int trays)
    {
        m_trays = trays;
        columns.table = {};
        std::vector<std::optional<double>> values(static_cast<std::size_t>(trays), 1.0);
        ASSERT_TRUE(columns.table.addNumbers(column::kValue, values));
        ASSERT_TRUE(columns.table.addNumbers(column::kDensity, values));
        addFactor(column::kMedium, 2);
    }
    void addFactor(const char* name, int levels)
    {
        std::vector<std::string> cells;
        for (int tray = 0; tray < m_trays; ++tray) {
            cells.push_back(std::to_string(tray % levels));
        }
        ASSERT_TRUE(columns.table.addFactor(name, cells));
    }
    void addTrials(int trials)
    {
        columns.trials = trials;
        columns.trialLevels = trials;
        addFactor(column::kTrial, trials);
    }
    void addBlocks(BlockKind kind, int blocks)
    {
        columns.blockKind = kind;
        columns.blocks = blocks;
        addFactor(column::kBlock, blocks);
    }

    std::optional<TermPlace> placeOf(ModelPart part)
    {
        const ModelPlan plan = planModel(columns).plan;
        const auto found = plan.find(part);
        return found == plan.end() ? std::nullopt : std::optional(found->second);
    }
    std::optional<WhyLeftOut> whyNot(ModelPart part)
    {
        const auto left = planModel(columns).leftOut;
        const auto found = left.find(part);
        return found == left.end() ? std::nullopt : std::optional(found->second);
    }

    ComparisonColumns columns;

private:
    int m_trays = 0;
};

TEST_F(ModelPlanTest, IsTheMediumWhereNothingVaries)
{
    grow(6);
    columns.varieties = 1;
    columns.trialLevels = 1;
    columns.blocks = 1;
    const PlannedModel planned = planModel(columns);
    EXPECT_EQ(planned.plan, (ModelPlan{{ModelPart::Medium, TermPlace::Fixed}}));
    EXPECT_TRUE(planned.leftOut.empty());
}

TEST_F(ModelPlanTest, TrialsAreAtRandomFromFive)
{
    grow(20);
    addTrials(4);
    EXPECT_EQ(placeOf(ModelPart::Trial), TermPlace::Fixed);
    columns.trialLevels = 5; // and trays outside any
    EXPECT_EQ(placeOf(ModelPart::Trial), TermPlace::Fixed);
    grow(20);
    addTrials(5);
    EXPECT_EQ(placeOf(ModelPart::Trial), TermPlace::Random);
}

// Eight trays: two means leave six degrees of freedom, of which four shelves would take three.
TEST_F(ModelPlanTest, ShelvesTakeUpHalfOfWhatIsLeftAtMost)
{
    grow(8);
    addBlocks(BlockKind::Shelf, 4);
    EXPECT_EQ(placeOf(ModelPart::Block), TermPlace::Fixed);
    grow(8);
    addBlocks(BlockKind::Shelf, 5);
    EXPECT_EQ(placeOf(ModelPart::Block), TermPlace::LeftOut);
    EXPECT_EQ(whyNot(ModelPart::Block), WhyLeftOut::TooFewTrays);
    columns.blocks = 0;
    columns.isBlockPartlyUnknown = true;
    EXPECT_EQ(whyNot(ModelPart::Block), WhyLeftOut::PartlyUnknown);
}

TEST_F(ModelPlanTest, BlocksOfATrialAreItsDesignHoweverMany)
{
    grow(8);
    addTrials(1);
    addBlocks(BlockKind::BlockOfTrial, 4);
    EXPECT_EQ(placeOf(ModelPart::Block), TermPlace::Fixed);
    EXPECT_EQ(placeOf(ModelPart::Trial), std::nullopt);
}

TEST_F(ModelPlanTest, BlocksOfSeveralTrialsStandForTheTrials)
{
    grow(12);
    addTrials(3);
    addBlocks(BlockKind::BlockOfTrial, 6);
    EXPECT_EQ(placeOf(ModelPart::Block), TermPlace::Fixed);
    EXPECT_EQ(placeOf(ModelPart::Trial), TermPlace::LeftOut);
    EXPECT_EQ(whyNot(ModelPart::Trial), WhyLeftOut::WithinBlocks);
    grow(30);
    addTrials(5);
    addBlocks(BlockKind::BlockOfTrial, 10);
    EXPECT_EQ(placeOf(ModelPart::Block), TermPlace::Random) << "as their trials are";
    EXPECT_EQ(placeOf(ModelPart::Trial), TermPlace::Random);
    EXPECT_FALSE(whyNot(ModelPart::Trial));
}

TEST_F(ModelPlanTest, FeedingHasToVaryWithinAMediumAndBeKnown)
{
    grow(8);
    addFactor(column::kFeeding, 2);
    columns.variesInFeeding = true;
    EXPECT_EQ(whyNot(ModelPart::Feeding), WhyLeftOut::Confounded);
    columns.isFeedingWithinMedium = true;
    EXPECT_EQ(placeOf(ModelPart::Feeding), TermPlace::Fixed);
    columns.isFeedingPartlyUnknown = true;
    EXPECT_EQ(whyNot(ModelPart::Feeding), WhyLeftOut::PartlyUnknown);
}

// A column more than the rest leaves nothing to judge by: with two media and four columns five of
// so many trays are spent.
TEST_F(ModelPlanTest, ColumnsLeaveOneDegreeAtLeast)
{
    grow(6);
    columns.columns = 4;
    addFactor(column::kColumn, 4);
    EXPECT_EQ(placeOf(ModelPart::Column), TermPlace::Fixed);
    grow(5);
    addFactor(column::kColumn, 4);
    EXPECT_EQ(whyNot(ModelPart::Column), WhyLeftOut::TooFewTrays);
}

TEST_F(ModelPlanTest, SeedDensityAsksForThreeTraysOver)
{
    grow(5);
    columns.variesInDensity = true;
    EXPECT_EQ(placeOf(ModelPart::SeedDensity), TermPlace::Fixed);
    grow(4);
    EXPECT_EQ(whyNot(ModelPart::SeedDensity), WhyLeftOut::TooFewTrays);
    columns.isDensityPartlyUnknown = true;
    EXPECT_EQ(whyNot(ModelPart::SeedDensity), WhyLeftOut::PartlyUnknown);
}

TEST_F(ModelPlanTest, IsDescribedWithoutWhatIsLeftOut)
{
    const stats::ModelDescription description = describe({
        {ModelPart::Medium, TermPlace::Fixed},
        {ModelPart::Trial, TermPlace::Random},
        {ModelPart::Block, TermPlace::LeftOut},
        {ModelPart::SeedDensity, TermPlace::Fixed},
    });
    EXPECT_EQ(description.response, "value");
    EXPECT_EQ(description.terms, (std::vector<stats::TermColumns>{{"medium"}, {"density"}}));
    EXPECT_EQ(description.randomIntercepts, (std::vector<stats::TermColumns>{{"trial"}}));
}

TEST_F(ModelPlanTest, ACovariateHasNoLevels)
{
    grow(6);
    EXPECT_EQ(levelsOf(columns, ModelPart::Medium), 2);
    EXPECT_EQ(levelsOf(columns, ModelPart::SeedDensity), 0);
    EXPECT_EQ(levelsOf(columns, ModelPart::Column), 0) << "there is none";
}

} // namespace
} // namespace plumule
