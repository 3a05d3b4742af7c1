#include "core/tray/sowing_rules.h"

#include "core/tray/tray_reason.h"
#include "tests/core/tray/tray_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Moment kMorning{date(2026, 3, 2), 8 * 60};

void expectFault(const Done& checked, ErrorKind kind, Reason reason)
{
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().kind, kind);
    EXPECT_EQ(checked.error().reason, reason);
}

Medium reusableMesh()
{
    Medium medium = inertMat();
    medium.isReusable = true;
    return medium;
}

TEST(SowingRulesTest, TakesAPlainSowingOfSeveralTrays)
{
    SowingDraft draft;
    draft.count = 3;
    draft.places = {{1}, {2}};
    EXPECT_TRUE(checkSowing(draft, inertMat()));
    draft.pieces = {{1}, {2}, {3}};
    EXPECT_TRUE(checkSowing(draft, reusableMesh()));
}

TEST(SowingRulesTest, RefusesNoTraysAndFarTooMany)
{
    SowingDraft draft;
    for (const int count : {0, -1, kMostTraysAtOnce + 1}) {
        draft.count = count;
        expectFault(checkSowing(draft, inertMat()), ErrorKind::Invalid, TrayReason::Count);
    }
}

TEST(SowingRulesTest, RefusesPiecesThatAreNotOneATray)
{
    SowingDraft draft;
    draft.count = 2;
    draft.pieces = {{1}};
    expectFault(checkSowing(draft, reusableMesh()), ErrorKind::Invalid, TrayReason::PieceCount);
    draft.pieces.clear();
    expectFault(checkSowing(draft, reusableMesh()), ErrorKind::Invalid, TrayReason::PieceCount);
    draft.pieces = {{1}, {2}};
    expectFault(checkSowing(draft, inertMat()), ErrorKind::Invalid, TrayReason::PieceCount);
}

TEST(SowingRulesTest, RefusesTheSamePieceOrPlaceTwice)
{
    SowingDraft draft;
    draft.count = 2;
    draft.pieces = {{7}, {7}};
    expectFault(checkSowing(draft, reusableMesh()), ErrorKind::Conflict, TrayReason::PieceTwice);
    draft.pieces.clear();
    draft.places = {{4}, {4}};
    expectFault(checkSowing(draft, inertMat()), ErrorKind::Conflict, TrayReason::PlaceTwice);
}

TEST(SowingRulesTest, RefusesMorePlacesThanTrays)
{
    SowingDraft draft;
    draft.places = {{4}, {5}};
    expectFault(checkSowing(draft, inertMat()), ErrorKind::Invalid, TrayReason::PlaceCount);
}

TEST(SowingRulesTest, RefusesOneCodeForSeveralTraysAndABlankOne)
{
    SowingDraft draft;
    draft.code = "X1";
    EXPECT_TRUE(checkSowing(draft, inertMat()));
    draft.count = 2;
    expectFault(checkSowing(draft, inertMat()), ErrorKind::Invalid, TrayReason::CodeOfMany);
    draft.count = 1;
    draft.code = "  ";
    expectFault(checkSowing(draft, inertMat()), ErrorKind::Invalid, TrayReason::CodeMissing);
}

TEST(SowingRulesTest, RefusesSeedOfNothingAndABlockUnderOne)
{
    const auto sowing = [](std::optional<Mass> seed, std::optional<int> block) {
        SowingDraft draft;
        draft.seedPerTray = seed;
        draft.block = block;
        return checkSowing(draft, inertMat());
    };
    EXPECT_TRUE(sowing(std::nullopt, std::nullopt));
    EXPECT_TRUE(sowing(grams(25), 1));
    expectFault(sowing(grams(0), 1), ErrorKind::Invalid, TrayReason::Seed);
    expectFault(sowing(grams(-3), 1), ErrorKind::Invalid, TrayReason::Seed);
    expectFault(sowing(grams(25), 0), ErrorKind::Invalid, TrayReason::Block);
}

TEST(SowingRulesTest, TakesHeightsFromTheSurfaceToOneMetre)
{
    Height height;
    for (const double mm : {0.0, 45.0, 1000.0}) {
        height.reading = millimetres(mm);
        EXPECT_TRUE(checkHeight(height, inertMat())) << mm;
    }
    for (const double mm : {-1.0, 1001.0}) {
        height.reading = millimetres(mm);
        expectFault(checkHeight(height, inertMat()), ErrorKind::Invalid, TrayReason::HeightRange);
    }
}

