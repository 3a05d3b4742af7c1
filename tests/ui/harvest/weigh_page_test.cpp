#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/harvest/weigh_fixture.h"
#include "ui/harvest/due_list.h"
#include "ui/widget/widgets.h"

#include <QSignalSpy>
#include <QTableView>

namespace plumule::ui {
namespace {

TEST_F(WeighTest, ACodeAWeightAndEnterRecordTheTrayAndTakeTheNextOneDue)
{
    growDueTrays(3);
    open();
    EXPECT_EQ(nameOfFocus(), "code");
    EXPECT_TRUE(textOf("pageSubtitle").contains("3 of 3 trays still to weigh"));
    enter(" br001 ");
    EXPECT_EQ(textIn("code"), "BR001");
    EXPECT_EQ(textOf("variety"), "Broccoli");
    EXPECT_EQ(textOf("medium").toStdString(), inertMedium().name);
    EXPECT_EQ(nameOfFocus(), "gross");
    typeTare("38.5");
    type("338.5");
    EXPECT_EQ(textOf("net"), "300.0 g");
    press(Qt::Key_Return);
    const auto cuts = cutsOf("BR001");
    ASSERT_EQ(cuts.size(), 1U);
    EXPECT_EQ(cuts.front().net, grams(300));
    EXPECT_TRUE(cuts.front().isLast);
    EXPECT_EQ(bowlsOf(cuts.front()).front().tare, grams(38.5));
    EXPECT_TRUE(messages.text().contains("BR001"));
    EXPECT_TRUE(messages.text().contains("300.0 g"));
    EXPECT_EQ(textIn("code"), "BR002");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(textIn("tare"), "38.5");
    EXPECT_EQ(nameOfFocus(), "gross");
    EXPECT_TRUE(soon([&] { return textOf("pageSubtitle").contains("2 of 3"); }));
}

TEST_F(WeighTest, TwelveTraysAreWeighedByTheKeyboardAlone)
{
    growDueTrays(12);
    open({816, 700});
    QSignalSpy badge(page.get(), &Page::badgeChanged);
    enter("BR001");
    typeTare("38.5");
    for (int i = 0; i < 12; ++i) {
        ASSERT_EQ(textIn("code"), QStringLiteral("BR%1").arg(i + 1, 3, 10, QChar('0')));
        ASSERT_EQ(nameOfFocus(), "gross");
        enter(QString::number(330 + 7 * (i % 3)) + ".5");
    }
    EXPECT_EQ(words(), "That was the last tray due today.");
    EXPECT_EQ(nameOfFocus(), "code");
    for (int i = 1; i <= 12; ++i) {
        const std::string code = QStringLiteral("BR%1").arg(i, 3, 10, QChar('0')).toStdString();
        const TraySheet sheet = sheetOf(code.c_str());
        EXPECT_EQ(sheet.record.tray.state, TrayState::Harvested) << code;
        ASSERT_EQ(sheet.harvests.size(), 1U) << code;
        EXPECT_EQ(sheet.harvests.front().net, grams(292 + 7 * ((i - 1) % 3))) << code;
    }
    EXPECT_TRUE(soon([&] { return !badge.isEmpty() && badge.back().front().toInt() == 0; }));
    EXPECT_EQ(find<QTableView>(*page, "weighed")->model()->rowCount(), 12);
}

TEST_F(WeighTest, SaysThatNoTrayIsCalledSo)
{
    growDueTrays(1);
    open();
    enter("BR099");
    EXPECT_TRUE(words().contains("No tray is called BR099"));
    EXPECT_EQ(nameOfFocus(), "code");
    EXPECT_EQ(textOf("variety"), "");
    // The code is marked, so that the next one replaces it.
    enter("BR001");
    EXPECT_EQ(textIn("code"), "BR001");
}

TEST_F(WeighTest, RefusesADiscardedTray)
{
    const auto trays = growDueTrays(1);
    ASSERT_TRUE(journal->trays().discard(trays.front(), "mould", clock.now()));
    open();
    enter("BR001");
    EXPECT_TRUE(words().contains("BR001 was discarded"));
    EXPECT_EQ(textOf("variety"), "");
    EXPECT_EQ(nameOfFocus(), "code");
}

TEST_F(WeighTest, RefusesANetWeightOfNothing)
{
    growDueTrays(1);
    open();
    enter("BR001");
    typeTare("38.5");
    for (const char* weight : {"38.5", "30"}) {
        find<QLineEdit>(*page, "gross")->selectAll();
        enter(weight);
        EXPECT_TRUE(words().contains("not more than nothing")) << weight;
        press(Qt::Key_Return);
        EXPECT_TRUE(cutsOf("BR001").empty()) << weight;
    }
    EXPECT_EQ(textIn("gross"), "30");
    EXPECT_EQ(nameOfFocus(), "gross");
}

TEST_F(WeighTest, RefusesWhatIsNoWeight)
{
    growDueTrays(1);
    open();
    enter("BR001");
    enter("3.3.1");
    EXPECT_TRUE(words().contains("is no weight"));
    EXPECT_TRUE(words().contains("3.3.1"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    EXPECT_EQ(textOf("net"), QStringLiteral("–"));
}

TEST_F(WeighTest, ReadsADecimalComma)
{
    growDueTrays(1);
    open();
    enter("BR001");
    enter("331,5");
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(331.5));
}

// 1 oz is 28.349523125 g (international avoirdupois pound, 1959).
TEST_F(WeighTest, ReadsOuncesThatTheScaleSends)
{
    growDueTrays(1);
    open();
    enter("BR001");
    type("11.69 oz");
    EXPECT_EQ(textOf("net"), "331.4 g");
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_NEAR(inGrams(cutsOf("BR001").front().net), 11.69 * 28.349523125, 0.001);
}

TEST_F(WeighTest, WeighsInOuncesWhereThatIsChosen)
{
    growDueTrays(1);
    open();
    click(find<Segmented>(*page, "unit")->segment(1));
    EXPECT_EQ(nameOfFocus(), "code");
    enter("BR001");
    type("11.69");
    EXPECT_EQ(textOf("net"), "11.69 oz");
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_NEAR(inGrams(cutsOf("BR001").front().net), 11.69 * 28.349523125, 0.001);
    EXPECT_EQ(preferences.get(Preference::ScaleUnit).toString(), "oz");
}

TEST_F(WeighTest, APlusSetsABowlDownAndTheCutIsTheirSum)
{
    growDueTrays(1);
    open();
    enter("BR001");
    typeTare("38.5");
    type("+238.5"); // a plus before the weight is its sign
    EXPECT_EQ(textIn("gross"), "+238.5");
    type("+");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_TRUE(textOf("bowls").contains("200.0 g"));
    type("138.5");
    EXPECT_EQ(textOf("net"), "300.0 g");
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
    EXPECT_EQ(bowlsOf(cutsOf("BR001").front()).size(), 2U);
}

TEST_F(WeighTest, ATrayThatIsCutAgainLaterGrowsOnUntilItsSecondCut)
{
    growDueTrays(2);
    open();
    enter("BR001");
    type("200");
    press(Qt::Key_F4);
    EXPECT_TRUE(find<QPushButton>(*page, "again")->isChecked());
    press(Qt::Key_Return);
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Growing);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_FALSE(cutsOf("BR001").front().isLast);
    EXPECT_EQ(textIn("code"), "BR002");
    EXPECT_FALSE(find<QPushButton>(*page, "again")->isChecked());

    clock.set({date(2026, 3, 19), 8 * 60});
    page->take("BR001");
    EXPECT_TRUE(words().contains("1 cut before: 200.0 g"));
    enter("80");
    ASSERT_EQ(cutsOf("BR001").size(), 2U);
    EXPECT_EQ(cutsOf("BR001").back().cut, 2);
    EXPECT_TRUE(cutsOf("BR001").back().isLast);
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Harvested);
}

TEST_F(WeighTest, ResiduesAreWeighedInTheirOwnMode)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("300");
    press(Qt::Key_F6);
    EXPECT_EQ(find<Segmented>(*page, "mode")->chosen(), 1);
    EXPECT_TRUE(textOf("pageSubtitle").contains("1 residue to weigh"));
    EXPECT_EQ(nameOfFocus(), "code");
    enter("BR001");
    EXPECT_TRUE(words().contains("residue"));
    EXPECT_FALSE(find<QPushButton>(*page, "again")->isVisible());
    enter("1480");
    const TraySheet sheet = sheetOf("BR001");
    ASSERT_EQ(sheet.residues.size(), 1U);
    EXPECT_EQ(sheet.residues.front().net, grams(1480));
    EXPECT_EQ(sheet.harvests.size(), 1U);
    EXPECT_EQ(words(), "That was the last residue.");
    press(Qt::Key_F6);
    EXPECT_EQ(find<Segmented>(*page, "mode")->chosen(), 0);
}

