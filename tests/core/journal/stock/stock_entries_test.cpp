#include "core/journal/stock/stock_entries.h"

#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/medium/medium_reason.h"
#include "core/stock/stock_reason.h"
#include "core/variety/variety_reason.h"
#include "tests/core/journal/journal_fixture.h"

namespace plumule {
namespace {

// A room with a lot of radish, coir that was counted, and mesh of two pieces.
class StockEntriesTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        SeedLot lot;
        lot.variety = varietyNamed("Radish");
        lot.lotNumber = "L7";
        lot.bought = grams(500);
        lot.boughtOn = clock.today();
        radish = journal->varieties().saveLot(lot).value();
        meshes = journal->media().addPieces(mediumNamed("Steel mesh"), 2, std::nullopt).value();
    }

    // Sown with 30 g of the lot.
    TrayId sow(std::optional<PieceId> piece = std::nullopt, const std::string& by = "Ada")
    {
        SowingDraft draft;
        draft.variety = radish.variety;
        draft.seedLot = radish.id;
        draft.medium = mediumNamed(piece ? "Steel mesh" : "Coir mix");
        draft.pieces = piece ? std::vector<PieceId>{*piece} : std::vector<PieceId>();
        draft.seedPerTray = grams(30);
        draft.at = clock.now();
        draft.sownBy = by;
        const auto sown = journal->trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        return sown ? sown->front() : TrayId{};
    }
    StockItem coir()
    {
        StockItem item;
        item.name = "Coir mix";
        item.kind = StockKind::Medium;
        item.medium = mediumNamed("Coir mix");
        item.unit = StockUnit::Millilitre;
        return item;
    }
    static StockItem tubs()
    {
        StockItem item;
        item.name = " Tubs ";
        item.kind = StockKind::Packaging;
        item.eachUse = pieces(2);
        return item;
    }
    auto count(const StockItem& item, StockAmount amount)
    {
        return journal->stock().enter(item, StockEvent::Counted, clock.today(), amount, {});
    }
    StockLine lineOf(const std::string& name)
    {
        const Stock stock = journal->stock().now().value();
        for (const StockLine& line : stock.supplies) {
            if (line.item.name == name) {
                return line;
            }
        }
        ADD_FAILURE() << "no " << name;
        return {};
    }
    std::string codeOf(TrayId tray)
    {
        return journal->trays().sheet(tray).value().record.tray.code;
    }

    SeedLot radish;
    std::vector<Piece> meshes;
};

TEST_F(StockEntriesTest, ACountIsOneActAndKeepsTheThingWithIt)
{
    EXPECT_FALSE(lineOf("Coir mix").left) << "listed before it was ever counted";
    expectUndoable([&] { return count(coir(), asStock(litres(40))); });
    EXPECT_EQ(lineOf("Coir mix").left, asStock(litres(40)));
    clock.set({clock.today(), clock.now().minute + 5});
    sow();
    EXPECT_LT(lineOf("Coir mix").left, asStock(litres(40))) << "a tray took its share";
    clock.set({clock.today(), clock.now().minute + 5});
    ASSERT_TRUE(count(coir(), asStock(litres(10))));
    EXPECT_EQ(lineOf("Coir mix").left, asStock(litres(10)));
    EXPECT_EQ(journal->stock().now()->lastCounted, clock.today());
}

TEST_F(StockEntriesTest, WhatIsBoughtComesOnTop)
{
    ASSERT_TRUE(count(tubs(), pieces(10)));
    expectUndoable([&] {
        return journal->stock().enter(tubs(), StockEvent::Bought, clock.today(), pieces(50), {});
    });
    EXPECT_EQ(lineOf("Tubs").left, pieces(60)) << "one thing, though its id was not given";
}

TEST_F(StockEntriesTest, RefusesWhatCantBe)
{
    StockItem nameless = tubs();
    nameless.name = " ";
    expectRefused(ErrorKind::Missing, StockReason::NameMissing,
                  [&] { return count(nameless, pieces(1)); });
    expectRefused(ErrorKind::Invalid, StockReason::AmountBelowNothing,
                  [&] { return count(tubs(), pieces(-1)); });
    expectRefused(ErrorKind::Invalid, StockReason::CountAhead, [&] {
        return journal->stock().enter(tubs(), StockEvent::Counted, clock.today() + 1, pieces(1),
                                      {});
    });
    StockItem mesh = coir();
    mesh.medium = mediumNamed("Steel mesh");
    expectRefused(ErrorKind::Invalid, StockReason::MediumReused,
                  [&] { return count(mesh, pieces(1)); });
    ASSERT_TRUE(count(tubs(), pieces(3)));
    StockItem other = tubs();
    other.name = "Tubs";
    expectRefused(ErrorKind::Duplicate, StockReason::NameTaken,
                  [&] { return journal->stock().save(other); });
    other.id = {99};
    expectRefused(ErrorKind::NotFound, StockReason::Unknown,
                  [&] { return journal->stock().save(other); });
}

