#include "ui/order/order_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

OrderLine lineOf(double promised)
{
    OrderLine line;
    line.promise.order.amount = grams(promised);
    line.promise.order.customer = "Canteen";
    line.promise.day = date(2026, 12, 10);
    line.promise.order.day = line.promise.day;
    line.variety = "Radish";
    line.planned = {7, 0.947, grams(1540), grams(1750), grams(1900)};
    SowingNeed need;
    need.trays = 7;
    need.medium.name = "Coir mix";
    need.times.sow = {date(2026, 12, 1), 420};
    need.freePlaces = 10;
    need.seed = grams(210);
    need.seedLeft = grams(480);
    line.chances = {{6, 0.614, {}, {}, {}}, {7, 0.947, {}, {}, {}}};
    line.sowing = need;
    return line;
}

TEST(OrderText, NamesAPromise)
{
    Promise promise = lineOf(1500).promise;
    EXPECT_EQ(promiseText(promise), "Canteen, Thu 10 Dec");
    promise.order.customer.clear();
    EXPECT_EQ(promiseText(promise), "Thu 10 Dec");
    EXPECT_EQ(standingText(promise.order), "");
    promise.order.recurs = Recurrence::Weekly;
    EXPECT_EQ(standingText(promise.order), "every Thursday");
    promise.order.endsOn = date(2027, 1, 14);
    EXPECT_EQ(standingText(promise.order), "every Thursday before 14 Jan 2027");
}

TEST(OrderText, SaysWhatToSowAndWhatOneTrayFewerWouldCome)
{
    const OrderLine line = lineOf(1500);
    EXPECT_EQ(planText(line).toStdString(),
              "Sow 7 trays on Tue 1 Dec: met 94 times in 100. With 6 it would be 61.");
    EXPECT_EQ(sowText(line), "Tue 1 Dec");
    EXPECT_EQ(placesText(line), "7 of 10");
    EXPECT_EQ(seedText(line, UnitText()), "210 g of 480 g");
    EXPECT_TRUE(lackTexts(line, UnitText()).isEmpty());
}

TEST(OrderText, SaysWhatIsMissing)
{
    OrderLine line = lineOf(1500);
    line.sowing->freePlaces = 5;
    line.sowing->freePieces = 1;
    line.sowing->seedLeft = grams(200);
    const QStringList lacks = lackTexts(line, UnitText());
    ASSERT_EQ(lacks.size(), 3);
    EXPECT_EQ(lacks[0].toStdString(), "2 places are missing between Tue 1 Dec and Thu 10 Dec.");
    EXPECT_TRUE(lacks[1].startsWith("Coir mix has 1 clean piece free now"));
    EXPECT_TRUE(lacks[2].startsWith("10 g of seed are missing"));
    line.sowing->isLate = true;
    EXPECT_TRUE(lackTexts(line, UnitText()).isEmpty());
    EXPECT_EQ(sowText(line), "too late");
    EXPECT_EQ(placesText(line), "–");
}

TEST(OrderText, NeverRoundsAChanceUp)
{
    EXPECT_EQ(inHundred(0.8999), 89);
    EXPECT_EQ(inHundred(0.9), 90);
    EXPECT_EQ(inHundred(0.9999), 99);
    EXPECT_EQ(inHundred(1), 100);
    EXPECT_EQ(inHundred(0), 0);
}

TEST(OrderText, SaysFromWhatItIsKnown)
{
    YieldModel model;
    model.basis.from = ForecastSource::OwnPast;
    model.basis.trays = 62;
    model.discarded = 2;
    model.ended = 64;
    EXPECT_EQ(basisText(model), "62 trays, 2 of 64 thrown away");
    model.basis.from = ForecastSource::Library;
    model.basis.source = "from memory";
    model.basis.trays = 3;
    EXPECT_EQ(basisText(model), "only 3 trays of it on record; the library's value, from memory");
}

TEST(OrderText, SaysHowMuchWasOverOrShort)
{
    PastPromise past;
    past.promise.order.amount = grams(500);
    past.cuts = {{{1}, "RD1", date(2026, 12, 10), grams(543), false}};
    EXPECT_EQ(keptText(past, UnitText()), "kept, +43 g");
    past.cuts.front().part = grams(461);
    EXPECT_EQ(keptText(past, UnitText()), QString("short, %1").arg(UnitText().mass(grams(-39), 0)));
    past.cuts.front().part = grams(500);
    EXPECT_EQ(keptText(past, UnitText()), "kept, 0 g");
}

} // namespace
} // namespace plumule::ui