TEST(SowingRulesTest, ARimReadingMayBeBelowTheRimButNotBelowTheSurface)
{
    Height height;
    height.from = ReadFrom::Rim;
    height.reading = millimetres(-20);
    EXPECT_TRUE(checkHeight(height, inertMat()));
    height.reading = millimetres(-21);
    expectFault(checkHeight(height, inertMat()), ErrorKind::Invalid, TrayReason::HeightRange);
    Medium unknown = inertMat();
    unknown.surfaceBelowRim.reset();
    height.reading = millimetres(-1);
    expectFault(checkHeight(height, unknown), ErrorKind::Invalid, TrayReason::HeightRange);
    height.reading = millimetres(1);
    EXPECT_TRUE(checkHeight(height, unknown));
}

class StartTest : public ::testing::Test
{
protected:
    void SetUp() override
    {
        stages = stagesFor(broccoli(), inertMat(), kMorning, FirstStage::AfterSoak);
        begin(1, kMorning + 3 * kDay);
    }
    void begin(std::size_t index, Moment at)
    {
        stages[index].startedOn = at.date;
        stages[index].startedMinute = at.minute;
    }

    Tray tray;
    std::vector<TrayStage> stages;
};

TEST_F(StartTest, AStartMayMoveBetweenItsNeighbours)
{
    begin(2, kMorning + 5 * kDay);
    EXPECT_TRUE(checkStart(tray, stages, Stage::Blackout, kMorning));
    EXPECT_TRUE(checkStart(tray, stages, Stage::Blackout, kMorning + 5 * kDay));
    EXPECT_TRUE(checkStart(tray, stages, Stage::UnderWeight, kMorning + -kDay));
}

TEST_F(StartTest, RefusesAStartBeforeTheStageBeforeOrAfterTheStageAfter)
{
    begin(2, kMorning + 5 * kDay);
    expectFault(checkStart(tray, stages, Stage::Blackout, kMorning + -1), ErrorKind::Invalid,
                TrayReason::StartOutOfOrder);
    expectFault(checkStart(tray, stages, Stage::Blackout, kMorning + (5 * kDay + 1)),
                ErrorKind::Invalid, TrayReason::StartOutOfOrder);
    expectFault(checkStart(tray, stages, Stage::UnderWeight, kMorning + 4 * kDay),
                ErrorKind::Invalid, TrayReason::StartOutOfOrder);
}

TEST_F(StartTest, RefusesAStartAfterTheTraysEnd)
{
    tray.endedOn = kMorning.date + 6;
    tray.endedMinute = kMorning.minute;
    EXPECT_TRUE(checkStart(tray, stages, Stage::Blackout, kMorning + 6 * kDay));
    expectFault(checkStart(tray, stages, Stage::Blackout, kMorning + (6 * kDay + 1)),
                ErrorKind::Invalid, TrayReason::StartOutOfOrder);
}

TEST_F(StartTest, RefusesAStageThatHasNotBegunOrIsNotThere)
{
    expectFault(checkStart(tray, stages, Stage::Light, kMorning + 4 * kDay), ErrorKind::Conflict,
                TrayReason::StageNotBegun);
    expectFault(checkStart(tray, stages, Stage::Soak, kMorning), ErrorKind::Conflict,
                TrayReason::StageNotBegun);
}

TEST_F(StartTest, SowingIsTheStartOfTheFirstStageAfterTheSoak)
{
    EXPECT_EQ(sowingOf(stages), kMorning);
    auto soaking = stagesFor(soaked(), inertMat(), kMorning, FirstStage::Soak);
    EXPECT_EQ(sowingOf(soaking), kMorning + 8 * 60);
    soaking[0].delayMinutes = 60;
    EXPECT_EQ(sowingOf(soaking), kMorning + 9 * 60);
}

TEST(TrayTextTest, StoredWordsAreReadBackAndOthersAreNot)
{
    for (const TrayState state : {TrayState::Growing, TrayState::Harvested, TrayState::Discarded}) {
        TrayState read{};
        EXPECT_TRUE(fromText(toText(state), read));
        EXPECT_EQ(read, state);
    }
    for (const ReadFrom from : {ReadFrom::Surface, ReadFrom::Rim}) {
        ReadFrom read{};
        EXPECT_TRUE(fromText(toText(from), read));
        EXPECT_EQ(read, from);
    }
    TrayState state = TrayState::Harvested;
    ReadFrom from = ReadFrom::Rim;
    EXPECT_FALSE(fromText("eaten", state));
    EXPECT_FALSE(fromText("Surface", from));
    EXPECT_EQ(state, TrayState::Harvested);
    EXPECT_EQ(from, ReadFrom::Rim);
}

} // namespace
} // namespace plumule
