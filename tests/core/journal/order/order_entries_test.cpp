#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/order/order_reason.h"
#include "core/variety/variety_reason.h"
#include "tests/core/journal/journal_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

// The clock of JournalTest stands at Monday 2026-03-02, 07:30.
class OrderEntriesTest : public JournalTest
{
protected:
    OrderEntries& orders() { return journal->orders(); }
    [[nodiscard]] Date today() const { return clock.today(); }

    Order radish(double promised, Date day, Recurrence recurs = Recurrence::Once)
    {
        Order order;
        order.variety = varietyNamed("Radish");
        order.amount = grams(promised);
        order.day = day;
        order.recurs = recurs;
        order.customer = "  Canteen ";
        return order;
    }

    // Sown, moved on to the end and cut on the day of the clock.
    HarvestId cutOf(const std::string& variety, double net)
    {
        SowingDraft draft;
        draft.variety = varietyNamed(variety);
        draft.medium = singleUse();
        draft.at = clock.now() + -std::int64_t{10} * kMinutesPerDay;
        const auto sown = journal->trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        WeighingDraft weighing;
        weighing.tray = sown->front();
        weighing.bowls = {{grams(net + 30), grams(30)}};
        weighing.at = clock.now();
        weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet,
                             Doubt::TareForgotten};
        const auto harvest = journal->harvests().record(weighing);
        EXPECT_TRUE(harvest) << told(harvest.error());
        return harvest->id;
    }

    MediumId singleUse()
    {
        const auto media = journal->media().all().value();
        for (const Medium& medium : media) {
            if (!medium.isReusable) {
                return medium.id;
            }
        }
        return {};
    }
};

TEST_F(OrderEntriesTest, WritesAnOrderDownAsOneActThatCanBeTakenBack)
{
    expectUndoable([&] { return orders().save(radish(500, today() + 20)); });
    const auto all = orders().all().value();
    ASSERT_THAT(all, SizeIs(1));
    EXPECT_EQ(all[0].customer, "Canteen");
    const auto entry = journal->nextUndo();
    ASSERT_TRUE(entry);
    EXPECT_EQ(entry->intention, "order.add");
    EXPECT_EQ(entry->subject, "Radish");
    EXPECT_THAT(entry->details, ElementsAre("500000", "2026-03-22", "Canteen"));
    EXPECT_TRUE(journal->faults()->empty());
}

TEST_F(OrderEntriesTest, RefusesWhatNamesNothingInTheJournal)
{
    Order order = radish(500, today());
    order.variety = {999};
    expectRefused(ErrorKind::NotFound, OrderReason::VarietyMissing,
                  [&] { return orders().save(order); });
    order = radish(500, today());
    order.medium = MediumId{999};
    expectRefused(ErrorKind::NotFound, OrderReason::MediumUnknown,
                  [&] { return orders().save(order); });
    expectRefused(ErrorKind::Invalid, OrderReason::Amount,
                  [&] { return orders().save(radish(0, today())); });
    order = radish(500, today());
    order.id = {999};
    expectRefused(ErrorKind::NotFound, OrderReason::Unknown, [&] { return orders().save(order); });
}

TEST_F(OrderEntriesTest, KeepsWhatAStandingOrderPromisedBeforeItsChange)
{
    const Order first = orders().save(radish(500, today() - 14, Recurrence::Weekly)).value();
    Order changed = first;
    changed.amount = grams(800);
    expectUndoable([&] { return orders().save(changed); });
    const auto all = orders().all().value();
    ASSERT_THAT(all, SizeIs(2));
    EXPECT_EQ(all[0].endsOn, today());
    EXPECT_EQ(all[1].day, today());
    const OrderBook book = orders().book().value();
    ASSERT_THAT(book.past, SizeIs(2));
    EXPECT_EQ(book.past[0].promise.order.amount, grams(500));
    ASSERT_THAT(book.toCome, SizeIs(5));
    EXPECT_EQ(book.toCome[0].promise.order.amount, grams(800));
}

TEST_F(OrderEntriesTest, EndsAStandingOrderAndTakesOneOutThatNeverBegan)
{
    const Order standing = orders().save(radish(500, today() - 7, Recurrence::Weekly)).value();
    expectUndoable([&] { return orders().end(standing.id, today()); });
    EXPECT_THAT(orders().book()->toCome, IsEmpty());
    EXPECT_THAT(orders().book()->past, SizeIs(1));
    const Order ahead = orders().save(radish(500, today() + 7, Recurrence::Weekly)).value();
    ASSERT_TRUE(orders().end(ahead.id, today()));
    EXPECT_THAT(orders().all().value(), SizeIs(1));
    const Order once = orders().save(radish(500, today() + 7)).value();
    expectRefused(ErrorKind::Conflict, OrderReason::NotStanding,
                  [&] { return orders().end(once.id, today()); });
}

