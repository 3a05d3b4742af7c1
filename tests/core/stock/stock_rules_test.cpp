#include "core/stock/stock_rules.h"

#include "core/stock/stock_reason.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kToday = date(2026, 3, 30);
constexpr VarietyId kRadish{1};
constexpr VarietyId kPea{2};
constexpr SeedLotId kOldLot{11};
constexpr SeedLotId kNewLot{12};
constexpr MediumId kCoir{21};
constexpr MediumId kMat{22};
constexpr MediumId kMesh{23};

SeedLotStock lot(SeedLotId id, VarietyId variety, std::optional<double> left)
{
    SeedLotStock stock;
    stock.lot.id = id;
    stock.lot.variety = variety;
    stock.lot.lotNumber = "L" + std::to_string(id.value);
    stock.left = left ? std::optional(grams(*left)) : std::nullopt;
    return stock;
}

SownTray sown(int daysAgo, SeedLotId from, double seed, MediumId medium = kCoir)
{
    return {{kToday - daysAgo, 480}, kRadish, from, medium, grams(seed)};
}

// Radish from two lots, a loose mix, a mat and a mesh.
StockFacts facts()
{
    StockFacts facts;
    facts.varieties[kRadish].name = "Radish";
    facts.varieties[kRadish].seedPerTray = grams(30);
    facts.varieties[kPea].name = "Pea";
    facts.everBought = {kRadish};
    facts.lots = {lot(kOldLot, kRadish, 40), lot(kNewLot, kRadish, 500)};
    Medium coir;
    coir.id = kCoir;
    coir.name = "Coir mix";
    coir.amountPerTray = litres(2);
    Medium mat;
    mat.id = kMat;
    mat.name = "Wood mat";
    mat.form = MediumForm::Mat;
    Medium mesh;
    mesh.id = kMesh;
    mesh.name = "Mesh";
    mesh.form = MediumForm::Mesh;
    mesh.isReusable = true;
    mesh.plannedUses = 2;
    facts.media = {coir, mesh, mat};
    return facts;
}

StockItem itemOf(StockItemId id, const char* name, StockKind kind, StockUnit unit)
{
    StockItem item;
    item.id = id;
    item.name = name;
    item.kind = kind;
    item.unit = unit;
    return item;
}

void addCoirCount(StockFacts& facts, int daysAgo, double left, StockEvent what)
{
    if (facts.supplies.empty()) {
        StockItem coir = itemOf({31}, "Coir mix", StockKind::Medium, StockUnit::Millilitre);
        coir.medium = kCoir;
        facts.supplies = {coir};
    }
    facts.counts.push_back({{static_cast<std::int64_t>(facts.counts.size()) + 1},
                            {31},
                            kToday - daysAgo,
                            600,
                            what,
                            asStock(litres(left)),
                            {}});
}

const StockLine& line(const std::vector<StockLine>& lines, const std::string& name)
{
    const auto found = std::find_if(lines.begin(), lines.end(),
                                    [&](const StockLine& each) { return each.item.name == name; });
    EXPECT_NE(found, lines.end()) << name;
    return *found;
}

TEST(StockRules, ALotLastsAtTheVarietysRateOfFourWeeks)
{
    StockFacts given = facts();
    // 280 g in 28 days: 10 g a day, 140 g of it from the lot before.
    given.sown = {sown(20, kOldLot, 140), sown(3, kNewLot, 140), sown(28, kOldLot, 999)};
    std::sort(given.sown.begin(), given.sown.end(),
              [](const SownTray& a, const SownTray& b) { return a.at < b.at; });
    const auto lines = seedLines(given, kToday);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_FALSE(lines[0].daysLeft) << "not the lot in hand";
    ASSERT_TRUE(lines[1].daysLeft);
    EXPECT_DOUBLE_EQ(*lines[1].daysLeft, 50);
    EXPECT_EQ(lines[1].low, Low::No);
    EXPECT_TRUE(lowThings(given, kToday).empty());
}

TEST(StockRules, SeedRunsLowByAllLotsOfAVariety)
{
    StockFacts given = facts();
    given.sown = {sown(20, kOldLot, 1400)}; // 50 g a day, 540 g left: 10.8 days
    auto low = lowThings(given, kToday);
    ASSERT_EQ(low.size(), 1U);
    EXPECT_EQ(low[0].name, "Radish");
    EXPECT_EQ(low[0].why, Low::Days);
    EXPECT_NEAR(*low[0].daysLeft, 10.8, 1e-9);
    given.seedLows[kRadish] = {{1}, kRadish, 10, {}};
    EXPECT_TRUE(lowThings(given, kToday).empty()) << "the grower wants ten days";
    given.seedLows[kRadish].amount = grams(600);
    EXPECT_EQ(lowThings(given, kToday).at(0).why, Low::Amount);
}

