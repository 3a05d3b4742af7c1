#include "core/journal/cost/cost_entries.h"
#include "core/journal/room/room_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/cost/price_part.h"

namespace plumule::ui {
namespace {

class PricePartTest : public SetupTest
{
protected:
    std::vector<Price> prices() { return journal->costs().prices().value(); }
    int secondsOf(LabourKind kind)
    {
        const auto tasksNow = journal->costs().labour().value();
        for (const LabourTask& task : tasksNow) {
            if (task.kind == kind) {
                return task.seconds;
            }
        }
        ADD_FAILURE() << "no such work";
        return -1;
    }
};

TEST_F(PricePartTest, SavesADatedPriceOfAMedium)
{
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "medium");
    EXPECT_TRUE(find<QComboBox>(*part, "priceMedium")->isEnabled());
    choose(*part, "priceMedium", "Steel mesh");
    give(*part, "priceFrom", "1 Mar");
    write(*part, "priceAmount", "14,5");
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    ASSERT_EQ(prices().size(), 1U);
    EXPECT_EQ(prices().front().item, PriceItem::Medium);
    EXPECT_EQ(prices().front().medium, mediumNamed("Steel mesh")->id);
    EXPECT_EQ(prices().front().from, date(2026, 3, 1));
    EXPECT_EQ(prices().front().amount, money(14.5));
    EXPECT_EQ(recordsOf(*part), QStringList("Steel mesh, 1 Mar 2026"));
    pressMessageAction();
    EXPECT_TRUE(prices().empty());
}

TEST_F(PricePartTest, AsksForAMediumOnlyWhereThePriceIsOfOne)
{
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "electricity");
    EXPECT_FALSE(find<QComboBox>(*part, "priceMedium")->isEnabled());
    write(*part, "priceAmount", "0.3125");
    press(*part, "saveRecord");
    ASSERT_EQ(prices().size(), 1U);
    EXPECT_EQ(prices().front().item, PriceItem::Electricity);
    EXPECT_FALSE(prices().front().medium.has_value());
    EXPECT_EQ(prices().front().amount, money(0.3125));
    EXPECT_EQ(prices().front().from, clock.today());
}

TEST_F(PricePartTest, SaysWhatEachPriceIsFor)
{
    const auto part = openPart<PricePart>();
    const auto* items = find<QComboBox>(*part, "priceItem");
    ASSERT_EQ(items->count(), 8);
    QStringList names;
    for (int i = 0; i < items->count(); ++i) {
        EXPECT_FALSE(names.contains(items->itemText(i)));
        names << items->itemText(i);
    }
    const auto* unit = find<QComboBox>(*part, "priceUnit");
    EXPECT_TRUE(unit->isVisible());
    choose(*part, "priceItem", "medium");
    choose(*part, "priceMedium", "Coir mix");
    EXPECT_EQ(unit->currentText(), "a litre");
    choose(*part, "priceMedium", "Steel mesh");
    EXPECT_EQ(unit->currentText(), "a piece");
    choose(*part, "priceItem", "electricity");
    EXPECT_EQ(unit->currentText(), "a kilowatt-hour");
}

TEST_F(PricePartTest, RefusesAPriceThatIsMissingWrongOrBelowNothing)
{
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "water");
    for (const char* text : {"", "four", "-1"}) {
        write(*part, "priceAmount", text);
        press(*part, "saveRecord");
        EXPECT_TRUE(messages.isRefusal()) << text;
        EXPECT_TRUE(prices().empty()) << text;
    }
}

TEST_F(PricePartTest, RefusesASecondPriceOfOneThingAndDay)
{
    const auto part = openPart<PricePart>();
    for (int i = 0; i < 2; ++i) {
        press(*part, "newRecord");
        choose(*part, "priceItem", "water");
        write(*part, "priceAmount", "0.004");
        press(*part, "saveRecord");
    }
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(prices().size(), 1U);
}

TEST_F(PricePartTest, RemovesAPrice)
{
    ASSERT_TRUE(journal->costs().savePrice(
        {{}, PriceItem::Water, std::nullopt, date(2026, 1, 1), money(0.004)}));
    const auto part = openPart<PricePart>();
    chooseRecord(*part, "water");
    EXPECT_EQ(textOf(*part, "priceAmount"), "0.004");
    press(*part, "removeRecord");
    EXPECT_TRUE(prices().empty());
    EXPECT_TRUE(recordsOf(*part).isEmpty());
}

TEST_F(PricePartTest, ChangesTheMinutesOfAKindOfWork)
{
    const auto part = openPart<PricePart>();
    EXPECT_EQ(textOf(*part, "laboursowing"), "4");
    write(*part, "laboursowing", "3,5");
    press(Qt::Key_Return);
    ASSERT_TRUE(soon([&] { return secondsOf(LabourKind::Sowing) == 210; }));
    settleDown();
    EXPECT_EQ(textOf(*part, "laboursowing"), "3.5");
    pressMessageAction();
    EXPECT_EQ(secondsOf(LabourKind::Sowing), 240);
    EXPECT_EQ(textOf(*part, "laboursowing"), "4");
}

