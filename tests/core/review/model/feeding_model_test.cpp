#include "tests/core/review/comparison/comparison_samples.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace plumule {
namespace {

class FeedingModelTest : public testing::Test
{
protected:
    void feed(SeasonRecord& tray, bool isFed)
    {
        tray.use.waterings = 10;
        tray.nutrientWaterings = isFed ? 4 : 0;
    }

    void addTray(MediumId medium, bool isFed, double yield, int block = 0)
    {
        season.addTrays(medium, {yield}, {1}, TrialId{7});
        feed(season.facts.trays.back(), isFed);
        if (block > 0) {
            season.facts.trays.back().tray.block = block;
        }
    }

    static std::optional<TermPlace> placeOf(const TrayModel& answer, ModelPart part)
    {
        const ModelTerm* term = answer.model.find(part);
        return term == nullptr ? std::nullopt : std::optional(term->place);
    }
    // npk of R's datasets (Venables and Ripley 2002, Modern Applied Statistics with S, 6.7): peas
    // in six blocks. N stands for the medium, K for the feeding.
    void addPeas()
    {
        std::ifstream file(std::string(PLUMULE_REFERENCES) + "/npk.csv");
        std::string line;
        std::getline(file, line);
        while (std::getline(file, line)) {
            std::replace(line.begin(), line.end(), ',', ' ');
            std::istringstream cells(line);
            int block = 0;
            int n = 0;
            int p = 0;
            int k = 0;
            double yield = 0;
            ASSERT_TRUE(cells >> block >> n >> p >> k >> yield);
            addTray(n == 1 ? kMesh : kMix, k == 1, yield, block);
        }
    }

