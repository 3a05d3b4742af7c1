#include "ui/rack/racks_page.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/rack/rack_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/rack/arrange_dialog.h"
#include "ui/rack/free_chart.h"
#include "ui/rack/rack_view.h"
#include "ui/widget/widgets.h"

#include <QAccessible>
#include <QFile>
#include <QLabel>
#include <QMenu>
#include <QMouseEvent>
#include <QSignalSpy>
#include <QSpinBox>

namespace plumule::ui {
namespace {

// Two racks of four shelves of four places; three broccoli trays on A1, places 1 to 3.
class RacksPageTest : public GrowingTest
{
protected:
    void open(QSize size = {1232, 900})
    {
        trays = sow(broccoli(3, kTwoDaysAgo));
        page = openPage<RacksPage>(size);
        view = find<RackView>(*page, "racks");
        ASSERT_NE(view, nullptr);
    }
    [[nodiscard]] QPoint middleOf(int cell) const { return view->areaOf(cell).center(); }
    void drag(int from, QPoint to)
    {
        QTest::mousePress(view, Qt::LeftButton, {}, middleOf(from));
        moveTo(middleOf(from) + QPoint(20, 0));
        moveTo(to);
        QTest::mouseRelease(view, Qt::LeftButton, {}, to);
        settleDown();
    }
    // With the button down, which QTest::mouseMove() leaves out.
    void moveTo(QPoint to)
    {
        QMouseEvent event(QEvent::MouseMove, to, view->mapToGlobal(to), Qt::NoButton,
                          Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(view, &event);
    }
    // Where it stands, by walking order; −1 off the racks.
    int rankOf(TrayId tray)
    {
        const RoomRacks room = journal->racks().racks().value();
        const StandingPlace* place = room.placeOf(tray);
        return place == nullptr ? -1 : place->spot.rank;
    }
    int acts() { return static_cast<int>(journal->latestEntries(100)->size()); }
    bool isShown(const char* name) { return find<QWidget>(*page, name)->isVisible(); }
    QString text(const char* name) { return find<QLabel>(*page, name)->text(); }

    std::vector<TrayId> trays;
    std::unique_ptr<RacksPage> page;
    RackView* view = nullptr;
};

TEST_F(RacksPageTest, EveryPlaceIsReadOut)
{
    open();
    EXPECT_EQ(view->cellCount(), 32);
    EXPECT_TRUE(view->wordsOf(0).startsWith("A1 · place 1: BR001, Broccoli on"))
        << view->wordsOf(0).toStdString();
    EXPECT_TRUE(view->wordsOf(0).contains("under weight, day 3, to be cut in 10 days"))
        << view->wordsOf(0).toStdString();
    EXPECT_EQ(view->wordsOf(3), "A1 · place 4: free");
    auto* racks = QAccessible::queryAccessibleInterface(view);
    ASSERT_NE(racks, nullptr);
    EXPECT_EQ(racks->role(), QAccessible::List);
    ASSERT_EQ(racks->childCount(), 32);
    EXPECT_EQ(racks->child(3)->text(QAccessible::Name), view->wordsOf(3));
    EXPECT_EQ(racks->child(3)->rect().size(), view->areaOf(3).size());
    EXPECT_EQ(racks->indexOfChild(racks->child(3)), 3);
    EXPECT_EQ(racks->focusChild(), racks->child(0));
    EXPECT_EQ(racks->child(32), nullptr);
}

TEST_F(RacksPageTest, PlacesStandBesideEachOtherAsOnTheirShelf)
{
    open();
    for (int cell = 0; cell < 32; ++cell) {
        EXPECT_EQ(view->areaOf(cell).size(), view->areaOf(0).size());
        EXPECT_TRUE(view->rect().contains(view->areaOf(cell))) << cell;
        for (int other = 0; other < cell; ++other) {
            EXPECT_FALSE(view->areaOf(cell).intersects(view->areaOf(other))) << cell << other;
        }
    }
    EXPECT_EQ(view->areaOf(0).top(), view->areaOf(3).top());
    EXPECT_GT(view->areaOf(4).top(), view->areaOf(0).bottom());
    EXPECT_EQ(view->areaOf(16).top(), view->areaOf(0).top()) << "rack B stands beside rack A";
}

TEST_F(RacksPageTest, EnterAndAClickOpenTheTray)
{
    open();
    QSignalSpy asked(page.get(), &Page::trayAsked);
    press(Qt::Key_Return);
    QTest::mouseClick(view, Qt::LeftButton, {}, middleOf(2));
    ASSERT_EQ(asked.count(), 2);
    EXPECT_EQ(asked[0][0].value<TrayId>(), trays[0]);
    EXPECT_EQ(asked[1][0].value<TrayId>(), trays[2]);
    QTest::mouseClick(view, Qt::LeftButton, {}, middleOf(3));
    press(Qt::Key_Return);
    EXPECT_EQ(asked.count(), 2) << "a free place opens nothing";
}

TEST_F(RacksPageTest, KeysCarryATrayAndShowWhereItLandsBeforeItIsDone)
{
    open();
    const int before = acts();
    press(Qt::Key_Space);
    for (int i = 0; i < 3; ++i) {
        press(Qt::Key_Right);
    }
    EXPECT_TRUE(view->isCarrying());
    EXPECT_EQ(text("moveCodes"), "BR001");
    EXPECT_TRUE(textsIn(*page).contains("A1 · place 1"));
    EXPECT_TRUE(textsIn(*page).contains("A1 · place 4"));
    EXPECT_EQ(view->wordsOf(3), "A1 · place 4: free; BR001 would land here");
    EXPECT_EQ(acts(), before) << "nothing is done yet";
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(acts(), before + 1);
    EXPECT_EQ(rankOf(trays[0]), 3);
    EXPECT_FALSE(view->isCarrying());
    EXPECT_EQ(messages.text(), "Moved BR001 to A1, place 4.");
    ASSERT_TRUE(journal->undo());
    settleDown();
    EXPECT_EQ(rankOf(trays[0]), 0);
    EXPECT_TRUE(view->wordsOf(0).contains("BR001"));
}

TEST_F(RacksPageTest, EscapeLeavesItWhereItStands)
{
    open();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    EXPECT_TRUE(isShown("putHere"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(view->isCarrying());
    EXPECT_FALSE(isShown("putHere"));
    EXPECT_EQ(rankOf(trays[0]), 0);
}

TEST_F(RacksPageTest, SeveralAreChosenByShiftAndMovedAsOneAct)
{
    open();
    const int before = acts();
    press(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(view->chosen().size(), 2u);
    press(Qt::Key_Space);
    press(Qt::Key_PageDown);
    press(Qt::Key_Space);
    settleDown();
    EXPECT_EQ(rankOf(trays[0]), 16);
    EXPECT_EQ(rankOf(trays[1]), 17);
    EXPECT_EQ(acts(), before + 1);
    EXPECT_EQ(messages.text(), "Moved BR001, BR002 to B1 place 1, B1 place 2.");
    click(find<QPushButton>(messages, "messageAction"));
    settleDown();
    EXPECT_EQ(rankOf(trays[0]), 0);
    EXPECT_EQ(rankOf(trays[1]), 1);
}

TEST_F(RacksPageTest, ATrayIsDraggedToAFreePlace)
{
    open();
    drag(1, middleOf(20));
    EXPECT_EQ(rankOf(trays[1]), 20);
    EXPECT_FALSE(view->isCarrying());
}

TEST_F(RacksPageTest, DroppedBesideThePlacesItStaysWhereItStood)
{
    open();
    const int before = acts();
    drag(1, {2, 2});
    EXPECT_EQ(rankOf(trays[1]), 1);
    EXPECT_EQ(acts(), before);
    EXPECT_FALSE(view->isCarrying());
}

TEST_F(RacksPageTest, DroppedOnATrayItAsksAndSwaps)
{
    open();
    const int before = acts();
    drag(0, middleOf(2));
    EXPECT_TRUE(view->isCarrying());
    EXPECT_EQ(rankOf(trays[0]), 0) << "nothing is done yet";
    EXPECT_TRUE(textsIn(*page).contains("BR003"));
    EXPECT_FALSE(find<QPushButton>(*page, "putHere")->isEnabled());
    click(find<QPushButton>(*page, "swapTrays"));
    settleDown();
    EXPECT_EQ(rankOf(trays[0]), 2);
    EXPECT_EQ(rankOf(trays[2]), 0);
    EXPECT_EQ(acts(), before + 1);
    EXPECT_EQ(messages.text(), "Swapped the places of BR001 and BR003.");
}

TEST_F(RacksPageTest, ATakenPlaceIsRefusedByTheRulesOfPlaces)
{
    open();
    press(Qt::Key_Space);
    press(Qt::Key_Right);
    press(Qt::Key_Return);
    settleDown();
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("BR002")) << messages.text().toStdString();
    EXPECT_TRUE(view->isCarrying()) << "it can still land elsewhere";
    EXPECT_EQ(rankOf(trays[0]), 0);
}

TEST_F(RacksPageTest, XSwapsTwoChosenTrays)
{
    open();
    press(Qt::Key_Right, Qt::ShiftModifier);
    press(Qt::Key_X);
    EXPECT_TRUE(soon([&] { return rankOf(trays[0]) == 1; }));
    EXPECT_EQ(rankOf(trays[1]), 0);
}

TEST_F(RacksPageTest, DelTakesItOffAndItIsCarriedBack)
{
    open();
    press(Qt::Key_Delete);
    settleDown();
    EXPECT_EQ(rankOf(trays[0]), -1);
    EXPECT_EQ(messages.text(), "Took BR001 off the racks.");
    ASSERT_EQ(view->cellCount(), 33);
    EXPECT_TRUE(view->wordsOf(32).startsWith("Off the racks: BR001"));
    drag(32, middleOf(31));
    EXPECT_EQ(rankOf(trays[0]), 31);
    EXPECT_EQ(view->cellCount(), 32);
}

TEST_F(RacksPageTest, CtrlAndClickChooseWithoutOpening)
{
    open();
    QSignalSpy asked(page.get(), &Page::trayAsked);
    QTest::mouseClick(view, Qt::LeftButton, Qt::ControlModifier, middleOf(0));
    QTest::mouseClick(view, Qt::LeftButton, Qt::ControlModifier, middleOf(2));
    EXPECT_EQ(view->chosen().size(), 2u);
    EXPECT_EQ(text("moveCodes"), "Chosen: BR001, BR003");
    QTest::mouseClick(view, Qt::LeftButton, Qt::ControlModifier, middleOf(0));
    EXPECT_EQ(view->chosen().size(), 1u);
    EXPECT_EQ(asked.count(), 0);
    click(find<QPushButton>(*page, "takeOff"));
    settleDown();
    EXPECT_EQ(rankOf(trays[2]), -1);
    EXPECT_EQ(rankOf(trays[0]), 0);
}

TEST_F(RacksPageTest, LightsOfBothShelvesAreSaidBeforeAMove)
{
    const auto layout = journal->room().layout().value();
    ASSERT_TRUE(journal->climate().setLampLight(
        {{layout.shelves[0].id, 180.0}, {layout.shelves[1].id, 200.0}}));
    std::vector<ShelfDraft> shelves;
    for (Shelf shelf : layout.shelves) {
        shelf.lightMinutes = 14 * 60;
        shelves.push_back({shelf, 4});
    }
    ASSERT_TRUE(journal->room().changeRoom(layout.room, shelves));
    open();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    // 180 and 200 µmol/m²/s × 14 h × 0.0036.
    EXPECT_TRUE(textsIn(*page).contains("9.1 → 10.1 mol/m²"))
        << textsIn(*page).join('|').toStdString();
    EXPECT_EQ(text("moveNote"), "In no trial: a move spoils no comparison.");
}

TEST_F(RacksPageTest, PlacesThatComeFreeAreToldDayByDay)
{
    open();
    auto* chart = find<FreeChart>(*page, "freePlaces");
    const QStringList days = chart->accessibleDescription().split("; ");
    ASSERT_EQ(days.size(), 28);
    EXPECT_EQ(days[0], "Thu 12 Mar: 29 free");
    EXPECT_EQ(days[9], "Sat 21 Mar: 29 free");
    EXPECT_EQ(days[10], "Sun 22 Mar: 32 free") << "cut on the 13th day";
    EXPECT_EQ(find<PageHead>(*page, "racksHead")->subtitle(),
              "Thursday 12 March  ·  3 of 32 places taken");
}

TEST_F(RacksPageTest, TheKeyFollowsWhatTheColoursTell)
{
    open();
    auto* key = find<QWidget>(*page, "rackKey");
    EXPECT_TRUE(textsIn(*key).contains("under weight"));
    EXPECT_FALSE(textsIn(*key).contains("within a week"));
    click(find<Segmented>(*page, "shownBy")->segment(2));
    settleDown();
    EXPECT_TRUE(textsIn(*key).contains("within a week"));
    EXPECT_TRUE(textsIn(*key).contains(QString::fromStdString(inertMedium().name)));
}

TEST_F(RacksPageTest, TheSheetIsSavedAsAFile)
{
    open();
    ask.fileAnswer = folder.path() + "/racks.pdf";
    press(Qt::Key_P);
    EXPECT_TRUE(soon([&] { return page->findChild<QMenu*>("sheetMenu") != nullptr; }));
    page->findChild<QAction*>("sheetToPdf")->trigger();
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF"));
    page->findChild<QMenu*>("sheetMenu")->close();
}

TEST_F(RacksPageTest, RacksAndShelvesAreArrangedFromHere)
{
    open();
    click(find<QPushButton>(*page, "arrangeRacks"));
    auto* dialog = find<ArrangeDialog>(*page, "arrangeDialog");
    EXPECT_FALSE(find<QWidget>(*dialog, "roomName")->isVisible()) << "only the racks";
    const ShelfId shelf = journal->room().layout()->shelves[0].id;
    find<QSpinBox>(*dialog, qPrintable(QStringLiteral("places%1").arg(shelf.value)))->setValue(6);
    ask.lineAnswer = "C";
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    click(find<QPushButton>(*dialog, "addRack"));
    settleDown();
    EXPECT_EQ(journal->room().layout()->racks.size(), 3u);
    EXPECT_EQ(journal->room().layout()->placesOn(shelf), 6);
    EXPECT_EQ(view->cellCount(), 50);
    click(find<QPushButton>(*dialog, "arrangeClose"));
    EXPECT_TRUE(soon([&] { return page->findChild<ArrangeDialog*>("arrangeDialog") == nullptr; }));
}

TEST_F(RacksPageTest, InANarrowWindowWhatIsCarriedIsSaidAtTheFoot)
{
    open({760, 700});
    EXPECT_FALSE(isShown("moveCard"));
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    settleDown();
    EXPECT_TRUE(isShown("moveCard"));
    EXPECT_TRUE(isShown("putHere"));
    page->resize(1232, 700);
    settleDown();
    EXPECT_TRUE(isShown("moveCard"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(isShown("moveCard")) << "at the side it stays, and says how to move";
}

TEST_F(RacksPageTest, LettersOfAScannedCodeAreNoCommands)
{
    open();
    type("XPS");
    settleDown();
    EXPECT_EQ(page->findChild<QMenu*>("sheetMenu"), nullptr);
    EXPECT_EQ(page->findChild<QDialog*>(), nullptr);
}

} // namespace
} // namespace plumule::ui