TEST_F(StockEntriesTest, MarksOfLowSeedAreTheGrowers)
{
    sow();
    EXPECT_TRUE(journal->stock().low()->empty());
    expectUndoable([&] {
        return journal->stock().markSeedLow({{}, radish.variety, std::nullopt, grams(500)});
    });
    ASSERT_EQ(journal->stock().low()->size(), 1U);
    EXPECT_EQ(journal->stock().low()->front().why, Low::Amount);
    ASSERT_TRUE(journal->stock().markSeedLow({{}, radish.variety, {}, {}}));
    EXPECT_TRUE(journal->stock().low()->empty());
    expectRefused(ErrorKind::NotFound, VarietyReason::Unknown, [&] {
        return journal->stock().markSeedLow({{}, {99}, 3, {}});
    });
    expectRefused(ErrorKind::Invalid, StockReason::DaysBeyond, [&] {
        return journal->stock().markSeedLow({{}, radish.variety, -3, {}});
    });
}

TEST_F(StockEntriesTest, ASanitisingTellsHowAndByWhom)
{
    sow(meshes[0].id);
    const auto tray = journal->stock().find("Steel mesh 1");
    ASSERT_TRUE(tray);
    const TrayId grown = journal->stock().forward(*tray)->sowings.at(0).trays.at(0).tray.id;
    ASSERT_TRUE(journal->trays().discard(grown, "mould", clock.now()));
    EXPECT_EQ(journal->stock().now()->piecesDue(), 1);
    const SanitisingDraft how{"peroxide", 3.0, StrengthUnit::Percent, 10, "Bo"};
    expectUndoable([&] { return journal->media().sanitise({meshes[0].id}, how); });
    const Stock stock = journal->stock().now().value();
    EXPECT_EQ(stock.piecesDue(), 0);
    ASSERT_TRUE(stock.pieces.at(0).pieces.at(0).sanitised);
    EXPECT_EQ(stock.pieces[0].pieces[0].sanitised->how, how);
    SanitisingDraft strong = how;
    strong.strength = 101;
    expectRefused(ErrorKind::Invalid, MediumReason::Strength,
                  [&] { return journal->media().sanitise({meshes[0].id}, strong); });
    strong = how;
    strong.contactMinutes = 0;
    expectRefused(ErrorKind::Invalid, MediumReason::ContactMinutes,
                  [&] { return journal->media().sanitise({meshes[0].id}, strong); });
}

TEST_F(StockEntriesTest, ATraceForwardAddsUp)
{
    const TrayId thrownAway = sow();
    sow();
    ASSERT_TRUE(journal->trays().discard(thrownAway, "mould", clock.now()));
    const auto from = journal->stock().find("l7");
    ASSERT_TRUE(from) << told(from.error());
    const auto trace = journal->stock().forward(*from);
    ASSERT_TRUE(trace);
    EXPECT_EQ(trace->lot->left, grams(440));
    EXPECT_EQ(trace->lotVariety, "Radish");
    ASSERT_EQ(trace->sowings.size(), 1U);
    EXPECT_EQ(trace->sums, (TraceSums{2, 0, 1, 1, 0, grams(60), {}, 0}));
    EXPECT_EQ(trace->sums.seed, trace->lot->sown);
}

TEST_F(StockEntriesTest, ATraceTellsWhichPromisesHoldSomeOfIt)
{
    const std::vector<TrayId> trays = {sow(), sow(), sow()};
    clock.set({clock.today() + 10, 500});
    Order order;
    order.variety = radish.variety;
    order.amount = grams(500);
    order.day = clock.today() + 1;
    order.customer = "Canteen";
    ASSERT_TRUE(journal->orders().save(order));
    for (const TrayId tray : trays) {
        WeighingDraft weighing;
        weighing.tray = tray;
        weighing.bowls = {{grams(300), grams(0)}};
        weighing.at = clock.now();
        weighing.accepted = {Doubt::NotDueYet};
        const auto recorded = journal->harvests().record(weighing);
        ASSERT_TRUE(recorded) << told(recorded.error());
    }
    const auto trace = journal->stock().forward(radish.id).value();
    ASSERT_EQ(trace.sowings.size(), 1U);
    const std::vector<TracedPromise> promises = trace.sowings[0].promises();
    ASSERT_EQ(promises.size(), 1U);
    EXPECT_EQ(promises[0].customer, "Canteen");
    EXPECT_EQ(promises[0].key.day, order.day);
    EXPECT_EQ(promises[0].part, grams(900)) << "what is over stays with it";
    EXPECT_EQ(trace.sums.promises, 1);
    EXPECT_EQ(journal->stock().back(trays[0])->tray.promises.size(), 1U);
}