TEST_F(WeighTest, F2CorrectsTheLastWeighing)
{
    growDueTrays(2);
    open();
    enter("BR001");
    typeTare("38.5");
    enter("383.5");
    ASSERT_EQ(textIn("code"), "BR002");
    EXPECT_TRUE(soon([&] { return find<QTableView>(*page, "weighed")->model()->rowCount() == 1; }));
    press(Qt::Key_F2);
    EXPECT_EQ(textIn("code"), "BR001");
    EXPECT_EQ(textIn("gross"), "383.5");
    EXPECT_TRUE(words().contains("Correcting BR001, recorded as 345.0 g"));
    enter("338.5"); // replaces what was marked
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
    EXPECT_EQ(bowlsOf(cutsOf("BR001").front()).size(), 1U);
    EXPECT_EQ(textIn("code"), "BR002");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(sheetOf("BR002").harvests.size(), 0U);
}

TEST_F(WeighTest, EscLeavesACorrectionAsItWas)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("300");
    EXPECT_TRUE(soon([&] { return find<QTableView>(*page, "weighed")->model()->rowCount() == 1; }));
    press(Qt::Key_F2);
    type("99");
    press(Qt::Key_Escape);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(nameOfFocus(), "code");
    enter("BR002");
    enter("280");
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
    EXPECT_EQ(cutsOf("BR002").front().net, grams(280));
}

