#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/cost/cost_reason.h"
#include "core/medium/medium_reason.h"

namespace plumule {
namespace {

class CostEntriesTest : public JournalTest
{
protected:
    static Price waterAt(double units, Date from = date(2026, 1, 1))
    {
        Price price;
        price.item = PriceItem::Water;
        price.from = from;
        price.amount = money(units);
        return price;
    }
    MediumId someMedium() { return journal->media().all().value().front().id; }
    CostEntries& costs() { return journal->costs(); }
};

TEST_F(CostEntriesTest, KeepsAPriceAndFindsItAgainAfterARestart)
{
    const auto stored = costs().savePrice(waterAt(0.004));
    ASSERT_TRUE(stored);
    EXPECT_TRUE(stored->id.isStored());
    reopen();
    const auto prices = costs().prices().value();
    ASSERT_EQ(prices.size(), 1u);
    EXPECT_EQ(prices[0], *stored);
    EXPECT_EQ(prices[0].amount, money(0.004));
}

TEST_F(CostEntriesTest, ListsPricesByItemAndMediumNewestFirst)
{
    Price medium = waterAt(18);
    medium.item = PriceItem::Medium;
    medium.medium = someMedium();
    ASSERT_TRUE(costs().savePrice(waterAt(1, date(2026, 1, 1))));
    ASSERT_TRUE(costs().savePrice(waterAt(2, date(2026, 2, 1))));
    ASSERT_TRUE(costs().savePrice(medium));
    const auto prices = costs().prices().value();
    ASSERT_EQ(prices.size(), 3u);
    EXPECT_EQ(prices[0].item, PriceItem::Medium);
    EXPECT_EQ(prices[1].amount, money(2));
    EXPECT_EQ(prices[2].amount, money(1));
}

TEST_F(CostEntriesTest, ChangesAStoredPriceInPlace)
{
    Price price = costs().savePrice(waterAt(1)).value();
    price.amount = money(3);
    ASSERT_TRUE(costs().savePrice(price));
    ASSERT_EQ(costs().prices().value().size(), 1u);
    EXPECT_EQ(costs().prices().value()[0].amount, money(3));
}

TEST_F(CostEntriesTest, RefusesPricesThatCannotHold)
{
    ASSERT_TRUE(costs().savePrice(waterAt(1)));
    expectRefused(ErrorKind::Invalid, CostReason::PriceNegative,
                  [&] { return costs().savePrice(waterAt(-0.01, date(2026, 5, 1))); });
    expectRefused(ErrorKind::Duplicate, CostReason::DayTaken,
                  [&] { return costs().savePrice(waterAt(2)); });
    Price medium = waterAt(2);
    medium.item = PriceItem::Medium;
    expectRefused(ErrorKind::Missing, CostReason::MediumMissing,
                  [&] { return costs().savePrice(medium); });
    medium.medium = MediumId{12345};
    expectRefused(ErrorKind::NotFound, MediumReason::Unknown,
                  [&] { return costs().savePrice(medium); });
    Price gone = waterAt(2, date(2026, 6, 1));
    gone.id = {12345};
    expectRefused(ErrorKind::NotFound, CostReason::PriceUnknown,
                  [&] { return costs().savePrice(gone); });
    expectRefused(ErrorKind::NotFound, CostReason::PriceUnknown,
                  [&] { return costs().removePrice(PriceId{12345}); });
}

TEST_F(CostEntriesTest, ForgetsAMediumThatThePriceIsNotFor)
{
    Price price = waterAt(1);
    price.medium = someMedium();
    EXPECT_EQ(costs().savePrice(price).value().medium, std::nullopt);
}

TEST_F(CostEntriesTest, TwoMediaMayHaveAPriceFromTheSameDay)
{
    const auto media = journal->media().all().value();
    ASSERT_GE(media.size(), 2u);
    Price price = waterAt(1);
    price.item = PriceItem::Medium;
    price.medium = media[0].id;
    EXPECT_TRUE(costs().savePrice(price));
    price.medium = media[1].id;
    EXPECT_TRUE(costs().savePrice(price));
}

TEST_F(CostEntriesTest, SavingAPriceCanBeTakenBack)
{
    expectUndoable([&] { return costs().savePrice(waterAt(1)); });
    EXPECT_EQ(journal->nextUndo().value().intention, "price.save");
    EXPECT_EQ(journal->nextUndo().value().subject, "water");
}

// 4.87 for a thousand gallons is 0.0012865 a litre, which no whole number of ten-thousandths says.
TEST_F(CostEntriesTest, APriceStaysWhatItWasGivenFor)
{
    Price price = waterAt(4.87);
    price.measure = PriceMeasure::ThousandUsGallons;
    expectUndoable([&] { return costs().savePrice(price); });
    Price stored = costs().prices().value().front();
    EXPECT_EQ(stored.amount, money(4.87));
    EXPECT_EQ(stored.measure, PriceMeasure::ThousandUsGallons);
    ASSERT_TRUE(costs().savePrice(stored));
    EXPECT_FALSE(journal->didLastIntentionChange()) << "nothing was different";
    stored.measure = PriceMeasure::Unit;
    expectUndoable([&] { return costs().savePrice(stored); });
    EXPECT_EQ(costs().prices().value().front().measure, PriceMeasure::Unit);
    expectUndoable([&] { return costs().removePrice(stored.id); });
}

TEST_F(CostEntriesTest, RemovingAPriceCanBeTakenBack)
{
    const Price price = costs().savePrice(waterAt(1)).value();
    expectUndoable([&] { return costs().removePrice(price.id); });
    EXPECT_TRUE(costs().prices().value().empty());
}

TEST_F(CostEntriesTest, ChangesMinutesButNotTheWorkTheyAreFor)
{
    const auto tasks = costs().labour().value();
    ASSERT_FALSE(tasks.empty());
    LabourTask task = tasks.front();
    task.seconds += 60;
    expectUndoable([&] { return costs().changeLabour(task); });
    EXPECT_EQ(costs().labour().value().front().seconds, task.seconds);
    LabourTask other = task;
    other.kind = LabourKind::PieceWashing;
    other.seconds = 1;
    EXPECT_EQ(costs().changeLabour(other).value().kind, task.kind);
}

TEST_F(CostEntriesTest, KnowsTheMinutesOfEveryKindOfWork)
{
    const auto tasks = costs().labour().value();
    ASSERT_EQ(tasks.size(), 7u);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        EXPECT_EQ(tasks[i].kind, static_cast<LabourKind>(i));
        EXPECT_GT(tasks[i].seconds, 0);
    }
}

TEST_F(CostEntriesTest, RefusesMinutesBelowNothing)
{
    LabourTask task = costs().labour().value().front();
    task.seconds = -1;
    expectRefused(ErrorKind::Invalid, CostReason::LabourNegative,
                  [&] { return costs().changeLabour(task); });
    task.seconds = 1;
    task.id = {12345};
    expectRefused(ErrorKind::NotFound, CostReason::LabourUnknown,
                  [&] { return costs().changeLabour(task); });
}

} // namespace
} // namespace plumule