TEST_F(OrderEntriesTest, KeepsAVarietyThatIsPromised)
{
    Order order = radish(500, today() + 20);
    order.variety = varietyNamed("Dill");
    const Order stored = orders().save(order).value();
    expectRefused(ErrorKind::InUse, VarietyReason::InUse,
                  [&] { return journal->varieties().remove(stored.variety); });
    ASSERT_TRUE(orders().remove(stored.id));
    EXPECT_TRUE(journal->varieties().remove(stored.variety));
}

TEST_F(OrderEntriesTest, PlansWithTheLibraryWhileTheRoomHasNoPast)
{
    ASSERT_TRUE(orders().save(radish(500, today() + 20)));
    const OrderBook book = orders().book().value();
    ASSERT_THAT(book.toCome, SizeIs(1));
    ASSERT_TRUE(book.toCome[0].sowing);
    const SowingNeed& need = *book.toCome[0].sowing;
    EXPECT_EQ(need.model.basis.from, ForecastSource::Library);
    EXPECT_EQ(need.freePlaces, 12);
    EXPECT_FALSE(need.isLate);
    EXPECT_GE(book.toCome[0].planned.chance, kChanceWanted);
}

TEST_F(OrderEntriesTest, HoldsWhatWasWeighedAgainstWhatWasPromised)
{
    const Order first = orders().save(radish(500, today())).value();
    const Order second = orders().save(radish(300, today())).value();
    cutOf("Radish", 260);
    cutOf("Radish", 250);
    cutOf("Radish", 270);
    cutOf("Dill", 90);
    clock.set(clock.now() + kMinutesPerDay);
    const OrderBook book = orders().book().value();
    ASSERT_THAT(book.past, SizeIs(2));
    EXPECT_EQ(book.past[1].promise.order.id, first.id);
    EXPECT_EQ(book.past[1].weighed(), grams(500));
    EXPECT_TRUE(book.past[1].isKept());
    EXPECT_EQ(book.past[0].promise.order.id, second.id);
    EXPECT_EQ(book.past[0].over(), grams(-20));
    EXPECT_FALSE(book.past[0].isKept());
}

TEST_F(OrderEntriesTest, PutsCutsWhereTheGrowerSays)
{
    const Order first = orders().save(radish(500, today())).value();
    const Order second = orders().save(radish(300, today())).value();
    const HarvestId one = cutOf("Radish", 260);
    const HarvestId two = cutOf("Radish", 310);
    const HarvestId other = cutOf("Dill", 90);
    const PromiseKey toSecond{today(), second.id};
    expectUndoable([&] { return orders().setCuts(toSecond, {two}); });
    const auto cuts = orders().cutsFor(toSecond).value();
    ASSERT_THAT(cuts, SizeIs(2));
    EXPECT_EQ(cuts[0].cut.id, one);
    EXPECT_EQ(cuts[0].part, Mass{});
    EXPECT_EQ(cuts[1].part, grams(310));
    EXPECT_TRUE(cuts[1].cut.byHand);
    // What it had by rule and is not ticked goes to none.
    ASSERT_TRUE(orders().setCuts({today(), first.id}, {}));
    EXPECT_EQ(orders().cutsFor({today(), first.id}).value()[0].part, Mass{});
    expectRefused(ErrorKind::Invalid, OrderReason::CutOfOtherVariety,
                  [&] { return orders().setCuts(toSecond, {other}); });
    expectRefused(ErrorKind::NotFound, OrderReason::DayNotPromised, [&] {
        return orders().setCuts({today() + 1, second.id}, {two});
    });
    ASSERT_TRUE(orders().shareByRule(toSecond));
    EXPECT_EQ(orders().cutsFor({today(), first.id}).value()[0].part, grams(260));
    EXPECT_FALSE(orders().cutsFor(toSecond).value()[1].cut.byHand);
}

TEST_F(OrderEntriesTest, TakesTheCutsOfAnOrderOutWithIt)
{
    const Order order = orders().save(radish(500, today())).value();
    const HarvestId cut = cutOf("Radish", 260);
    ASSERT_TRUE(orders().setCuts({today(), order.id}, {cut}));
    expectUndoable([&] { return orders().remove(order.id); });
    EXPECT_TRUE(journal->faults()->empty());
}

} // namespace
} // namespace plumule
