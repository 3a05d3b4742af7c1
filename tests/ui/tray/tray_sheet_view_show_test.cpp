#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/tray/tray_fixture.h"
#include "ui/chart/chart_view.h"
#include "ui/climate/climate_card.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/theme.h"

#include <QClipboard>
#include <QFile>
#include <QScrollArea>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

// What the sheet shows of a tray's life, and what is typed into it.
class TraySheetTest : public TrayPageTest
{
protected:
    QString pictureNamed(const char* name)
    {
        const QString file = folder.filePath(name);
        QImage picture(400, 300, QImage::Format_RGB32);
        picture.fill(Qt::darkGreen);
        EXPECT_TRUE(picture.save(file));
        return file;
    }
    [[nodiscard]] QLineEdit& field(const char* name) { return *find<QLineEdit>(sheet(), name); }
    [[nodiscard]] int buttonsSaying(const QString& words)
    {
        const auto all = sheet().findChildren<QPushButton*>();
        return static_cast<int>(std::count_if(all.begin(), all.end(), [&](const auto* each) {
            return each->isVisible() && each->text() == words;
        }));
    }
    void weigh(TrayId tray, double net, bool isLast)
    {
        WeighingDraft weighing;
        weighing.tray = tray;
        weighing.bowls = {{grams(net), grams(0)}};
        weighing.at = clock.now();
        weighing.isLast = isLast;
        ASSERT_TRUE(journal->harvests().record(weighing));
    }
};

TEST_F(TraySheetTest, ShowsTheClimateUnderTheHeights)
{
    useSample();
    openSheetOf("MU035");
    auto* climate = find<ClimateCard>(sheet(), "climateCard");
    EXPECT_FALSE(climate->isHidden());
    EXPECT_EQ(find<ChartView>(*climate, "climateChart")->spec().x.key, "day");
}

TEST_F(TraySheetTest, HidesTheClimateThatNothingMeasured)
{
    growDueTrays(1);
    openSheetOf("BR001");
    EXPECT_TRUE(find<ClimateCard>(sheet(), "climateCard")->isHidden());
}

TEST_F(TraySheetTest, WhatIsNoHeightIsRefusedInWords)
{
    growDueTrays(1);
    openSheetOf("BR001");
    for (const char* typed : {"tall", "1,234", "", "-4", "9999"}) {
        messages.clear();
        write(sheet(), "height", typed);
        pressOnSheet("addHeight");
        EXPECT_TRUE(messages.isRefusal()) << typed;
        EXPECT_FALSE(messages.text().isEmpty()) << typed;
        EXPECT_EQ(field("height").text(), typed);
        EXPECT_TRUE(sheetOf("BR001").heights.empty()) << typed;
    }
    write(sheet(), "height", "41,5");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR001").heights.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").heights.front().reading, millimetres(41.5));
}

TEST_F(TraySheetTest, ANoteOrHeightThatIsTypedIsUnsavedUntilItIsKept)
{
    growDueTrays(2);
    openSheetOf("BR001");
    EXPECT_FALSE(page->hasUnsaved());
    field("note").setFocus();
    type("pale");
    EXPECT_TRUE(page->hasUnsaved());
    press(Qt::Key_Return);
    EXPECT_FALSE(page->hasUnsaved());
    field("height").setFocus();
    type("4");
    EXPECT_TRUE(page->hasUnsaved());
    page->openSheet(trayOf("BR002"));
    EXPECT_FALSE(page->hasUnsaved()) << "kept with the tray that it is about";
    EXPECT_EQ(sheetOf("BR001").heights.size(), 1U);
    EXPECT_TRUE(sheetOf("BR002").heights.empty());
}

TEST_F(TraySheetTest, EachNoteIsOneActAndIsTakenBackByItself)
{
    growDueTrays(1);
    openSheetOf("BR001");
    const int before = actsIn(*journal);
    field("note").setFocus();
    enter("first");
    enter("second");
    EXPECT_EQ(actsIn(*journal), before + 2);
    click(messages.findChild<QPushButton*>("messageAction"));
    ASSERT_EQ(sheetOf("BR001").notes.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").notes.front().text, "first");
    EXPECT_TRUE(soon([&] { return textsIn(sheet()).filter("second").isEmpty(); }));
}

TEST_F(TraySheetTest, NotesAndReasonsAreShownLetterByLetter)
{
    const auto trays = growDueTrays(2);
    openSheetOf("BR001");
    for (const HostileText& each : hostileTexts()) {
        field("note").setText(each.text);
        field("note").setFocus();
        press(Qt::Key_Return);
        EXPECT_EQ(QString::fromStdString(sheetOf("BR001").notes.back().text), each.text)
            << each.what;
        EXPECT_TRUE(sheetSays(each.text)) << each.what;
    }
    ask.lineAnswer = "<b>mould</b> & %1";
    pressOnSheet("discard");
    EXPECT_TRUE(sheetSays("<b>mould</b> & %1"));
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
}

TEST_F(TraySheetTest, ANoteOfManyLinesIsKeptOnOne)
{
    growDueTrays(1);
    openSheetOf("BR001");
    field("note").setFocus();
    QGuiApplication::clipboard()->setText("pale\nand thin");
    press(Qt::Key_V, Qt::ControlModifier);
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR001").notes.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").notes.front().text, "pale and thin");
}

