#include "core/cost/cost.h"

#include "core/cost/missing_price.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kSown = date(2026, 3, 2);

Price priceOf(PriceItem item, double units, std::optional<MediumId> medium = std::nullopt,
              Date from = date(2026, 1, 1))
{
    return {{}, item, medium, from, money(units)};
}

// One rack, one shelf of four places, 60 W for 16 h a day; every price known.
CostFacts knownFacts()
{
    CostFacts facts;
    facts.layout.racks = {{{1}, "A", 0}};
    facts.layout.shelves = {{{1}, {1}, "1", 0, 60'000, 16 * 60}};
    for (int number = 1; number <= 4; ++number) {
        facts.layout.places.push_back({{number}, {1}, number});
    }
    facts.prices = {
        priceOf(PriceItem::Medium, 0.55, MediumId{1}),
        priceOf(PriceItem::Medium, 18, MediumId{2}),
        priceOf(PriceItem::Medium, 0.9, MediumId{3}),
        priceOf(PriceItem::Concentrate, 20),
        priceOf(PriceItem::Water, 0.004),
        priceOf(PriceItem::Electricity, 0.25),
        priceOf(PriceItem::Labour, 15),
        priceOf(PriceItem::Packaging, 0.3),
        priceOf(PriceItem::Washing, 0.25),
        priceOf(PriceItem::Waste, 0.1),
    };
    facts.labour = {
        {{1}, LabourKind::Sowing, 240},       {{2}, LabourKind::Watering, 20},
        {{3}, LabourKind::StageMove, 30},     {{4}, LabourKind::Harvesting, 180},
        {{5}, LabourKind::Packing, 120},      {{6}, LabourKind::ClearingOut, 60},
        {{7}, LabourKind::PieceWashing, 120},
    };
    WaterRecipe nutrient;
    nutrient.water = WaterKind::Nutrient;
    nutrient.dosePerLitre = millilitres(11.71875);
    facts.recipes = {nutrient};
    SeedLot lot;
    lot.id = {1};
    lot.bought = grams(1000);
    lot.price = money(32);
    facts.lots[lot.id] = lot;
    return facts;
}

Medium looseMix()
{
    Medium medium;
    medium.id = {1};
    medium.amountPerTray = litres(2);
    return medium;
}

Medium mesh()
{
    Medium medium;
    medium.id = {2};
    medium.form = MediumForm::Mesh;
    medium.isReusable = true;
    medium.plannedUses = 60;
    return medium;
}

TrayStage stageOf(Stage stage, int dayOffset)
{
    TrayStage row;
    row.stage = stage;
    row.startedOn = kSown + dayOffset;
    row.startedMinute = 420;
    return row;
}

// The check tray: sown on day 1, light from day 5, cut on the morning of day 13; sixteen waterings
// of 118 mL in the light. Common practice, no source.
struct CheckTray
{
    TrayRecord record;
    TrayFacts facts;

    explicit CheckTray(const Medium& medium = looseMix())
    {
        Tray& tray = record.tray;
        tray.sownOn = kSown;
        tray.sownMinute = 420;
        tray.seedLot = SeedLotId{1};
        tray.seed = grams(25);
        tray.state = TrayState::Harvested;
        tray.endedOn = kSown + 12;
        tray.endedMinute = 420;
        record.medium = medium;
        record.stages = {stageOf(Stage::UnderWeight, 0), stageOf(Stage::Blackout, 3),
                         stageOf(Stage::Light, 4)};
        facts.record = &record;
        facts.stays = {{{1}, {}, {2}, kSown, 420, kSown + 12, 420}};
        for (int i = 0; i < 16; ++i) {
            Watering watering;
            watering.on = kSown + 4 + i / 2;
            watering.slot = i % 2 == 0 ? Slot::Morning : Slot::Evening;
            watering.water = WaterKind::Nutrient;
            watering.amount = millilitres(118);
            facts.waterings.push_back(watering);
        }
        Harvest harvest;
        harvest.on = kSown + 12;
        harvest.net = grams(250);
        facts.harvests = {harvest};
        Residue residue;
        residue.net = grams(900);
        facts.residues = {residue};
    }
    CheckTray(const CheckTray&) = delete;
    CheckTray& operator=(const CheckTray&) = delete;
};

TEST(Cost, PaysBackAtTheUsesOfTheHandbookExample)
{
    // References handbook, section 6 (computed there): 18.00 a mesh, 1.10 a single-use filling.
    EXPECT_EQ(paybackUse(18.00, 1.10, 0.75), 52);
    EXPECT_EQ(paybackUse(18.00, 1.10, 0.375), 25);
}

TEST(Cost, PaysBackAtTheFirstUseThatIsNoDearer)
{
    for (const double washing : {0.05, 0.2, 0.375, 0.75, 0.9}) {
        const auto use = paybackUse(18.00, 1.10, washing);
        ASSERT_TRUE(use);
        EXPECT_LE(18.00 + washing * *use, 1.10 * *use + 1e-9);
        EXPECT_GT(18.00 + washing * (*use - 1), 1.10 * (*use - 1) + 1e-9);
    }
}

TEST(Cost, PaysBackAtAnExactQuotientWithoutOneUseMore)
{
    EXPECT_EQ(paybackUse(12.0, 1.1, 0.1), 12);
    EXPECT_EQ(paybackUse(4.2, 0.7, 0.0), 6);
}

TEST(Cost, NeverPaysBackWhenWashingAloneCostsAsMuch)
{
    EXPECT_EQ(paybackUse(18.00, 1.10, 1.10), std::nullopt);
    EXPECT_EQ(paybackUse(18.00, 1.10, 2.00), std::nullopt);
    EXPECT_EQ(paybackUse(0.0, 1.10, 0.5), 1);
    EXPECT_EQ(paybackUse(0.0, 0.5, 1.10), std::nullopt);
}

TEST(Cost, TakesThePriceThatHoldsOnTheDay)
{
    const std::vector<Price> prices = {
        priceOf(PriceItem::Water, 3, {}, date(2026, 3, 1)),
        priceOf(PriceItem::Water, 1, {}, date(2026, 1, 1)),
        priceOf(PriceItem::Water, 2, {}, date(2026, 2, 1)),
        priceOf(PriceItem::Labour, 9, {}, date(2025, 1, 1)),
        priceOf(PriceItem::Medium, 5, MediumId{1}, date(2026, 1, 1)),
    };
    const auto water = [&](Date day) { return priceOn(prices, PriceItem::Water, day); };
    EXPECT_EQ(water(date(2025, 12, 31)), std::nullopt);
    EXPECT_EQ(water(date(2026, 1, 1)), 1.0);
    EXPECT_EQ(water(date(2026, 2, 28)), 2.0);
    EXPECT_EQ(water(date(2030, 1, 1)), 3.0);
    EXPECT_EQ(priceOn(prices, PriceItem::Medium, kSown, MediumId{1}), 5.0);
    EXPECT_EQ(priceOn(prices, PriceItem::Medium, kSown, MediumId{2}), std::nullopt);
    EXPECT_EQ(priceOn(prices, PriceItem::Medium, kSown), std::nullopt);
}

// Litres and kilograms: NIST Handbook 44, appendix C.
TEST(Cost, APriceByASellersMeasureIsAPriceOfTheUnit)
{
    const std::pair<PriceMeasure, double> units[] = {
        {PriceMeasure::Unit, 1},
        {PriceMeasure::CubicMetre, 1000},
        {PriceMeasure::CubicFoot, 28.316846592},
        {PriceMeasure::UsQuart, 0.946352946},
        {PriceMeasure::UsGallon, 3.785411784},
        {PriceMeasure::ThousandUsGallons, 3785.411784},
        {PriceMeasure::UsFluidOunce, 0.0295735295625},
        {PriceMeasure::Pound, 0.45359237},
        {PriceMeasure::Ounce, 0.028349523125},
    };
    for (const auto& [measure, count] : units) {
        Price price = priceOf(PriceItem::Water, 12, {}, date(2026, 1, 1));
        price.measure = measure;
        EXPECT_NEAR(*priceOn({price}, PriceItem::Water, kSown), 12 / count, 1e-9 / count)
            << toText(measure);
        PriceMeasure read{};
        EXPECT_TRUE(fromText(toText(measure), read));
        EXPECT_EQ(read, measure);
    }
}

TEST(Cost, SaysWhichPriceIsMissingAndFromWhenItHolds)
{
    const CheckTray tray;
    CostFacts facts = knownFacts();
    const TrayUse use = useOf(tray.facts, facts.layout);
    EXPECT_TRUE(missingPrices(use, facts).empty());
    for (Price& price : facts.prices) {
        if (price.item == PriceItem::Medium && price.medium == MediumId{1}) {
            price.from = kSown + 5;
        }
    }
    std::erase_if(facts.prices, [](const Price& price) {
        return price.item == PriceItem::Labour || price.item == PriceItem::Washing;
    });
    const std::vector<MissingPrice> expected = {{PriceItem::Medium, kSown + 5},
                                                {PriceItem::Labour, std::nullopt}};
    EXPECT_EQ(missingPrices(use, facts), expected) << "a loose mix is not washed";
}

TEST(Cost, SaysWhatItsSeedLacks)
{
    const CheckTray tray;
    CostFacts facts = knownFacts();
    TrayUse use = useOf(tray.facts, facts.layout);
    EXPECT_TRUE(seedLacks(use, facts).empty());
    SeedLot& lot = facts.lots.at(*use.seedLot);
    lot.price.reset();
    EXPECT_EQ(seedLacks(use, facts), std::vector<SeedLack>{SeedLack::LotPrice});
    lot.bought = Mass{};
    use.seed.reset();
    EXPECT_EQ(seedLacks(use, facts),
              (std::vector<SeedLack>{SeedLack::LotPrice, SeedLack::LotWeight, SeedLack::Seed}));
    use.seedLot.reset();
    EXPECT_EQ(seedLacks(use, facts), (std::vector<SeedLack>{SeedLack::Lot, SeedLack::Seed}));
}

TEST(Cost, OfALooseMixTrayIsTheSumOfItsParts)
{
    const CheckTray tray;
    const TrayCost cost = costOf(useOf(tray.facts, knownFacts().layout), knownFacts());
    EXPECT_NEAR(cost.seed.value(), 32.0 * 25 / 1000, 1e-12);
    EXPECT_NEAR(cost.medium.value(), 2 * 0.55, 1e-12);
    EXPECT_EQ(cost.washing, 0.0);
    // 1.888 L at 11.71875 mL/L is 22.125 mL of concentrate at 20.00 a litre.
    EXPECT_NEAR(cost.nutrient.value(), 0.022125 * 20, 1e-12);
    EXPECT_NEAR(cost.water.value(), 1.888 * 0.004, 1e-12);
    // 60 W over four places, 16 h a day for eight days: 1.92 kWh.
    EXPECT_NEAR(cost.light.value(), 1.92 * 0.25, 1e-12);
    // 4 + 16 × ⅓ + 2 × ½ + 3 + 2 + 1 minutes at 15.00 an hour.
    EXPECT_NEAR(cost.labour.value(), (4 + 16.0 / 3 + 1 + 3 + 2 + 1) / 60 * 15, 1e-12);
    EXPECT_NEAR(cost.packaging.value(), 0.3, 1e-12);
    EXPECT_NEAR(cost.waste.value(), 0.09, 1e-12);
    EXPECT_EQ(cost.unknownParts(), 0);
    EXPECT_NEAR(cost.total(),
                0.8 + 1.1 + 0.4425 + 0.007552 + 0.48 + (16 + 1.0 / 3) / 4 + 0.3 + 0.09, 1e-9);
}

TEST(Cost, OfAPieceIsSpreadOverItsPlannedUsesAndCarriesItsWashing)
{
    const CheckTray tray(mesh());
    const TrayCost cost = costOf(useOf(tray.facts, knownFacts().layout), knownFacts());
    EXPECT_NEAR(cost.medium.value(), 18.0 / 60, 1e-12);
    // 0.25 of sanitiser and 2 minutes at 15.00 an hour.
    EXPECT_NEAR(cost.washing.value(), 0.75, 1e-12);
}

TEST(Cost, OfASingleUseMatIsItsWholePrice)
{
    Medium mat;
    mat.id = {3};
    mat.form = MediumForm::Mat;
    const CheckTray tray(mat);
    EXPECT_NEAR(costOf(useOf(tray.facts, knownFacts().layout), knownFacts()).medium.value(), 0.9,
                1e-12);
}

TEST(Cost, IsTakenAtThePricesOfTheDayOfSowing)
{
    CostFacts facts = knownFacts();
    facts.prices.push_back(priceOf(PriceItem::Packaging, 9, {}, kSown));
    facts.prices.push_back(priceOf(PriceItem::Waste, 9, {}, kSown + 1));
    const CheckTray tray;
    const TrayCost cost = costOf(useOf(tray.facts, facts.layout), facts);
    EXPECT_NEAR(cost.packaging.value(), 9, 1e-12);
    EXPECT_NEAR(cost.waste.value(), 0.09, 1e-12);
}

TEST(Cost, WithoutAnyPriceIsUnknownAndNotNothing)
{
    const CheckTray tray(mesh());
    CostFacts facts = knownFacts();
    facts.prices.clear();
    facts.lots.clear();
    const TrayCost cost = costOf(useOf(tray.facts, facts.layout), facts);
    EXPECT_EQ(cost.total(), 0);
    EXPECT_EQ(cost.unknownParts(), 9);
}

// Takes one thing away and names the part that is unknown then; every other part stays.
struct Gap
{
    const char* name;
    void (*take)(CheckTray&, CostFacts&);
    std::optional<double> TrayCost::*part;
};

class CostGap : public testing::TestWithParam<Gap>
{};

TEST_P(CostGap, LeavesOutOnlyThePartThatNobodyKnows)
{
    const auto parts = {&TrayCost::seed,      &TrayCost::medium, &TrayCost::washing,
                        &TrayCost::nutrient,  &TrayCost::water,  &TrayCost::light,
                        &TrayCost::packaging, &TrayCost::labour, &TrayCost::waste};
    CheckTray tray;
    CostFacts facts = knownFacts();
    GetParam().take(tray, facts);
    const TrayCost cost = costOf(useOf(tray.facts, facts.layout), facts);
    for (const auto part : parts) {
        EXPECT_EQ((cost.*part).has_value(), part != GetParam().part);
    }
    EXPECT_EQ(cost.unknownParts(), 1);
}

void takePrice(CostFacts& facts, PriceItem item)
{
    std::erase_if(facts.prices, [&](const Price& price) { return price.item == item; });
}

INSTANTIATE_TEST_SUITE_P(
    Each, CostGap,
    testing::Values(
        Gap{"Lot", [](CheckTray& tray, CostFacts&) { tray.record.tray.seedLot.reset(); },
            &TrayCost::seed},
        Gap{"SeedMass", [](CheckTray& tray, CostFacts&) { tray.record.tray.seed.reset(); },
            &TrayCost::seed},
        Gap{"LotPrice",
            [](CheckTray&, CostFacts& facts) { facts.lots.begin()->second.price.reset(); },
            &TrayCost::seed},
        Gap{"LotMass",
            [](CheckTray&, CostFacts& facts) { facts.lots.begin()->second.bought.reset(); },
            &TrayCost::seed},
        Gap{"AmountPerTray",
            [](CheckTray& tray, CostFacts&) { tray.record.medium.amountPerTray.reset(); },
            &TrayCost::medium},
        Gap{"Dose", [](CheckTray&, CostFacts& facts) { facts.recipes[0].dosePerLitre.reset(); },
            &TrayCost::nutrient},
        Gap{"Concentrate",
            [](CheckTray&, CostFacts& facts) { takePrice(facts, PriceItem::Concentrate); },
            &TrayCost::nutrient},
        Gap{"MistedAmount", [](CheckTray& tray, CostFacts&) { tray.facts.waterings.push_back({}); },
            &TrayCost::water},
        Gap{"Lamp",
            [](CheckTray&, CostFacts& facts) { facts.layout.shelves[0].lightMilliwatts.reset(); },
            &TrayCost::light},
        Gap{"LampHours",
            [](CheckTray&, CostFacts& facts) { facts.layout.shelves[0].lightMinutes.reset(); },
            &TrayCost::light},
        Gap{"Place", [](CheckTray& tray, CostFacts&) { tray.facts.stays.clear(); },
            &TrayCost::light},
        Gap{"LightStart",
            [](CheckTray& tray, CostFacts&) {
                tray.record.stages.push_back(tray.record.stages.back());
                tray.record.stages.back().startedOn.reset();
            },
            &TrayCost::light},
        Gap{"Task",
            [](CheckTray&, CostFacts& facts) {
                facts.labour.pop_back();
                facts.labour.pop_back();
            },
            &TrayCost::labour},
        Gap{"Wage", [](CheckTray&, CostFacts& facts) { takePrice(facts, PriceItem::Labour); },
            &TrayCost::labour},
        Gap{"Residue", [](CheckTray& tray, CostFacts&) { tray.facts.residues.clear(); },
            &TrayCost::waste}),
    [](const auto& gap) { return gap.param.name; });

TEST(Cost, OfATrayWithoutOneWateringOnRecordLeavesWaterAndItsWorkUnknown)
{
    CheckTray tray;
    tray.facts.waterings.clear();
    const TrayCost cost = costOf(useOf(tray.facts, knownFacts().layout), knownFacts());
    EXPECT_FALSE(cost.water);
    EXPECT_FALSE(cost.nutrient);
    EXPECT_FALSE(cost.labour);
}

TEST(Cost, OfAGrowingTrayCountsOnlyWhatHasHappened)
{
    CheckTray tray;
    tray.record.tray.state = TrayState::Growing;
    tray.record.tray.endedOn.reset();
    tray.facts.harvests.clear();
    tray.facts.residues.clear();
    tray.facts.waterings.resize(4);
    tray.facts.stays[0].toOn.reset();
    tray.facts.waterings.back().minute = 420;
    const TrayCost cost = costOf(useOf(tray.facts, knownFacts().layout), knownFacts());
    EXPECT_EQ(cost.packaging, 0.0);
    EXPECT_EQ(cost.waste, 0.0);
    // In light from day 5, 07:00; last watered on day 6, 07:00.
    EXPECT_NEAR(cost.light.value(), 0.06 * 16 / 4 * 0.25, 1e-12);
    EXPECT_NEAR(cost.labour.value(), (4 + 4.0 / 3 + 1) / 60 * 15, 1e-12);
}

TEST(Cost, NothingWateredNeedsNoPriceOfWater)
{
    CheckTray tray;
    tray.record.tray.state = TrayState::Growing;
    tray.facts.waterings.clear();
    CostFacts facts = knownFacts();
    takePrice(facts, PriceItem::Water);
    takePrice(facts, PriceItem::Concentrate);
    const TrayCost cost = costOf(useOf(tray.facts, facts.layout), facts);
    EXPECT_EQ(cost.water, 0.0);
    EXPECT_EQ(cost.nutrient, 0.0);
}

} // namespace
} // namespace plumule
