#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/trial/trial_fixture.h"

#include "core/tray/tray_reason.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::SizeIs;

using TrialPreparationTest = TrialTest;

TEST_F(TrialPreparationTest, ThePreparationAddsUpByHand)
{
    const Preparation needs = journal->trials().preparation(drawnBeds()).value();
    ASSERT_THAT(needs.supplies, SizeIs(6));
    const auto expectSupply = [&](std::size_t i, SupplyKind kind, const std::string& name,
                                  double needed, std::optional<double> inStock,
                                  std::optional<double> cost) {
        const Supply& supply = needs.supplies[i];
        EXPECT_EQ(supply.kind, kind) << i;
        EXPECT_EQ(supply.name, name);
        EXPECT_NEAR(supply.needed, needed, 1e-9) << name;
        EXPECT_EQ(supply.inStock, inStock) << name;
        ASSERT_EQ(supply.cost.has_value(), cost.has_value()) << name;
        EXPECT_NEAR(supply.cost.value_or(0), cost.value_or(0), 1e-9) << name;
        EXPECT_FALSE(supply.isShort()) << name;
    };
    // 12 trays × 10 g, of 1000 g for 20.00.
    expectSupply(0, SupplyKind::Seed, "Cress L1", 120, 1000, 2.4);
    expectSupply(1, SupplyKind::LooseMix, "Test mix", 6, std::nullopt, 3);
    // 4 pieces of 18.00 over 20 uses.
    expectSupply(2, SupplyKind::Pieces, "Test mesh", 4, 5, 3.6);
    expectSupply(3, SupplyKind::LooseMix, "Test peat", 8, std::nullopt, 2);
    // Mix and mesh: 8 trays × 6 days × 200 mL = 9.6 L at 8 mL/L, 12.50 a litre.
    expectSupply(4, SupplyKind::Concentrate, "Grow", 76.8, std::nullopt, 0.96);
    // All: 12 trays × (2 days × 2 × 50 mL + 6 × 200 mL) = 16.8 L at 0.01.
    expectSupply(5, SupplyKind::Water, "", 16.8, std::nullopt, 0.168);
    EXPECT_EQ(needs.trays, 12);
    EXPECT_EQ(needs.placesFree, 16);
    EXPECT_NEAR(needs.cost, 2.4 + 3 + 3.6 + 2 + 0.96 + 0.168, 1e-9);
    EXPECT_EQ(needs.currency, "EUR");
}

TEST_F(TrialPreparationTest, ThePreparationFollowsFeedingSeedAndStock)
{
    TrialDraft draft = beds();
    draft.treatments[1] = treated(mix, Feeding::NoNutrient);
    draft.treatments[2].feeding = Feeding::Nutrient;
    draft.plan.seedPerTray = grams(100);
    Preparation needs = journal->trials().preparation(draft).value();
    ASSERT_THAT(needs.supplies, SizeIs(5));
    EXPECT_NEAR(needs.supplies[0].needed, 1200, 1e-9);
    EXPECT_TRUE(needs.supplies[0].isShort());
    EXPECT_NEAR(needs.supplies[1].needed, 12, 1e-9) << "both treatments on mix, 8 trays";
    // Mix as the protocol says and peat fed: 8 trays × 1.2 L × 8 mL/L.
    EXPECT_NEAR(needs.supplies[3].needed, 76.8, 1e-9);

    draft = beds();
    draft.plan.seedLot.reset();
    ASSERT_TRUE(
        journal->media().retirePiece(journal->media().pieces(mesh.id).value()[0].piece.id, "torn"));
    ASSERT_TRUE(
        journal->media().retirePiece(journal->media().pieces(mesh.id).value()[0].piece.id, "torn"));
    needs = journal->trials().preparation(draft).value();
    EXPECT_EQ(needs.supplies[0].name, "Cress");
    EXPECT_EQ(needs.supplies[0].inStock, 1000);
    EXPECT_FALSE(needs.supplies[0].cost) << "no lot, no price";
    EXPECT_TRUE(needs.supplies[2].isShort()) << "three clean pieces for four trays";
    EXPECT_NEAR(needs.cost, 3 + 3.6 + 2 + 0.96 + 0.168, 1e-9);
    draft.plan.variety = {99};
    EXPECT_EQ(journal->trials().preparation(draft).error().kind, ErrorKind::NotFound);
}

TEST_F(TrialPreparationTest, OfWhatHasNoPriceTheRestIsSummed)
{
    const auto prices = journal->costs().prices().value();
    for (const Price& price : prices) {
        if (price.item == PriceItem::Concentrate || price.medium == peat.id) {
            ASSERT_TRUE(journal->costs().removePrice(price.id));
        }
    }
    const Preparation needs = journal->trials().preparation(drawnBeds()).value();
    EXPECT_FALSE(needs.supplies.at(3).cost) << "peat";
    EXPECT_FALSE(needs.supplies.at(4).cost) << "concentrate";
    EXPECT_NEAR(needs.cost, 2.4 + 3 + 3.6 + 0.168, 1e-9);
}

TEST_F(TrialPreparationTest, APieceThatIsInUseOrUnwashedIsNotInStock)
{
    const auto pieces = journal->media().pieces(mesh.id).value();
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.medium = mesh.id;
    sowing.pieces = {pieces[0].piece.id};
    sowing.at = clock.now();
    const auto sownOnMesh = journal->trays().sow(sowing);
    ASSERT_TRUE(sownOnMesh);
    const auto meshesInStock = [&] {
        return journal->trials().preparation(beds()).value().supplies.at(2).inStock;
    };
    EXPECT_EQ(meshesInStock(), 4);
    ASSERT_TRUE(journal->trays().discard(sownOnMesh->front(), "mould", clock.now()));
    EXPECT_EQ(meshesInStock(), 4) << "to be washed first";
    ASSERT_TRUE(journal->media().sanitise({pieces[0].piece.id}, "hot water"));
    EXPECT_EQ(meshesInStock(), 5);
}

TEST_F(TrialPreparationTest, WithoutASeedWeightThereIsNoSeedToBuy)
{
    Protocol protocol = journal->varieties().protocol(cress).value();
    protocol.variety.seedPerTray.reset();
    ASSERT_TRUE(journal->varieties().save(protocol));
    const Preparation needs = journal->trials().preparation(beds()).value();
    EXPECT_EQ(needs.supplies.at(0).kind, SupplyKind::LooseMix);
}

TEST_F(TrialPreparationTest, AMediumThatIsNotStoredIsRefused)
{
    TrialDraft draft = beds();
    draft.treatments[1].medium = {99};
    EXPECT_TRUE(journal->trials().preparation(draft).error().is(TrayReason::MediumUnknown));
}

} // namespace
} // namespace plumule