TEST_F(TraySheetTest, ALongNoteNeitherWidensThePageNorIsCut)
{
    growDueTrays(1);
    ASSERT_TRUE(journal->trays().writeNote(
        trayOf("BR001"), tenThousandLetters().trimmed().toStdString(), clock.now()));
    open({816, 700});
    page->openSheet(trayOf("BR001"));
    settleDown();
    EXPECT_EQ(lostWidgets(*page).join('\n').left(400).toStdString(), "");
    EXPECT_LE(page->minimumSizeHint().width(), 816);
}

TEST_F(TraySheetTest, APhotographIsRemovedAndBroughtBack)
{
    growDueTrays(1);
    openSheetOf("BR001");
    ask.fileAnswer = pictureNamed("a.png");
    pressOnSheet("addPhoto");
    ASSERT_TRUE(soon([&] { return buttonsSaying("Remove") == 1; }));
    click(buttonSaying("Remove"));
    EXPECT_TRUE(sheetOf("BR001").photos.empty());
    EXPECT_TRUE(sheetSays("None yet. They are kept as files beside the journal."));
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_EQ(sheetOf("BR001").photos.size(), 1U);
    EXPECT_TRUE(soon([&] { return buttonsSaying("Remove") == 1; }));
}

TEST_F(TraySheetTest, APhotographWhoseFileIsGoneIsSaidToBeMissing)
{
    growDueTrays(1);
    openSheetOf("BR001");
    ask.fileAnswer = pictureNamed("a.png");
    pressOnSheet("addPhoto");
    ASSERT_EQ(sheetOf("BR001").photos.size(), 1U);
    const std::string name = sheetOf("BR001").photos.front().fileName;
    ASSERT_TRUE(std::filesystem::remove(journal->photoFolder() / name));
    page->reload();
    EXPECT_TRUE(sheetSays(QString::fromStdString(name) + " is missing"));
}

TEST_F(TraySheetTest, ManyPhotographsGoOnInTheNextRow)
{
    growDueTrays(1);
    open({816, 700});
    page->openSheet(trayOf("BR001"));
    for (const char* name : {"a.png", "b.png", "c.png", "d.png", "e.png", "f.png"}) {
        ask.fileAnswer = pictureNamed(name);
        pressOnSheet("addPhoto");
    }
    ASSERT_TRUE(soon([&] { return buttonsSaying("Remove") == 6; }));
    settleDown();
    EXPECT_EQ(lostWidgets(*page).join('\n').toStdString(), "");
}