TEST(StockRules, MorePlannedThanLeftIsLow)
{
    StockFacts given = facts();
    given.planned = {{kToday + 3, kRadish, kNewLot, kCoir, std::nullopt, 20}};
    const auto lines = seedLines(given, kToday);
    EXPECT_EQ(lines[1].planned, grams(600));
    EXPECT_EQ(lines[1].thenLeft(), grams(-100));
    EXPECT_EQ(lowThings(given, kToday).at(0).why, Low::Planned);
    given.planned[0].on = kToday + kPlanDays + 1;
    EXPECT_TRUE(lowThings(given, kToday).empty()) << "beyond the days that are looked at";
    given.planned[0].on = kToday - kPlanDays - 1;
    EXPECT_TRUE(lowThings(given, kToday).empty()) << "given up long ago";
}

TEST(StockRules, AnUnweighedOrNeverBoughtSeedIsNotSaidToBeLow)
{
    StockFacts given = facts();
    given.lots = {lot(kNewLot, kRadish, std::nullopt)};
    given.sown = {sown(2, kNewLot, 300)};
    EXPECT_TRUE(lowThings(given, kToday).empty());
    given.lots.clear();
    ASSERT_EQ(lowThings(given, kToday).size(), 1U) << "all its lots are used up";
    EXPECT_EQ(lowThings(given, kToday)[0].why, Low::None);
    given.everBought.clear();
    EXPECT_TRUE(lowThings(given, kToday).empty()) << "lots are not written down here";
}

TEST(StockRules, AWeakLotIsMarked)
{
    StockFacts given = facts();
    given.lots[0].lot.germinationPercent = kWeakGerminationPercent - 1;
    given.lots[1].lot.germinationPercent = kWeakGerminationPercent;
    const auto lines = seedLines(given, kToday);
    EXPECT_TRUE(lines[0].isWeak);
    EXPECT_FALSE(lines[1].isWeak);
}

TEST(StockRules, WhatTraysTookSinceTheLastCountIsTakenOff)
{
    StockFacts given = facts();
    addCoirCount(given, 30, 5, StockEvent::Counted);
    addCoirCount(given, 10, 40, StockEvent::Counted);
    addCoirCount(given, 5, 20, StockEvent::Bought);
    given.sown = {sown(20, kOldLot, 30), sown(10, kOldLot, 30), sown(3, kNewLot, 30),
                  sown(2, kNewLot, 30, kMat)};
    given.sown[1].at.minute = 599; // before the count of that day
    const auto lines = supplyLines(given, kToday);
    const StockLine& coir = line(lines, "Coir mix");
    EXPECT_EQ(coir.usedSince, asStock(litres(2))) << "one tray since the count";
    EXPECT_EQ(coir.left, asStock(litres(58)));
    ASSERT_TRUE(coir.daysLeft);
    EXPECT_NEAR(*coir.daysLeft, 58 / (6.0 / 28), 1e-6) << "three trays in four weeks";
    EXPECT_EQ(coir.countedOn, kToday - 10);
    EXPECT_FALSE(line(lines, "Wood mat").left) << "never counted";
    EXPECT_EQ(lines.size(), 2U) << "a mesh is told by its pieces";
}

TEST(StockRules, APlanTakesMediumToo)
{
    StockFacts given = facts();
    addCoirCount(given, 1, 10, StockEvent::Counted);
    given.planned = {{kToday + 1, kRadish, kNewLot, kCoir, std::nullopt, 6}};
    const auto lines = supplyLines(given, kToday);
    const StockLine& coir = line(lines, "Coir mix");
    EXPECT_EQ(coir.planned, asStock(litres(12)));
    EXPECT_EQ(coir.thenLeft(), asStock(litres(-2)));
    EXPECT_EQ(coir.low, Low::Planned);
}

TEST(StockRules, ConcentrateIsTakenByTheWaterGiven)
{
    StockFacts given = facts();
    WaterRecipe recipe;
    recipe.water = WaterKind::Nutrient;
    recipe.concentrate = "Feed";
    recipe.dosePerLitre = millilitres(8);
    given.recipes = {recipe};
    given.supplies = {itemOf({41}, "Feed", StockKind::Concentrate, StockUnit::Millilitre)};
    given.counts = {{{1}, {41}, kToday - 7, 0, StockEvent::Counted, asStock(millilitres(100)), {}}};
    given.given = {{{kToday - 3, 430}, WaterKind::Nutrient, litres(2)},
                   {{kToday - 2, 430}, WaterKind::Plain, litres(9)}};
    EXPECT_EQ(line(supplyLines(given, kToday), "Feed").left, asStock(millilitres(84)));
}