TEST_F(StockEntriesTest, ATraceBackTellsLotPieceAndWhoSanitisedIt)
{
    const TrayId first = sow(meshes[1].id);
    ASSERT_TRUE(journal->trays().discard(first, "a trial", clock.now()));
    clock.set({clock.today() + 1, 500});
    ASSERT_TRUE(journal->media().sanitise({meshes[1].id},
                                          {"peroxide", 3, StrengthUnit::Percent, 10, "Bo"}));
    clock.set({clock.today(), 600});
    const TrayId second = sow(meshes[1].id, "Cy");
    const auto trace = journal->stock().back(second);
    ASSERT_TRUE(trace) << told(trace.error());
    EXPECT_EQ(trace->lot->lot.lotNumber, "L7");
    EXPECT_EQ(trace->piece->number, 2);
    EXPECT_EQ(trace->useOfPiece, 2);
    EXPECT_EQ(trace->trayBefore, codeOf(first));
    ASSERT_TRUE(trace->sanitised);
    EXPECT_EQ(trace->sanitised->how.by, "Bo");
    EXPECT_FALSE(journal->stock().back(first)->sanitised) << "it was new";

    const auto byBo = journal->stock().forward(Person{"bo"}).value();
    ASSERT_EQ(byBo.sums.sown, 1);
    EXPECT_EQ(byBo.sowings[0].trays[0].tray.id, second);
    EXPECT_EQ(byBo.sowings[0].trays[0].part, Part::Sanitised);
    const auto byCy = journal->stock().forward(Person{"Cy"}).value();
    ASSERT_EQ(byCy.sums.sown, 1);
    EXPECT_EQ(byCy.sowings[0].trays[0].part, Part::Sowed);
    EXPECT_EQ(journal->stock().people().value(), (std::vector<std::string>{"Ada", "Bo", "Cy"}));
}

TEST_F(StockEntriesTest, AMixLeadsToTheTraysThatWereGivenIt)
{
    const TrayId watered = sow();
    sow();
    BetweenDraft given;
    given.trays = {watered};
    given.water = WaterKind::Nutrient;
    given.amount = millilitres(100);
    given.at = clock.now();
    ASSERT_TRUE(journal->watering().giveBetween(given));
    const auto from = journal->stock().find("nutrient");
    ASSERT_TRUE(from);
    const auto trace = journal->stock().forward(*from).value();
    ASSERT_EQ(trace.sums.sown, 1);
    EXPECT_EQ(trace.sowings[0].trays[0].tray.id, watered);
    const Date today = clock.today();
    EXPECT_EQ(
        journal->stock().forward(MixSpan{WaterKind::Nutrient, today + 1, today + 9})->sums.sown, 0);
    const auto back = journal->stock().back(watered).value();
    ASSERT_EQ(back.waters.size(), 1U);
    EXPECT_EQ(back.waters[0].amount, millilitres(100));
}

TEST_F(StockEntriesTest, FindsWhatItsLabelSays)
{
    const TrayId tray = sow();
    EXPECT_EQ(journal->stock().find(codeOf(tray)).value(), TraceFrom{tray});
    EXPECT_EQ(journal->stock().find("steel MESH 2").value(), TraceFrom{meshes[1].id});
    EXPECT_EQ(journal->stock().find("ada").value(), TraceFrom{Person{"Ada"}});
    const auto nothing = journal->stock().find("L8");
    ASSERT_FALSE(nothing);
    EXPECT_TRUE(nothing.error().is(StockReason::NothingCalled));
    SeedLot other = radish;
    other.id = {};
    other.variety = varietyNamed("Broccoli");
    const auto saved = journal->varieties().saveLot(other);
    ASSERT_TRUE(saved);
    const auto unclear = journal->stock().find("L7");
    ASSERT_FALSE(unclear);
    EXPECT_TRUE(unclear.error().is(StockReason::CalledTwice));
    EXPECT_EQ(journal->stock().find("broccoli l7").value(), TraceFrom{saved->id});
    EXPECT_EQ(journal->stock().forward(SeedLotId{99}).error().kind, ErrorKind::NotFound);
    EXPECT_EQ(journal->stock().back(TrayId{99}).error().kind, ErrorKind::NotFound);
}

} // namespace
} // namespace plumule
