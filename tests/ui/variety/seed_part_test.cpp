#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/variety/seed_part.h"

namespace plumule::ui {
namespace {

class SeedPartTest : public SetupTest
{
protected:
    std::vector<SeedLotStock> lots()
    {
        return journal->varieties().lots(std::nullopt, Listed::All).value();
    }
    SeedLot addLot(const std::string& number)
    {
        SeedLot lot;
        lot.variety = varietyNamed("Broccoli");
        lot.lotNumber = number;
        lot.bought = grams(500);
        lot.boughtOn = date(2026, 2, 1);
        return journal->varieties().saveLot(lot).value();
    }
    SeedLotStock stockOf(const std::string& number)
    {
        for (const SeedLotStock& each : lots()) {
            if (each.lot.lotNumber == number) {
                return each;
            }
        }
        ADD_FAILURE() << "no lot " << number;
        return {};
    }
};

TEST_F(SeedPartTest, SavesANewLot)
{
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    choose(*part, "lotVariety", "Broccoli");
    write(*part, "lotNumber", "L7");
    write(*part, "lotBought", "1000");
    write(*part, "lotPrice", "18,90");
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    ASSERT_EQ(lots().size(), 1U);
    const SeedLotStock saved = stockOf("L7");
    EXPECT_EQ(saved.lot.variety, varietyNamed("Broccoli"));
    EXPECT_EQ(saved.lot.bought, grams(1000));
    EXPECT_EQ(saved.lot.price, money(18.9));
    EXPECT_EQ(saved.lot.boughtOn, clock.today());
    EXPECT_EQ(recordsOf(*part), QStringList("Broccoli, L7"));
    EXPECT_TRUE(find<QLabel>(*part, "lotLeft")->text().contains("1000 g left"));
    pressMessageAction();
    EXPECT_TRUE(lots().empty());
}

TEST_F(SeedPartTest, ShowsWhatIsLeftAfterSowing)
{
    const SeedLot lot = addLot("L1");
    SowingDraft draft = broccoli(2, kTwoDaysAgo);
    draft.seedLot = lot.id;
    draft.seedPerTray = grams(25);
    sow(draft);
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Broccoli, L1");
    const QString left = find<QLabel>(*part, "lotLeft")->text();
    EXPECT_TRUE(left.contains("450 g left")) << left.toStdString();
    EXPECT_TRUE(left.contains("50 g sown")) << left.toStdString();
}

TEST_F(SeedPartTest, CorrectsTheStockWhenTheShelfWasWeighed)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Broccoli, L1");
    write(*part, "lotFound", "462,5");
    press(*part, "lotCount");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(stockOf("L1").left, grams(462.5));
    EXPECT_TRUE(find<QLabel>(*part, "lotLeft")->text().contains(UnitText().mass(grams(462.5), 0)));
    pressMessageAction();
    EXPECT_EQ(stockOf("L1").left, grams(500));
}

TEST_F(SeedPartTest, MarksAnEmptyOrWrongWeightOfTheShelf)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Broccoli, L1");
    for (const char* text : {"", "four"}) {
        write(*part, "lotFound", text);
        press(*part, "lotCount");
        EXPECT_TRUE(find<QLineEdit>(*part, "lotFound")->property("wrong").toBool()) << text;
        EXPECT_EQ(stockOf("L1").left, grams(500));
    }
}

TEST_F(SeedPartTest, RefusesALotWithoutANumberAndOneThatIsTaken)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    choose(*part, "lotVariety", "Broccoli");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    write(*part, "lotNumber", "L1");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(lots().size(), 1U);
    EXPECT_EQ(textOf(*part, "lotNumber"), "L1");
}

TEST_F(SeedPartTest, KeepsTheVarietyAndTheTypingWhenSomethingElseChanges)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    choose(*part, "lotVariety", "Kale");
    write(*part, "lotNumber", "K");
    addLot("L2");
    settleDown();
    EXPECT_EQ(textOf(*part, "lotNumber"), "K");
    EXPECT_EQ(find<QComboBox>(*part, "lotVariety")->currentText(), "Kale");
    EXPECT_EQ(recordsOf(*part).size(), 2);
}

TEST_F(SeedPartTest, KeepsTheFirstLotBeingTypedWhenAnotherArrives)
{
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    write(*part, "lotNumber", "K");
    addLot("L2");
    settleDown();
    EXPECT_EQ(textOf(*part, "lotNumber"), "K");
}

TEST_F(SeedPartTest, KeepsTheWeightWhenTheRoomsUnitsChange)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Broccoli, L1");
    useUsUnits();
    press(*part, "saveRecord");
    EXPECT_NEAR(inGrams(*stockOf("L1").lot.bought), 500, 0.05);
}

TEST_F(SeedPartTest, SavingWithoutAChangeLeavesTheLotAsItWas)
{
    SeedLot bare;
    bare.variety = varietyNamed("Kale");
    bare.lotNumber = "old";
    ASSERT_TRUE(journal->varieties().saveLot(bare));
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Kale, old");
    const SeedLot before = stockOf("old").lot;
    press(*part, "saveRecord");
    EXPECT_EQ(stockOf("old").lot, before) << "a day of purchase that nobody gave was written";
}

TEST_F(SeedPartTest, RemovesALotThatNothingHangsOn)
{
    addLot("L1");
    const auto part = openPart<SeedPart>();
    chooseRecord(*part, "Broccoli, L1");
    ask.agrees = false;
    press(*part, "removeRecord");
    EXPECT_EQ(lots().size(), 1U);
    ask.agrees = true;
    press(*part, "removeRecord");
    EXPECT_TRUE(lots().empty());
    EXPECT_TRUE(recordsOf(*part).isEmpty());
}

TEST_F(SeedPartTest, ADayOfPurchaseIsTypedOrLeftOpenButNeverGuessed)
{
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    choose(*part, "lotVariety", "Broccoli");
    write(*part, "lotNumber", "B-77");
    write(*part, "lotBoughtOn", "some time");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    const auto bought = [&] {
        const auto lots = journal->varieties().lots(std::nullopt, Listed::All);
        return lots->back().lot.boughtOn;
    };
    give(*part, "lotBoughtOn", "2026-02-03");
    press(*part, "saveRecord");
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(bought(), date(2026, 2, 3));
    give(*part, "lotBoughtOn", "");
    press(*part, "saveRecord");
    EXPECT_EQ(bought(), std::nullopt);
}

} // namespace
} // namespace plumule::ui