TEST_F(PricePartTest, LeavesTheMinutesWhereNoNumberWasTyped)
{
    const auto part = openPart<PricePart>();
    for (const char* text : {"", "a few", "-2", "601"}) {
        write(*part, "laboursowing", text);
        press(Qt::Key_Return);
        settleDown();
        EXPECT_EQ(secondsOf(LabourKind::Sowing), 240) << text;
        EXPECT_TRUE(find<QLineEdit>(*part, "laboursowing")->property("wrong").toBool()) << text;
    }
}

TEST_F(PricePartTest, LetsTheMinutesBeTypedOneAfterTheOtherByKeys)
{
    const auto part = openPart<PricePart>();
    write(*part, "laboursowing", "5");
    press(Qt::Key_Tab);
    ASSERT_TRUE(soon([&] { return secondsOf(LabourKind::Sowing) == 300; }));
    settleDown();
    const QString now = nameOfFocus();
    EXPECT_TRUE(now.startsWith("labour") && now != "laboursowing")
        << "the focus is on '" << now.toStdString() << "'";
}

TEST_F(PricePartTest, KeepsWhatIsBeingTypedWhenSomethingElseChanges)
{
    ASSERT_TRUE(journal->costs().savePrice(
        {{}, PriceItem::Labour, std::nullopt, date(2026, 1, 1), money(16)}));
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "packaging");
    write(*part, "priceAmount", "0.2");
    ASSERT_TRUE(journal->costs().savePrice(
        {{}, PriceItem::Water, std::nullopt, date(2026, 1, 1), money(0.004)}));
    settleDown();
    EXPECT_EQ(textOf(*part, "priceAmount"), "0.2");
    EXPECT_EQ(find<QComboBox>(*part, "priceItem")->currentText(), "packaging");
}

TEST_F(PricePartTest, InUsUnitsAPriceIsGivenByTheCubicFootQuartOrPound)
{
    useUsUnits();
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "medium");
    choose(*part, "priceMedium", "Coir mix");
    auto* unit = find<QComboBox>(*part, "priceUnit");
    EXPECT_EQ(unit->currentText(), "a cubic foot");
    write(*part, "priceAmount", "12");
    press(*part, "saveRecord");
    ASSERT_EQ(prices().size(), 1U) << messages.text().toStdString();
    EXPECT_EQ(prices().front().amount, money(12));
    EXPECT_EQ(prices().front().measure, PriceMeasure::CubicFoot);
    EXPECT_EQ(textOf(*part, "priceAmount"), "12");
    const Price before = prices().front();
    press(*part, "saveRecord");
    EXPECT_EQ(prices().front(), before) << "what was not touched stays exact";
    unit->setFocus();
    press(Qt::Key_Down);
    ASSERT_EQ(unit->currentText(), "a quart");
    // A cubic foot is 28.316846592 L, a quart 0.946352946 L, by definition.
    EXPECT_NEAR(textOf(*part, "priceAmount").toDouble(), 12 / 28.316846592 * 0.946352946, 1e-4);
    press(Qt::Key_Up);
    EXPECT_EQ(textOf(*part, "priceAmount"), "12");
    press(*part, "saveRecord");
    EXPECT_EQ(prices().front(), before) << "another measure is no other price";
    choose(*part, "priceItem", "waste");
    EXPECT_EQ(unit->currentText(), "a pound of residue");
    choose(*part, "priceItem", "electricity");
    EXPECT_EQ(unit->currentText(), "a kilowatt-hour");
}

TEST_F(PricePartTest, APriceByTheThousandGallonsStaysWhatWasTyped)
{
    useUsUnits();
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "water");
    ASSERT_EQ(find<QComboBox>(*part, "priceUnit")->currentText(), "1,000 gallons");
    write(*part, "priceAmount", "4.87");
    press(*part, "saveRecord");
    ASSERT_EQ(prices().size(), 1U) << messages.text().toStdString();
    EXPECT_EQ(textOf(*part, "priceAmount"), "4.87");
    EXPECT_NEAR(*priceOn(prices(), PriceItem::Water, clock.today()), 4.87 / 3785.411784, 1e-12);
    // Seen in metric units it is offered by what it was given for.
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::Metric;
    ASSERT_TRUE(journal->room().changeRoom(room));
    settleDown();
    EXPECT_EQ(find<QComboBox>(*part, "priceUnit")->currentText(), "1,000 gallons");
    EXPECT_EQ(textOf(*part, "priceAmount"), "4.87");
}

} // namespace
} // namespace plumule::ui