TEST(StockRules, PackagingAndSanitiserAreTakenByCutsAndPieces)
{
    StockFacts given = facts();
    StockItem tubs = itemOf({51}, "Tubs", StockKind::Packaging, StockUnit::Piece);
    tubs.eachUse = pieces(4);
    StockItem acid = itemOf({52}, "peroxide", StockKind::Sanitiser, StockUnit::Millilitre);
    acid.eachUse = asStock(millilitres(50));
    given.supplies = {tubs, acid};
    given.counts = {{{1}, {51}, kToday - 7, 0, StockEvent::Counted, pieces(20), {}},
                    {{2}, {52}, kToday - 7, 0, StockEvent::Counted, asStock(litres(1)), {}}};
    given.cuts = {{kToday - 8, 500}, {kToday - 2, 500}, {kToday - 1, 500}};
    given.sanitised = {{{1}, {1}, kToday - 1, 500, {"peroxide"}},
                       {{2}, {1}, kToday - 1, 600, {"hot water"}}};
    const auto lines = supplyLines(given, kToday);
    EXPECT_EQ(line(lines, "Tubs").left, pieces(12));
    EXPECT_EQ(line(lines, "peroxide").left, asStock(millilitres(950)));
}

TEST(StockRules, WhatTraysDontTellIsJudgedBetweenCounts)
{
    StockFacts given = facts();
    given.supplies = {itemOf({61}, "pH down", StockKind::Other, StockUnit::Millilitre)};
    const auto counted = [](std::int64_t id, int ago, double left) {
        return StockCount{
            {id}, {61}, kToday - ago, 0, StockEvent::Counted, asStock(millilitres(left)), {}};
    };
    given.counts = {counted(1, 30, 300), counted(2, 10, 200)};
    const auto lines = supplyLines(given, kToday);
    const StockLine& acid = line(lines, "pH down");
    EXPECT_EQ(acid.left, asStock(millilitres(200))) << "as it was counted";
    EXPECT_FALSE(acid.usedSince);
    EXPECT_NEAR(*acid.daysLeft, 200 / 5.0 - 10, 1e-9) << "5 mL a day, counted ten days ago";
}

TEST(StockRules, NothingIsLeftRatherThanLess)
{
    StockFacts given = facts();
    addCoirCount(given, 5, 1, StockEvent::Counted);
    given.sown = {sown(1, kNewLot, 30)};
    const auto lines = supplyLines(given, kToday);
    EXPECT_EQ(line(lines, "Coir mix").left, StockAmount{});
    EXPECT_EQ(line(lines, "Coir mix").low, Low::None);
}

TEST(StockRules, PiecesAreDueSinceTheyWereEmptied)
{
    const StockFacts given = facts();
    PieceRecord growing;
    growing.piece = {{1}, kMesh, 1, {}, {}, {}};
    growing.uses = 3;
    growing.isInUse = true;
    growing.needsSanitising = true;
    growing.lastUsed = kToday - 4;
    PieceRecord emptied = growing;
    emptied.piece.id = {2};
    emptied.piece.number = 2;
    emptied.uses = 2;
    emptied.isInUse = false;
    emptied.lastUsed = kToday - 1;
    const std::vector<Sanitising> sanitised = {{{1}, {2}, kToday - 9, 0, {"steam"}},
                                               {{2}, {2}, kToday - 5, 0, {"peroxide"}}};
    const auto groups = pieceGroups(given.media, {growing, emptied},
                                    {{PieceId{1}, PieceInUse{"RD001", {}}}}, sanitised);
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].growing, 1);
    EXPECT_EQ(groups[0].due, 1);
    EXPECT_EQ(groups[0].clean, 0);
    const auto& pieces = groups[0].pieces;
    EXPECT_FALSE(pieces[0].due) << "a tray grows on it";
    EXPECT_TRUE(pieces[0].isPast) << "three of two";
    EXPECT_EQ(pieces[0].inUse->tray, "RD001");
    EXPECT_EQ(pieces[1].due, kToday - 1);
    EXPECT_FALSE(pieces[1].isPast) << "two of two";
    EXPECT_EQ(pieces[1].sanitised->how.method, "peroxide");
}

TEST(StockRules, RefuseMarksThatCantBe)
{
    EXPECT_TRUE(checkLowDays({}));
    EXPECT_TRUE(checkLowDays(kMostLowDays));
    EXPECT_TRUE(checkLowDays(-1).error().is(StockReason::DaysBeyond));
    EXPECT_TRUE(checkLowDays(kMostLowDays + 1).error().is(StockReason::DaysBeyond));
    StockItem item;
    EXPECT_TRUE(checkStockItem(item).error().is(StockReason::NameMissing));
    item.name = "Tubs";
    EXPECT_TRUE(checkStockItem(item));
    item.eachUse = pieces(-1);
    EXPECT_TRUE(checkStockItem(item).error().is(StockReason::AmountBelowNothing));
}

TEST(StockRules, ACountFarFromWhatShouldBeLeftIsOdd)
{
    EXPECT_TRUE(isOddCount(2400, 240));
    EXPECT_TRUE(isOddCount(24, 240));
    EXPECT_FALSE(isOddCount(300, 240));
    EXPECT_FALSE(isOddCount(60, 240));
    EXPECT_FALSE(isOddCount(0, 240)) << "used up";
    EXPECT_FALSE(isOddCount(500, 0));
    EXPECT_FALSE(isOddCount(500, -16));
}

} // namespace
} // namespace plumule