TEST_F(WeighTest, EnterOnARowOfTheListCorrectsThatOne)
{
    growDueTrays(3);
    open();
    enter("BR001");
    enter("300");
    enter("310");
    auto* table = find<QTableView>(*page, "weighed");
    EXPECT_TRUE(soon([&] { return table->model()->rowCount() == 2; }));
    table->setFocus();
    table->setCurrentIndex(table->model()->index(1, 0)); // newest first
    press(Qt::Key_Return);
    EXPECT_EQ(textIn("code"), "BR001");
    EXPECT_EQ(nameOfFocus(), "gross");
    enter("301");
    EXPECT_EQ(cutsOf("BR001").front().net, grams(301));
    EXPECT_EQ(cutsOf("BR002").front().net, grams(310));
}

TEST_F(WeighTest, UndoTakesAWeighingBack)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("300");
    EXPECT_TRUE(soon([&] { return textOf("pageSubtitle").contains("1 of 2"); }));
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Growing);
    EXPECT_TRUE(sheetOf("BR001").spot.has_value());
    EXPECT_TRUE(messages.text().startsWith("Taken back"));
    EXPECT_TRUE(soon([&] { return textOf("pageSubtitle").contains("2 of 2"); }));
}

TEST_F(WeighTest, ALabelScannedIntoTheWeightTakesThatTray)
{
    growDueTrays(3);
    open();
    enter("BR001");
    ASSERT_EQ(nameOfFocus(), "gross");
    enter("BR003");
    EXPECT_EQ(textIn("code"), "BR003");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(nameOfFocus(), "gross");
    enter("300");
    EXPECT_TRUE(cutsOf("BR001").empty());
    ASSERT_EQ(cutsOf("BR003").size(), 1U);
    EXPECT_EQ(textIn("code"), "BR001");
}

TEST_F(WeighTest, AWeightBelongsToTheTrayWhoseCodeStandsThere)
{
    growDueTrays(3);
    open();
    enter("BR001");
    press(Qt::Key_Backtab, Qt::ShiftModifier);
    ASSERT_EQ(nameOfFocus(), "code");
    type("BR002"); // and no Enter
    press(Qt::Key_Tab);
    ASSERT_EQ(nameOfFocus(), "gross");
    enter("300");
    EXPECT_TRUE(cutsOf("BR001").empty());
    ASSERT_EQ(cutsOf("BR002").size(), 1U);
    EXPECT_EQ(cutsOf("BR002").front().net, grams(300));
}