TEST_F(TraySheetTest, AFileThatIsNoPictureIsRefusedInWords)
{
    growDueTrays(1);
    openSheetOf("BR001");
    QFile file(folder.filePath("notes.png"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("no picture");
    file.close();
    ask.fileAnswer = file.fileName();
    pressOnSheet("addPhoto");
    const bool isRefused = messages.isRefusal() && sheetOf("BR001").photos.empty();
    const bool isSaid = !isRefused && sheetSays("is missing");
    EXPECT_TRUE(isRefused || isSaid) << messages.text().toStdString();
}

TEST_F(TraySheetTest, TwoCutsAndTheirSumAreShown)
{
    const auto trays = growDueTrays(1);
    weigh(trays.front(), 200, false);
    clock.set({date(2026, 3, 19), 8 * 60});
    weigh(trays.front(), 80, true);
    openSheetOf("BR001");
    EXPECT_TRUE(sheetSays("cut 1, 12 Mar, 07:10"));
    EXPECT_TRUE(sheetSays("cut 2, 19 Mar, 08:00"));
    EXPECT_TRUE(textsIn(sheet()).contains("200.0 g"));
    EXPECT_TRUE(textsIn(sheet()).contains("80.0 g"));
}

TEST_F(TraySheetTest, AHarvestedTrayOffersWhatIsLeftToDoWithIt)
{
    const auto trays = growDueTrays(1);
    weigh(trays.front(), 300, true);
    openSheetOf("BR001");
    for (const char* name : {"moveOn", "notYet", "discard", "movePlace", "weigh", "giveWater"}) {
        EXPECT_FALSE(find<QPushButton>(sheet(), name)->isVisible()) << name;
    }
    EXPECT_TRUE(find<QPushButton>(sheet(), "setAside")->isVisible());
    EXPECT_TRUE(find<QPushButton>(sheet(), "backToList")->isVisible());
}

TEST_F(TraySheetTest, WateringsAreCountedSummedAndNamed)
{
    const auto trays = growDueTrays(1);
    BetweenDraft between;
    between.trays = trays;
    between.method = WateringMethod::Below;
    between.amount = millilitres(150);
    between.at = clock.now();
    ASSERT_TRUE(journal->watering().giveBetween(between));
    between.amount = millilitres(50);
    between.at = clock.now();
    ASSERT_TRUE(journal->watering().giveBetween(between));
    openSheetOf("BR001");
    EXPECT_TRUE(sheetSays("2 waterings"));
    const UnitText metric(UnitSystem::Metric);
    EXPECT_TRUE(sheetSays(metric.mixed(millilitres(200))));
    EXPECT_TRUE(sheetSays(metric.watering(millilitres(150)) + ' ' + nameOf(WaterKind::Plain) +
                          ", as needed"));
    QSignalSpy asked(page.get(), &Page::wateringAsked);
    pressOnSheet("giveWater");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(qvariant_cast<TrayId>(asked.front().front()), trays.front());
}

TEST_F(TraySheetTest, OneWateringIsOneWatering)
{
    const auto trays = growDueTrays(1);
    BetweenDraft between;
    between.trays = trays;
    between.at = clock.now();
    ASSERT_TRUE(journal->watering().giveBetween(between));
    openSheetOf("BR001");
    EXPECT_TRUE(sheetSays("1 watering"));
    EXPECT_TRUE(textsIn(sheet()).filter("1 waterings").isEmpty());
}

TEST_F(TraySheetTest, InUsUnitsAllOfTheSheetIsInThem)
{
    const auto trays = growDueTrays(1);
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    openSheetOf("BR001");
    write(sheet(), "height", "2");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR001").heights.size(), 1U);
    // 1 in is 25.4 mm (international inch, 1959).
    EXPECT_EQ(sheetOf("BR001").heights.front().reading, millimetres(50.8));
    weigh(trays.front(), 283.495, true);
    EXPECT_TRUE(sheetSays(UnitText(UnitSystem::UsCustomary).mass(grams(283.495))))
        << textsIn(sheet()).join('|').toStdString();
    EXPECT_TRUE(textsIn(sheet()).contains("per ounce of seed"));
    for (const QString& each : textsIn(sheet())) {
        EXPECT_FALSE(each.endsWith(" mm") || each.endsWith(" g") || each.endsWith(" mL"))
            << each.toStdString();
    }
}

TEST_F(TraySheetTest, EveryControlIsNamedAndReachedByTab)
{
    growDueTrays(1);
    openSheetOf("BR001");
    field("note").setFocus();
    enter("seen");
    settleDown();
    EXPECT_EQ(unnamedControls(*page).join('\n').toStdString(), "");
    EXPECT_EQ(unreachedByTab(*page).join('\n').toStdString(), "");
}

// The list that leads there.
TEST_F(TraySheetTest, TheListOpensSowingAndLabelsByTheirButtons)
{
    open();
    EXPECT_FALSE(find<QPushButton>(*page, "labels")->isEnabled()) << "nothing grows yet";
    EXPECT_FALSE(page->print());
    click(find<QPushButton>(*page, "sow"));
    auto* dialog = find<SowDialog>(*page, "sowDialog");
    ASSERT_TRUE(dialog->isVisible());
    QTest::keyClick(dialog, Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    sow(broccoli(1, kTwoDaysAgo));
    EXPECT_TRUE(soon([&] { return find<QPushButton>(*page, "labels")->isEnabled(); }));
}

TEST_F(TraySheetTest, ASearchWithMarksFindsWhatIsWrittenSo)
{
    const auto trays = sow(broccoli(2, kTwoDaysAgo));
    ASSERT_TRUE(journal->trays().writeNote(trays[0], "<b>100%</b> _even_", clock.now()));
    open();
    for (const char* text : {"<b>100%</b>", "_even_", "100%"}) {
        find<QLineEdit>(*page, "search")->setText(text);
        EXPECT_EQ(shown(TrayListModel::Code), QStringList("BR001")) << text;
    }
    for (const char* text : {"_", "%"}) {
        find<QLineEdit>(*page, "search")->setText(text);
        EXPECT_EQ(shown(TrayListModel::Code), QStringList("BR001"))
            << text << " stands for itself and not for any letter";
    }
    find<QLineEdit>(*page, "search")->setText(tenThousandLetters());
    EXPECT_TRUE(shown(TrayListModel::Code).isEmpty());
}

} // namespace
} // namespace plumule::ui
