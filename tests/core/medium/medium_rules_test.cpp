#include "core/medium/medium_rules.h"

#include "core/medium/medium_reason.h"

#include <gtest/gtest.h>

#include <numeric>

namespace plumule {
namespace {

Medium soundMesh()
{
    Medium medium;
    medium.name = "Steel mesh";
    medium.form = MediumForm::Mesh;
    medium.isReusable = true;
    medium.plannedUses = 200;
    return medium;
}

Reason faultOf(const Medium& medium)
{
    const Done done = checkMedium(medium);
    return done ? Reason() : done.error().reason;
}

TEST(MediumRules, FormsSurviveTheirText)
{
    for (const MediumForm form : {MediumForm::LooseMix, MediumForm::Mat, MediumForm::Mesh}) {
        MediumForm read{};
        EXPECT_TRUE(fromText(toText(form), read));
        EXPECT_EQ(read, form);
    }
    MediumForm read{};
    EXPECT_FALSE(fromText("wool", read));
}

TEST(MediumRules, ALooseMixIsUsedOnce)
{
    EXPECT_EQ(faultOf(soundMesh()), Reason());
    Medium mix = soundMesh();
    mix.form = MediumForm::LooseMix;
    EXPECT_EQ(faultOf(mix), MediumReason::LooseMixReused);
}

TEST(MediumRules, OnlyReusableMediaHavePlannedUsesAndAtLeastOne)
{
    Medium medium = soundMesh();
    medium.plannedUses = 0;
    EXPECT_EQ(faultOf(medium), MediumReason::PlannedUses);
    medium.plannedUses = 5;
    medium.isReusable = false;
    EXPECT_EQ(faultOf(medium), MediumReason::PlannedUsesOfOneUse);
    medium.plannedUses.reset();
    EXPECT_EQ(faultOf(medium), Reason());
}

TEST(MediumRules, RefusesWhatHasNoNameOrNoMeasure)
{
    Medium medium = soundMesh();
    medium.name = "\t";
    EXPECT_EQ(faultOf(medium), MediumReason::NameMissing);
    medium = soundMesh();
    medium.surfaceBelowRim = -millimetres(1);
    EXPECT_EQ(faultOf(medium), MediumReason::SurfaceBelowRim);
    medium.surfaceBelowRim = Length{};
    EXPECT_EQ(faultOf(medium), Reason()) << "filled to the rim";
    medium.amountPerTray = Volume{};
    EXPECT_EQ(faultOf(medium), MediumReason::AmountPerTray);
    medium = soundMesh();
    medium.marker = kMarkers;
    EXPECT_EQ(faultOf(medium), MediumReason::Marker);
    medium.marker = -1;
    EXPECT_EQ(faultOf(medium), MediumReason::Marker);
}

TEST(MediumRules, MarkersAreGivenOutOneByOneThenShared)
{
    EXPECT_EQ(nextMarker({}), 0);
    EXPECT_EQ(nextMarker({0, 1, 3}), 2);
    EXPECT_EQ(nextMarker({0, 1, 2, 3, 4, 5, 6, 7}), 8);
    std::vector<int> all(kMarkers);
    std::iota(all.begin(), all.end(), 0);
    EXPECT_EQ(nextMarker(all), 0);
    all.push_back(0);
    EXPECT_EQ(nextMarker(all), 1);
}

TEST(MediumRules, AUsedPieceIsSanitisedAfterItsUse)
{
    const Moment used{date(2026, 3, 2), 480};
    EXPECT_FALSE(needsSanitising(std::nullopt, std::nullopt)) << "new from the shop";
    EXPECT_FALSE(needsSanitising(std::nullopt, used));
    EXPECT_TRUE(needsSanitising(used, std::nullopt));
    EXPECT_TRUE(needsSanitising(used, used + -1)) << "washed before it was used";
    EXPECT_FALSE(needsSanitising(used, used + 1));
}

} // namespace
} // namespace plumule
