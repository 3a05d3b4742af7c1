#include "ui/trial/plan_text.h"

#include "tests/support/enumerators.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

const UnitText kMetric(UnitSystem::Metric);

// Four trays of each tell 30 g apart seven times in ten; six would do.
PlanOutlook outlook()
{
    PlanOutlook made;
    made.margin = 30;
    made.spread = 16;
    made.chosen = {4, 0.7, 0.7};
    made.enough = PowerAt{6, 0.84, 0.9};
    made.smallestDifference = 34.4;
    return made;
}

TEST(PlanText, SaysWhatThePlanShowsAndHowManyTraysWould)
{
    EXPECT_EQ(powerTitle(outlook(), kMetric), "Chance of telling 30 g apart");
    EXPECT_EQ(outlookWords(outlook(), kMetric).join('|'),
              "4 trays of each tell two media apart that differ by 30 g 70 times in 100.|6 of each "
              "would, 84 times in 100.|What this plan sees 4 times in 5 is a difference of 34 g.");
}

TEST(PlanText, SaysWhereFewerTraysWouldDoOrNoneWill)
{
    PlanOutlook made = outlook();
    made.smallestDifference.reset();
    made.chosen = {8, 0.93, 0.93};
    EXPECT_EQ(outlookWords(made, kMetric).last(), "6 of each would be enough for 80 in 100.");
    made.enough.reset();
    EXPECT_EQ(outlookWords(made, kMetric).last(),
              "No number of trays up to 500 of each would do so 80 times in 100.");
    made.enough = made.chosen;
    EXPECT_EQ(outlookWords(made, kMetric).size(), 1) << "it is the fewest already";
}

TEST(PlanText, OneTrayEachTellsNothing)
{
    PlanOutlook made = outlook();
    made.chosen = {1, 0, 0};
    EXPECT_EQ(outlookWords(made, kMetric).first(),
              "One tray of each can never tell a medium from chance.");
}

TEST(PlanText, ChancesAreNeverCertain)
{
    PlanOutlook made = outlook();
    made.chosen.power = 0.9999;
    EXPECT_TRUE(outlookWords(made, kMetric).first().contains(" 99 times in 100"));
    made.chosen.power = 0.0001;
    EXPECT_TRUE(outlookWords(made, kMetric).first().contains(" 1 times in 100"));
}

TEST(PlanText, OfOnePairAloneIsSaidWhereItDiffers)
{
    PlanOutlook made = outlook();
    made.chosen.powerOfOnePair = 0.72;
    EXPECT_FALSE(outlookWords(made, kMetric).join(' ').contains("only one pair"));
    made.chosen.powerOfOnePair = 0.85;
    EXPECT_TRUE(outlookWords(made, kMetric)
                    .contains("Were only one pair of media asked about, 85 in 100."));
}

TEST(PlanText, SaysWhereTheSpreadComesFrom)
{
    PlanOutlook made = outlook();
    EXPECT_EQ(spreadWords(made, kMetric),
              "16 g, a tenth of the mean: nothing here is grown twice alike");
    made.spreadFrom = SpreadFrom::Room;
    made.spreadTrays = 44;
    made.spread = 4.27;
    EXPECT_EQ(spreadWords(made, kMetric), "4.3 g, from 44 trays of all varieties here");
    made.isOfVariety = true;
    EXPECT_EQ(spreadWords(made, kMetric), "4.3 g, from 44 trays of this variety here");
    made.isOwnSpread = true;
    EXPECT_EQ(spreadWords(made, kMetric), "") << "the grower knows where";
    EXPECT_EQ(marginWords(made, kMetric), "");
    made.isDefaultMargin = true;
    EXPECT_EQ(marginWords(made, kMetric), "30 g, a tenth of the mean");
}

TEST(PlanText, NamesTellDesignsFeedingsAndStatesApart)
{
    EXPECT_EQ(nameOf(Feeding::AsProtocol), "");
    EXPECT_EQ(nameOf(Feeding::Nutrient), "+ nutrient");
    EXPECT_EQ(nameOf(Feeding::NoNutrient), "no nutrient");
    EXPECT_EQ(squareWords(Design::LatinSquare, 2, 3), "row 2, column 3");
    EXPECT_EQ(squareWords(Design::RandomizedBlocks, 2, 3), "");
    QStringList said;
    for (const auto& [design, name] : enumeratorsOf<Design>()) {
        TrialDraft draft;
        draft.plan.design = design;
        for (const QString& words : {nameOf(design), drawWords(draft)}) {
            EXPECT_FALSE(words.isEmpty()) << name;
            EXPECT_FALSE(said.contains(words)) << name;
            said << words;
        }
    }
    for (const auto& [state, name] : enumeratorsOf<TrialState>()) {
        EXPECT_FALSE(nameOf(state).isEmpty()) << name;
        EXPECT_FALSE(said.contains(nameOf(state))) << name;
        said << nameOf(state);
    }
}

TEST(PlanText, SuppliesAreNamedAndMeasuredByTheirKind)
{
    const auto named = [](SupplyKind kind, const char* name) {
        Supply supply;
        supply.kind = kind;
        supply.name = name;
        return nameOf(supply);
    };
    EXPECT_EQ(named(SupplyKind::Seed, "Cress L1"), "Seed, Cress L1");
    EXPECT_EQ(named(SupplyKind::LooseMix, "Coir"), "Coir");
    EXPECT_EQ(named(SupplyKind::Pieces, "Mesh"), "Mesh, clean pieces");
    EXPECT_EQ(named(SupplyKind::Concentrate, "Grow"), "Grow, whole trial");
    EXPECT_EQ(named(SupplyKind::Concentrate, ""), "Nutrient concentrate, whole trial");
    EXPECT_EQ(named(SupplyKind::Water, ""), "Water, whole trial");
    EXPECT_EQ(supplyText(SupplyKind::Seed, 120, kMetric), "120 g");
    EXPECT_EQ(supplyText(SupplyKind::LooseMix, 6, kMetric), kMetric.mixed(litres(6)));
    EXPECT_EQ(supplyText(SupplyKind::Concentrate, 76.8, kMetric), "76.8 mL");
    EXPECT_EQ(supplyText(SupplyKind::Pieces, 4, kMetric), "4");
}

} // namespace
} // namespace plumule::ui