TEST_F(WeighTest, AWeightIsKeptWhileItsCodeIsPutRight)
{
    growDueTrays(1);
    open();
    type("BR0001");
    press(Qt::Key_Tab);
    enter("300");
    EXPECT_TRUE(words().contains("No tray is called BR0001"));
    EXPECT_EQ(textIn("gross"), "300");
    ASSERT_EQ(nameOfFocus(), "code");
    type("BR001");
    press(Qt::Key_Tab);
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
}

TEST_F(WeighTest, APressOnATrayStillToWeighTakesIt)
{
    growDueTrays(3);
    open();
    for (auto* each : find<DueList>(*page, "dueList")->findChildren<QPushButton*>()) {
        if (each->accessibleName() == "Weigh BR002") {
            click(each);
        }
    }
    EXPECT_EQ(textIn("code"), "BR002");
    EXPECT_EQ(nameOfFocus(), "gross");
}

TEST_F(WeighTest, ShowsHowFarItsTrialIs)
{
    Trial trial;
    trial.name = "Two beds";
    trial.startedOn = kTwelveDaysAgo.date;
    const auto saved = journal->trials().save(trial);
    ASSERT_TRUE(saved);
    SowingDraft draft = broccoli(2, kTwelveDaysAgo);
    draft.trial = saved->id;
    draft.block = 1;
    bringIntoLight(sow(draft), kTwelveDaysAgo);
    open();
    EXPECT_FALSE(find<QLabel>(*page, "trialWords")->isVisible());
    enter("BR001");
    EXPECT_TRUE(find<QLabel>(*page, "trialWords")->isVisible());
    EXPECT_TRUE(textOf("trialWords").startsWith("0 of 2 weighed"));
    enter("300");
    EXPECT_TRUE(textOf("trialWords").startsWith("1 of 2 weighed"));
}

// 331.5 g is 11.693… oz, which the field shows as 11.69.
TEST_F(WeighTest, ACorrectionInOuncesChangesWhatWasChangedAndNothingElse)
{
    growDueTrays(2);
    open();
    enter("BR001");
    typeTare("38.5");
    enter("370");
    ASSERT_EQ(cutsOf("BR001").front().net, grams(331.5));
    click(find<Segmented>(*page, "unit")->segment(1));
    ASSERT_TRUE(soon([&] { return find<QTableView>(*page, "weighed")->model()->rowCount() == 1; }));
    press(Qt::Key_F2);
    ASSERT_EQ(textIn("gross"), "13.05");
    press(Qt::Key_F4);
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_FALSE(cutsOf("BR001").front().isLast);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(331.5));
    EXPECT_EQ(bowlsOf(cutsOf("BR001").front()).front().gross, grams(370));
    EXPECT_EQ(bowlsOf(cutsOf("BR001").front()).front().tare, grams(38.5));
}

TEST_F(WeighTest, TheScaleIsInTheRoomsUnitUntilAnotherIsChosenAndThatIsRemembered)
{
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    growDueTrays(1);
    open();
    EXPECT_EQ(find<Segmented>(*page, "unit")->chosen(), 1);
    click(find<Segmented>(*page, "unit")->segment(0));
    open();
    EXPECT_EQ(find<Segmented>(*page, "unit")->chosen(), 0);
}

TEST_F(WeighTest, CutAgainLaterShowsWhetherItIsOn)
{
    growDueTrays(1);
    open();
    enter("BR001");
    auto* again = find<QPushButton>(*page, "again");
    const QPixmap off = again->grab();
    EXPECT_FALSE(again->isChecked());
    press(Qt::Key_F4);
    EXPECT_TRUE(again->isChecked());
    EXPECT_NE(again->grab().toImage(), off.toImage());
    EXPECT_NE(again->accessibleName() + again->accessibleDescription(), QString());
    press(Qt::Key_F4);
    EXPECT_FALSE(again->isChecked());
}

} // namespace
} // namespace plumule::ui