    ComparisonSamples season;
};

// The sums of squares are those of summary(aov(yield ~ block + N * P * K, npk)) in R: blocks 343.3,
// N 189.28, K 95.20, N:K 33.14, of 876.4 in all; what the model leaves out is its rest.
TEST_F(FeedingModelTest, ReproducesThePublishedPeas)
{
    addPeas();
    const TrayModel answer = season.model();
    EXPECT_EQ(placeOf(answer, ModelPart::Feeding), TermPlace::Fixed);
    const double rest = 876.365 - 343.295 - 189.282 - 95.202;
    const ModelTerm& medium = *answer.model.find(ModelPart::Medium);
    const ModelTerm& feeding = *answer.model.find(ModelPart::Feeding);
    EXPECT_EQ(medium.df2, 16);
    EXPECT_NEAR(*medium.f, 189.282 / (rest / 16), 2e-3);
    EXPECT_NEAR(*feeding.f, 95.202 / (rest / 16), 2e-3);
    EXPECT_NEAR(*answer.pairs.at(0).difference, 5.617, 5e-4) << "published effect of N";
}

TEST_F(FeedingModelTest, TakesFeedingOutOfTheMediumsDifference)
{
    // Feeding is worth 40, the mesh 10; the mesh was fed more often.
    for (const double noise : {-1.0, 1.0}) {
        addTray(kMix, false, 200 + noise);
        addTray(kMix, false, 200 - noise);
        addTray(kMix, true, 240 + noise);
        addTray(kMix, true, 240 - noise);
        addTray(kMesh, true, 250 + noise);
        addTray(kMesh, true, 250 - noise);
    }
    const TrayModel answer = season.model();
    EXPECT_NEAR(*answer.pairs.at(0).difference, 10, 1e-9);
    EXPECT_NEAR(*answer.means.at(0).mean, 220, 1e-9);
    EXPECT_NEAR(*answer.means.at(1).mean, 230, 1e-9);
}

TEST_F(FeedingModelTest, IsLeftOutWhereItIsTheMedium)
{
    for (const double yield : {250.0, 251.0, 253.0}) {
        addTray(kMix, false, yield);
        addTray(kMesh, true, yield + 20);
    }
    const TrayModel answer = season.model();
    EXPECT_EQ(answer.model.find(ModelPart::Feeding)->why, WhyLeftOut::Confounded);
    EXPECT_NEAR(*answer.pairs.at(0).difference, 20, 1e-9);
    // One tray fed by mistake is not enough to tell them apart by.
    feed(season.facts.trays[0], true);
    EXPECT_EQ(season.model().model.find(ModelPart::Feeding)->why, WhyLeftOut::Confounded);
    season.facts.trays[0].use.waterings.reset();
    EXPECT_EQ(season.model().model.find(ModelPart::Feeding)->why, WhyLeftOut::PartlyUnknown);
}

TEST_F(FeedingModelTest, IsNoPartWhereAllWereFedAlike)
{
    for (const double yield : {250.0, 251.0, 253.0}) {
        addTray(kMix, true, yield);
        addTray(kMesh, true, yield + 20);
    }
    EXPECT_EQ(season.model().model.find(ModelPart::Feeding), nullptr);
}

class SquareModelTest : public testing::Test
{
protected:
    // Rocket propellants in a Latin square of five (Montgomery, Design and Analysis of Experiments;
    // from memory): batches are the blocks, operators the columns.
    SquareModelTest()
    {
        for (int medium = 3; medium <= 5; ++medium) {
            season.facts.media[MediumId{medium}].id = {medium};
        }
        const std::vector<std::vector<std::pair<char, int>>> batches = {
            {{'A', 24}, {'B', 20}, {'C', 19}, {'D', 24}, {'E', 24}},
            {{'B', 17}, {'C', 24}, {'D', 30}, {'E', 27}, {'A', 36}},
            {{'C', 18}, {'D', 38}, {'E', 26}, {'A', 27}, {'B', 21}},
            {{'D', 26}, {'E', 31}, {'A', 26}, {'B', 23}, {'C', 22}},
            {{'E', 22}, {'A', 30}, {'B', 20}, {'C', 29}, {'D', 31}}};
        for (std::size_t row = 0; row < batches.size(); ++row) {
            for (std::size_t column = 0; column < batches[row].size(); ++column) {
                const auto& [medium, rate] = batches[row][column];
                season.addTrays({medium - 'A' + 1}, {double(rate)}, {1}, TrialId{7});
                SeasonRecord& tray = season.facts.trays.back();
                tray.tray.block = static_cast<int>(row) + 1;
                tray.column = static_cast<int>(column) + 1;
            }
        }
        season.facts.designs[TrialId{7}] = Design::LatinSquare;
    }
    ComparisonSamples season;
};

// Published: formulations 330, batches 68, operators 150, error 128 with 12 df; F 7.73, p 0.0025.
TEST_F(SquareModelTest, ReproducesThePublishedSquare)
{
    const TrayModel answer = season.model();
    const ModelTerm& medium = *answer.model.find(ModelPart::Medium);
    EXPECT_NEAR(*medium.f, 7.73, 5e-3);
    EXPECT_NEAR(*medium.p, 0.0025, 5e-5);
    EXPECT_EQ(medium.df2, 12);
    ASSERT_NE(answer.model.find(ModelPart::Column), nullptr);
    EXPECT_NEAR(*answer.model.find(ModelPart::Column)->f, 37.5 / (128.0 / 12), 1e-6);
    EXPECT_NEAR(*answer.model.find(ModelPart::Block)->f, 17.0 / (128.0 / 12), 1e-6);
    EXPECT_NEAR(answer.sd * answer.sd, 10.67, 5e-3);
}

TEST_F(SquareModelTest, AsksForTheColumnOfEveryTray)
{
    season.facts.trays[3].column.reset();
    EXPECT_EQ(season.model().model.find(ModelPart::Column), nullptr);
    season.facts.trays[3].column = 4;
    // Together with trays of no trial a place along a shelf is nothing.
    season.addTrays(kMix, {30, 31});
    EXPECT_EQ(season.model().model.find(ModelPart::Column), nullptr);
}

TEST(RandomTrial, HasNoBlocks)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 260, 255}, {1}, TrialId{7});
    season.addTrays(kMesh, {280, 270, 275}, {1}, TrialId{7});
    for (std::size_t i = 0; i < season.facts.trays.size(); ++i) {
        season.facts.trays[i].shelf = ShelfId{static_cast<int>(i % 2) + 1};
        season.facts.trays[i].tray.block = 1;
    }
    season.facts.designs[TrialId{7}] = Design::CompletelyRandom;
    EXPECT_EQ(season.model().model.find(ModelPart::Block), nullptr);
    EXPECT_EQ(season.model().model.find(ModelPart::Medium)->df2, 4);
    // A trial that was only named is judged by its shelves, as ever.
    season.facts.designs.clear();
    for (SeasonRecord& record : season.facts.trays) {
        record.tray.block.reset();
    }
    EXPECT_NE(season.model().model.find(ModelPart::Block), nullptr);
}

} // namespace
} // namespace plumule
