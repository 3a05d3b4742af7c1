#include "tests/core/review/planning/plan_samples.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace plumule {
namespace {

class PlanFairnessTest : public testing::Test
{
protected:
    PlanFairnessTest()
    {
        plan.facts.media.at(kMix).isNutrientBearing = true;
        plan.facts.cost.layout.room.trayLength = millimetres(500);
        plan.facts.cost.lots[SeedLotId{5}].lotNumber = "L5";
        ProtocolStage light;
        light.stage = Stage::Light;
        light.water = WaterKind::Nutrient;
        plan.facts.protocols[VarietyId{1}] = {light};
        plan.draft.plan.seedLot = SeedLotId{5};
        plan.draft.plan.seedPerTray = grams(25);
        plan.draft.plan.design = Design::RandomizedBlocks;
        plan.furnish(4, 4);
    }

    [[nodiscard]] const Finding* find(Aspect aspect)
    {
        findings = fairnessOfPlan(plan.draft, plan.facts);
        const auto found =
            std::find_if(findings.begin(), findings.end(),
                         [&](const Finding& finding) { return finding.aspect == aspect; });
        return found == findings.end() ? nullptr : &*found;
    }

    PlanSamples plan;
    std::vector<Finding> findings;
};

TEST_F(PlanFairnessTest, FindsBlocksOnShelvesAlike)
{
    plan.layOut({{0, 1}, {1, 0}, {0, 1}, {1, 0}});
    ASSERT_NE(find(Aspect::Shelf), nullptr);
    EXPECT_EQ(find(Aspect::Shelf)->confounding, Confounding::Alike);
    EXPECT_EQ(find(Aspect::SeedLot)->media.at(0).levels, (std::vector<AspectLevel>{{"L5", 4}}));
    EXPECT_EQ(find(Aspect::SeedDensity)->confounding, Confounding::Alike);
    EXPECT_EQ(find(Aspect::Season)->confounding, Confounding::Alike);
}

TEST_F(PlanFairnessTest, FindsAMediumWithAShelfOfItsOwn)
{
    plan.draft.plan.design = Design::CompletelyRandom;
    plan.layOut({{0, 0, 0, 0}, {1, 1, 1, 1}});
    ASSERT_NE(find(Aspect::Shelf), nullptr);
    EXPECT_EQ(find(Aspect::Shelf)->confounding, Confounding::Fully);
    EXPECT_FALSE(find(Aspect::Shelf)->isInModel);
    EXPECT_EQ(find(Aspect::Shelf)->media.at(0).levels.at(0).name, "A/1");
}

TEST_F(PlanFairnessTest, FindsFeedingMixedWithTheMediumByTheProtocol)
{
    plan.layOut({{0, 1}, {1, 0}, {0, 1}, {1, 0}});
    ASSERT_NE(find(Aspect::Feeding), nullptr);
    EXPECT_EQ(find(Aspect::Feeding)->confounding, Confounding::Fully);
    EXPECT_FALSE(find(Aspect::Feeding)->isInModel);
    // A protocol that feeds nowhere feeds neither.
    plan.facts.protocols[VarietyId{1}].at(0).water = WaterKind::PhSet;
    EXPECT_EQ(find(Aspect::Feeding)->confounding, Confounding::Alike);
}

TEST_F(PlanFairnessTest, FindsFeedingApartFromTheMediumWhereBothAreCrossed)
{
    plan.draft.treatments.clear();
    for (const MediumId medium : {kMix, kMesh}) {
        plan.addTreatment(medium, Feeding::Nutrient);
        plan.addTreatment(medium, Feeding::NoNutrient);
    }
    plan.layOut({{0, 1, 2, 3}, {3, 2, 1, 0}, {1, 0, 3, 2}});
    ASSERT_NE(find(Aspect::Feeding), nullptr);
    EXPECT_EQ(find(Aspect::Feeding)->confounding, Confounding::Alike);
}

TEST_F(PlanFairnessTest, SaysNothingOfWhatIsNotKnownBeforeSowing)
{
    plan.layOut({{0, 1}, {1, 0}});
    for (const Aspect aspect : {Aspect::DaysGrown, Aspect::PieceUses, Aspect::Person}) {
        EXPECT_EQ(find(aspect), nullptr);
    }
    for (PlannedTray& tray : plan.draft.trays) {
        tray.place.reset();
    }
    EXPECT_EQ(find(Aspect::Shelf), nullptr);
    plan.draft.trays.clear();
    EXPECT_TRUE(fairnessOfPlan(plan.draft, plan.facts).empty());
}

} // namespace
} // namespace plumule
