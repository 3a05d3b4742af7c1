#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/page/clock_watch.h"
#include "ui/setup/setup_page.h"
#include "ui/tray/sow_dialog.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/tray_row.h"

#include <QComboBox>
#include <QDialog>
#include <QListWidget>
#include <QSpinBox>

#include <map>
#include <set>

namespace plumule::ui {
namespace {

// What a careful person writes on a sheet of paper beside the screen.
struct Tally
{
    int waterings = 0;
    int between = 0;
    std::vector<std::string> notes;
    std::vector<Length> heights;
    std::optional<Mass> weight;
    TrayState state = TrayState::Growing;
};

// Thirteen days of a small room, from the sowing of four trays to their weights, by the keyboard.
class LifeOfARoomTest : public WindowTest
{
protected:
    const Date kFirst = date(2026, 3, 12);
    std::map<std::string, Tally> tally;

    [[nodiscard]] Date day(int number) const { return kFirst + (number - 1); }

    // The clock moves on; the window sees it as it does every quarter of a minute.
    void itIs(int number, int hour, int minute)
    {
        clock.set({day(number), hour * 60 + minute});
        window->findChild<ClockWatch*>()->look();
        QCoreApplication::sendPostedEvents();
    }
    void goTo(const char* page)
    {
        WindowTest::goTo(page);
        ASSERT_EQ(shownPage(), page);
    }
    [[nodiscard]] QString titleOfRound()
    {
        return find<QLabel>(pageOf("Round"), "pageTitle")->text();
    }
    // A letter that acts on the row in hand, once it is plain that no scanner sends it.
    void letter(int key, const std::function<bool()>& isDone)
    {
        press(key);
        ASSERT_TRUE(soon(isDone)) << char(key);
    }
    void sowByDialog(const char* medium, int count)
    {
        goTo("Trays");
        auto* sow = find<QPushButton>(pageOf("Trays"), "sow");
        sow->setFocus();
        press(Qt::Key_Space);
        auto* dialog = window->findChild<SowDialog*>();
        ASSERT_NE(dialog, nullptr);
        dialog->activateWindow();
        ASSERT_TRUE(soon([&] { return QApplication::activeWindow() == dialog; }));
        chooseByKeys(*dialog, "variety", "Broccoli");
        chooseByKeys(*dialog, "medium", medium);
        auto* number = find<QSpinBox>(*dialog, "count");
        number->setFocus();
        number->selectAll();
        type(QString::number(count));
        find<QPushButton>(*dialog, "sowNow")->setFocus();
        press(Qt::Key_Space);
        ASSERT_TRUE(soon([&] { return window->findChild<SowDialog*>() == nullptr; }));
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    void chooseByKeys(QWidget& within, const char* box, const QString& item)
    {
        auto* list = find<QComboBox>(within, box);
        list->setFocus();
        press(Qt::Key_Home);
        for (int i = 0; i < list->count() && list->currentText() != item; ++i) {
            press(Qt::Key_Down);
        }
        ASSERT_EQ(list->currentText(), item);
    }

    // Walks the round in front: decides what is asked, ticks what is to water. A tray in `notYet`
    // is put off.
    void walk(const std::set<std::string>& notYet = {})
    {
        for (const std::string& code : notYet) {
            scan(QString::fromStdString(code));
            const auto delay = [&] {
                return sheetOf(code.c_str()).record.stages.front().delayMinutes;
            };
            const int before = delay();
            letter(Qt::Key_N, [&] { return delay() > before; });
        }
        goTo("Round"); // to the top
        for (int steps = 0; steps < 40; ++steps) {
            if (auto* asked = qobject_cast<DecisionRow*>(QApplication::focusWidget())) {
                ASSERT_TRUE(asked->decision().to) << "a harvest is no part of the walk";
                const TrayId tray = asked->decision().tray;
                const auto stage = [&] { return sheetOf(tray).plan.current; };
                const auto before = stage();
                letter(Qt::Key_R, [&] { return stage() != before; });
                QCoreApplication::sendPostedEvents();
                continue;
            }
            const auto* row = qobject_cast<TrayRow*>(QApplication::focusWidget());
            if (row == nullptr || row->tray().isDone()) {
                break;
            }
            ++tally[row->tray().code].waterings;
            press(Qt::Key_Space);
            QCoreApplication::sendPostedEvents();
        }
        const Round round = journal->watering().roundNow().value();
        EXPECT_EQ(round.doneCount(), round.toDoCount());
    }
    void wholeDay(int number)
    {
        itIs(number, 7, 5);
        goTo("Round");
        ASSERT_EQ(titleOfRound(), "Morning round") << number;
        walk();
        itIs(number, 18, 5);
        goTo("Round");
        ASSERT_EQ(titleOfRound(), "Evening round") << number;
        walk();
    }

    // Enter again accepts a weight that is asked about.
    void weighIn(const char* code, const char* gross)
    {
        scan(code);
        ASSERT_EQ(fieldText("Weigh-in", "code"), code);
        ASSERT_EQ(nameOfFocus(), "gross");
        enter(gross);
        if (sheetOf(code).harvests.empty()) {
            press(Qt::Key_Return);
        }
        ASSERT_EQ(sheetOf(code).harvests.size(), 1U) << code << " " << gross;
    }

    void expectTally(const char* code)
    {
        const Tally& wanted = tally[code];
        const TraySheet sheet = sheetOf(code);
        int between = 0;
        for (const Watering& each : sheet.waterings) {
            between += each.isBetween ? 1 : 0;
        }
        EXPECT_EQ(between, wanted.between) << code;
        EXPECT_EQ(static_cast<int>(sheet.waterings.size()) - between, wanted.waterings) << code;
        EXPECT_EQ(sheet.record.tray.state, wanted.state) << code;
        std::vector<std::string> notes;
        for (const TrayNote& note : sheet.notes) {
            notes.push_back(note.text);
        }
        EXPECT_EQ(notes, wanted.notes) << code;
        std::vector<Length> heights;
        for (const Height& height : sheet.heights) {
            heights.push_back(height.reading);
        }
        EXPECT_EQ(heights, wanted.heights) << code;
        ASSERT_EQ(sheet.harvests.size(), wanted.weight ? 1U : 0U) << code;
        if (wanted.weight) {
            EXPECT_EQ(sheet.harvests.front().net, *wanted.weight) << code;
        }
    }
    [[nodiscard]] std::vector<PieceRecord> mats()
    {
        return journal->media().pieces(inertMedium(true).id).value();
    }

    void sowTheRoom();
    void takeASlipBack();
    void scanAwayFromTheRound();
    void putUnderTheDome();
    void bringIntoTheLight();
    void waterAsNeeded();
    void nearlyForget();
    void discardOne();
    void cutAndWeigh();
    void washAndSowAgain();
};

// Day 1: two trays on a loose mix, two on mats that are used again.
void LifeOfARoomTest::sowTheRoom()
{
    ASSERT_TRUE(journal->media().addPieces(inertMedium(true).id, 2, kFirst));
    clock.set({kFirst, 6 * 60 + 50});
    openWindow();
    sowByDialog(inertMedium().name.c_str(), 2);
    sowByDialog(inertMedium(true).name.c_str(), 2);
    ASSERT_EQ(journal->trays().list({})->size(), 4U);
    EXPECT_EQ(mats().front().uses, 1);
}

// Day 2: the walk then ticks the tray.
void LifeOfARoomTest::takeASlipBack()
{
    itIs(2, 7, 5);
    goTo("Round");
    press(Qt::Key_Space);
    ASSERT_EQ(journal->watering().roundNow()->doneCount(), 1);
    letter(Qt::Key_U, [&] { return journal->watering().roundNow()->doneCount() == 0; });
    walk();
    itIs(2, 18, 5);
    goTo("Round");
    walk();
}

// Day 3: a label read on the page of trials, and one into a note.
void LifeOfARoomTest::scanAwayFromTheRound()
{
    itIs(3, 7, 5);
    goTo("Trials");
    scan("BR003");
    ASSERT_TRUE(sheetShows("BR003"));
    goTo("Round");
    scan("br002");
    ASSERT_EQ(nameOfFocus(), "trayBR002");
    letter(Qt::Key_T, [] { return nameOfFocus() == "note"; });
    type("slow");
    scan("BR004");
    ASSERT_EQ(nameOfFocus(), "trayBR004");
    tally["BR002"].notes = {"slow"};
    goTo("Round");
    walk();
    itIs(3, 18, 5);
    goTo("Round");
    walk();
}

// Day 4: three go under the dome, the slow one in the evening. The evening's round is walked late;
// what is ticked past midnight is still its own.
void LifeOfARoomTest::putUnderTheDome()
{
    itIs(4, 7, 5);
    goTo("Round");
    walk({"BR002"});
    itIs(4, 18, 5);
    goTo("Round");
    ASSERT_EQ(titleOfRound(), "Evening round");
    auto* asked = qobject_cast<DecisionRow*>(QApplication::focusWidget());
    ASSERT_NE(asked, nullptr);
    ASSERT_EQ(asked->codes(), "BR002");
    letter(Qt::Key_R, [&] { return sheetOf("BR002").plan.current == 1U; });
    itIs(4, 23, 58);
    scan("BR001");
    press(Qt::Key_Space);
    ++tally["BR001"].waterings;
    itIs(5, 0, 1);
    ASSERT_TRUE(soon([&] { return find<QWidget>(pageOf("Round"), "dueBar")->isVisible(); }));
    for (const char* code : {"BR002", "BR003", "BR004"}) {
        scan(code);
        press(Qt::Key_Space);
        ++tally[code].waterings;
    }
    EXPECT_EQ(journal->watering().round(day(4), Slot::Evening)->doneCount(), 4);
    EXPECT_EQ(journal->watering().roundNow()->doneCount(), 0);
}

// Day 5: the slow one in the evening again.
void LifeOfARoomTest::bringIntoTheLight()
{
    wholeDay(5);
    for (const char* code : {"BR001", "BR002", "BR003", "BR004"}) {
        EXPECT_EQ(sheetOf(code).plan.current, 2U) << code;
    }
}

// Day 6, and a height.
void LifeOfARoomTest::waterAsNeeded()
{
    itIs(6, 7, 5);
    goTo("Round");
    scan("BR001");
    letter(Qt::Key_H, [] { return nameOfFocus() == "height"; });
    enter("42");
    tally["BR001"].heights = {millimetres(42)};
    goTo("Round");
    walk();
    itIs(6, 11, 0);
    scan("BR003");
    letter(Qt::Key_A, [&] { return window->findChild<QDialog*>("betweenDialog") != nullptr; });
    auto* dialog = window->findChild<QDialog*>("betweenDialog");
    ASSERT_TRUE(soon([&] { return QApplication::activeWindow() == dialog; }));
    ASSERT_EQ(nameOfFocus(), "betweenAmount");
    pressCtrl(Qt::Key_A);
    enter("150");
    ++tally["BR003"].between;
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    itIs(6, 18, 5);
    goTo("Round");
    walk();
}

// Nobody comes for three days.
void LifeOfARoomTest::nearlyForget()
{
    itIs(10, 7, 5);
    goTo("Round");
    EXPECT_EQ(find<QLabel>(pageOf("Round"), "forgottenWords")->text(),
              QString::fromUtf8("Not watered for 4 days: BR001–004."));
    walk();
    EXPECT_TRUE(soon([&] { return !find<QWidget>(pageOf("Round"), "forgotten")->isVisible(); }));
    itIs(10, 18, 5);
    goTo("Round");
    walk();
}

// Day 11: one tray moulds.
void LifeOfARoomTest::discardOne()
{
    itIs(11, 7, 5);
    goTo("Trays");
    scan("BR004");
    ask.lineAnswer = "mould";
    find<QPushButton>(*window, "discard")->setFocus();
    press(Qt::Key_Space);
    tally["BR004"].state = TrayState::Discarded;
    goTo("Round");
    walk();
    itIs(11, 18, 5);
    goTo("Round");
    walk();
}

// Day 13: two trays in the morning, a decimal point slips; the slow one in the evening.
void LifeOfARoomTest::cutAndWeigh()
{
    itIs(13, 7, 5);
    goTo("Round");
    scan("BR002");
    press(Qt::Key_Space);
    ++tally["BR002"].waterings;
    ASSERT_TRUE(soon([&] { return badgeOf("Weigh-in") == "3"; }));
    scan("BR001");
    letter(Qt::Key_R, [&] { return shownPage() == "Weigh-in"; });
    scan("BR001");
    enter("3250");
    if (sheetOf("BR001").harvests.empty()) {
        press(Qt::Key_Escape); // asked about at once
    } else {
        pressCtrl(Qt::Key_Z);
    }
    ASSERT_TRUE(sheetOf("BR001").harvests.empty());
    weighIn("BR001", "325.0");
    weighIn("BR003", "310.5");
    itIs(13, 18, 5);
    goTo("Weigh-in");
    weighIn("BR002", "301.0");
    for (const auto& [code, weight] :
         std::map<const char*, double>{{"BR001", 325.0}, {"BR003", 310.5}, {"BR002", 301.0}}) {
        tally[code].weight = grams(weight);
        tally[code].state = TrayState::Harvested;
    }
}

// A mat can't be sown on before it was washed.
void LifeOfARoomTest::washAndSowAgain()
{
    ASSERT_TRUE(mats().front().needsSanitising);
    goTo("Set-up");
    auto* setup = qobject_cast<SetupPage*>(&pageOf("Set-up"));
    setup->showPart("Media");
    auto* records = window->findChild<QListWidget*>("records");
    for (QListWidget* each : pageOf("Set-up").findChildren<QListWidget*>("records")) {
        records = each->isVisible() ? each : records;
    }
    records->setFocus();
    press(Qt::Key_Home);
    const QString mat = QString::fromStdString(inertMedium(true).name);
    for (int i = 0; i < records->count() && records->currentItem()->text() != mat; ++i) {
        press(Qt::Key_Down);
    }
    ASSERT_EQ(records->currentItem()->text(), mat);
    QListWidget* pieces = nullptr;
    for (QListWidget* each : pageOf("Set-up").findChildren<QListWidget*>("pieces")) {
        pieces = each->isVisible() ? each : pieces;
    }
    ASSERT_NE(pieces, nullptr);
    pieces->setFocus();
    press(Qt::Key_Home);
    press(Qt::Key_Space);
    auto* wash = find<QPushButton>(pageOf("Set-up"), "sanitise");
    wash->setFocus();
    press(Qt::Key_Space);
    ASSERT_FALSE(mats().front().needsSanitising);
    sowByDialog(inertMedium(true).name.c_str(), 1);
}

TEST_F(LifeOfARoomTest, ThirteenDaysEndAsTheTallyOnPaperSays)
{
    sowTheRoom();
    wholeDay(1);
    takeASlipBack();
    scanAwayFromTheRound();
    putUnderTheDome();
    bringIntoTheLight();
    waterAsNeeded();
    nearlyForget();
    discardOne();
    wholeDay(12);
    cutAndWeigh();
    washAndSowAgain();

    for (const char* code : {"BR001", "BR002", "BR003", "BR004"}) {
        expectTally(code);
    }
    // By hand: twice a day on days 1 to 6 and 10 to 12, sown before the first round, cut or thrown
    // away before they were watered on the last; BR002 was watered once more on day 13.
    EXPECT_EQ(tally["BR001"].waterings, 2 * 6 + 2 * 3);
    EXPECT_EQ(tally["BR002"].waterings, 2 * 6 + 2 * 3 + 1);
    EXPECT_EQ(tally["BR003"].waterings, 2 * 6 + 2 * 3);
    EXPECT_EQ(tally["BR004"].waterings, 2 * 6 + 2 * 1);
    EXPECT_EQ(sheetOf("BR002").record.stages[0].delayMinutes, 11 * 60 + 10)
        << "from ten to seven to the evening's round";
    EXPECT_EQ(sheetOf("BR001").record.stages[0].delayMinutes, 0);
    // The first mat carries its second tray; the one under the mould is still to be washed.
    EXPECT_EQ(mats()[0].uses, 2);
    EXPECT_EQ(sheetOf("BR005").record.tray.state, TrayState::Growing);
    EXPECT_EQ(journal->trays().list({})->size(), 5U);
}

} // namespace
} // namespace plumule::ui
