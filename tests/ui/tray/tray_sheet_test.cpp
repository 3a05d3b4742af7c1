#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/room/room_entries.h"
#include "tests/ui/tray/tray_fixture.h"
#include "ui/tray/place_dialog.h"
#include "ui/tray/stage_strip.h"
#include "ui/tray/start_dialog.h"
#include "ui/widget/date_field.h"

#include <QListWidget>
#include <QSignalSpy>

#include <filesystem>

namespace plumule::ui {
namespace {

Stage stageNow(const TraySheet& sheet)
{
    return sheet.plan.spans[sheet.plan.current.value()].stage;
}

TEST_F(TrayPageTest, MovesTheTrayOnToItsNextStage)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    EXPECT_EQ(find<QPushButton>(sheet(), "moveOn")->text(), "Into blackout");
    pressOnSheet("moveOn");
    EXPECT_EQ(stageNow(sheetOf("BR001")), Stage::Blackout);
    EXPECT_TRUE(messages.text().contains("BR001"));
    EXPECT_TRUE(soon([&] { return find<QPushButton>(sheet(), "moveOn")->text() == "Into light"; }));
    pressOnSheet("moveOn");
    EXPECT_TRUE(soon([&] { return find<QPushButton>(sheet(), "weigh")->isVisible(); }));
    EXPECT_FALSE(find<QPushButton>(sheet(), "moveOn")->isVisible());
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_EQ(stageNow(sheetOf("BR001")), Stage::Blackout);
}

TEST_F(TrayPageTest, NotYetMovesTheHarvestByHalfADay)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    const Moment before = sheetOf("BR001").plan.harvest;
    pressOnSheet("notYet");
    EXPECT_EQ(sheetOf("BR001").plan.harvest - before, 12 * 60);
    EXPECT_EQ(sheetOf("BR001").plan.harvestPlanned, before);
}

TEST_F(TrayPageTest, DiscardsWithTheReasonAndFreesThePlace)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    const std::size_t freeBefore = journal->room().freeSpots()->size();
    ask.lineAnswer = "mould";
    pressOnSheet("discard");
    EXPECT_EQ(ask.questions, QStringList({"Discard this tray"}));
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Discarded);
    EXPECT_EQ(sheetOf("BR001").record.tray.discardReason, "mould");
    EXPECT_EQ(journal->room().freeSpots()->size(), freeBefore + 1);
    EXPECT_TRUE(sheetSays("discarded: mould"));
    EXPECT_FALSE(find<QPushButton>(sheet(), "discard")->isVisible());
    EXPECT_FALSE(find<QPushButton>(sheet(), "moveOn")->isVisible());
}

TEST_F(TrayPageTest, DiscardsNothingWithoutAReason)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    pressOnSheet("discard"); // and the question is left
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Growing);
}

TEST_F(TrayPageTest, AHeightReadFromTheRimIsCorrectedByTheMediumsDepth)
{
    growDueTrays(1);
    openSheetOf("BR001");
    const double depth = inMillimetres(inertMedium().surfaceBelowRim.value());
    find<QComboBox>(sheet(), "readFrom")->setCurrentIndex(1);
    find<QLineEdit>(sheet(), "height")->setFocus();
    enter("42");
    const TraySheet known = sheetOf("BR001");
    ASSERT_EQ(known.heights.size(), 1U);
    EXPECT_EQ(known.heights.front().from, ReadFrom::Rim);
    EXPECT_EQ(known.heights.front().reading, millimetres(42));
    const auto above = heightAboveSurface(known.heights.front(), known.record.medium);
    ASSERT_TRUE(above);
    EXPECT_DOUBLE_EQ(inMillimetres(*above), 42 + depth);
    EXPECT_EQ(find<QLineEdit>(sheet(), "height")->text(), "");
    EXPECT_TRUE(sheetSays("rim readings are corrected by it"));
    EXPECT_TRUE(sheetSays("1 reading."));
}

TEST_F(TrayPageTest, AHeightThatIsNoneIsMarkedAndNotKept)
{
    growDueTrays(1);
    openSheetOf("BR001");
    find<QLineEdit>(sheet(), "height")->setFocus();
    enter("tall");
    EXPECT_TRUE(sheetOf("BR001").heights.empty());
    EXPECT_EQ(find<QLineEdit>(sheet(), "height")->text(), "tall");
}

TEST_F(TrayPageTest, KeepsANoteAndRemovesIt)
{
    growDueTrays(1);
    openSheetOf("BR001");
    find<QLineEdit>(sheet(), "note")->setFocus();
    enter("  ");
    EXPECT_TRUE(sheetOf("BR001").notes.empty());
    find<QLineEdit>(sheet(), "note")->clear();
    enter("Slow corner by the fan");
    ASSERT_EQ(sheetOf("BR001").notes.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").notes.front().text, "Slow corner by the fan");
    EXPECT_EQ(find<QLineEdit>(sheet(), "note")->text(), "");
    EXPECT_EQ(nameOfFocus(), "note");
    EXPECT_TRUE(sheetSays("Slow corner by the fan"));
    ASSERT_TRUE(soon([&] { return buttonSaying("Remove") != nullptr; }));
    click(buttonSaying("Remove"));
    EXPECT_TRUE(sheetOf("BR001").notes.empty());
}

TEST_F(TrayPageTest, KeepsAPhotographBesideTheJournal)
{
    growDueTrays(1);
    openSheetOf("BR001");
    const QString file = folder.path() + "/seen.png";
    QImage picture(40, 30, QImage::Format_RGB32);
    picture.fill(Qt::darkGreen);
    ASSERT_TRUE(picture.save(file));
    ask.fileAnswer = file;
    pressOnSheet("addPhoto");
    ASSERT_EQ(sheetOf("BR001").photos.size(), 1U) << messages.text().toStdString();
    EXPECT_TRUE(
        std::filesystem::exists(journal->photoFolder() / sheetOf("BR001").photos.front().fileName));
    EXPECT_TRUE(soon([&] {
        const auto labels = sheet().findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [](const QLabel* each) {
            return each->isVisible() && !each->pixmap(Qt::ReturnByValue).isNull() &&
                   each->pixmap(Qt::ReturnByValue).toImage().pixelColor(5, 5) ==
                       QColor(Qt::darkGreen);
        });
    }));
}

TEST_F(TrayPageTest, RefusesAPhotographThatIsNotThere)
{
    growDueTrays(1);
    openSheetOf("BR001");
    ask.fileAnswer = folder.path() + "/gone.png";
    pressOnSheet("addPhoto");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(sheetOf("BR001").photos.empty());
}

TEST_F(TrayPageTest, CorrectsWhenAStageBegan)
{
    growDueTrays(1);
    openSheetOf("BR001");
    const Moment before = sheetOf("BR001").plan.harvest;
    auto* correct = buttonSaying("Correct when " + nameOf(Stage::Light) + " began");
    ASSERT_NE(correct, nullptr);
    click(correct);
    auto* dialog = find<StartDialog>(*page, "startDialog");
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(find<DateField>(*dialog, "startDay")->date(), date(2026, 3, 4));
    give(*dialog, "startDay", "2026-03-05");
    give(*dialog, "startTime", "9");
    click(find<QPushButton>(*dialog, "startSave"));
    const TraySheet known = sheetOf("BR001");
    EXPECT_EQ(known.plan.spans.back().start, (Moment{date(2026, 3, 5), 9 * 60}));
    EXPECT_EQ(known.plan.harvest - before, kMinutesPerDay + 90);
    EXPECT_TRUE(sheetSays("began 5 Mar, 09:00"));
}

TEST_F(TrayPageTest, RefusesAStartBeforeTheStageBeforeIt)
{
    growDueTrays(1);
    openSheetOf("BR001");
    click(buttonSaying("Correct when " + nameOf(Stage::Light) + " began"));
    auto* dialog = find<StartDialog>(*page, "startDialog");
    give(*dialog, "startDay", "2026-03-01");
    click(find<QPushButton>(*dialog, "startSave"));
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(sheetOf("BR001").plan.spans.back().start.date, date(2026, 3, 4));
}

TEST_F(TrayPageTest, MovesTheTrayToAnotherPlace)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    const Spot target = journal->room().freeSpots()->at(4);
    pressOnSheet("movePlace");
    auto* dialog = find<PlaceDialog>(*page, "placeDialog");
    ASSERT_NE(dialog, nullptr);
    auto* places = find<QListWidget>(*dialog, "placeList");
    places->setCurrentRow(4);
    click(find<QPushButton>(*dialog, "placeMove"));
    ASSERT_TRUE(sheetOf("BR001").spot);
    EXPECT_EQ(sheetOf("BR001").spot->place, target.place);
    EXPECT_TRUE(sheetSays(nameOf(std::optional(target))));
    EXPECT_EQ(sheetOf("BR001").stays.size(), 2U);
}

TEST_F(TrayPageTest, TakesTheTrayOffTheRacks)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    pressOnSheet("movePlace");
    auto* dialog = find<PlaceDialog>(*page, "placeDialog");
    auto* places = find<QListWidget>(*dialog, "placeList");
    places->setCurrentRow(places->count() - 1);
    click(find<QPushButton>(*dialog, "placeMove"));
    EXPECT_FALSE(sheetOf("BR001").spot);
}

TEST_F(TrayPageTest, SetsAHarvestedTrayAsideAndCountsItAgain)
{
    const auto trays = growDueTrays(1);
    WeighingDraft weighing;
    weighing.tray = trays.front();
    weighing.bowls = {{grams(300), grams(0)}};
    weighing.at = clock.now();
    ASSERT_TRUE(journal->harvests().record(weighing));
    openSheetOf("BR001");
    ask.lineAnswer = "fan failed";
    pressOnSheet("setAside");
    EXPECT_EQ(sheetOf("BR001").record.tray.setAsideReason, "fan failed");
    EXPECT_TRUE(sheetSays("set aside: fan failed"));
    EXPECT_EQ(find<QPushButton>(sheet(), "setAside")->text(), "Count it again");
    pressOnSheet("setAside");
    EXPECT_FALSE(sheetOf("BR001").record.tray.setAsideReason);
    EXPECT_EQ(ask.questions.size(), 1);
}

TEST_F(TrayPageTest, ShowsWeightsAndCostOfAHarvestedTray)
{
    const auto trays = growDueTrays(1);
    WeighingDraft weighing;
    weighing.tray = trays.front();
    weighing.bowls = {{grams(338.5), grams(38.5)}};
    weighing.at = clock.now();
    ASSERT_TRUE(journal->harvests().record(weighing));
    openSheetOf("BR001");
    EXPECT_TRUE(textsIn(sheet()).contains("300.0 g"));
    EXPECT_TRUE(textsIn(sheet()).contains("per gram of seed"));
    EXPECT_TRUE(textsIn(sheet()).contains("not known")); // no price stands in a new journal
}

TEST_F(TrayPageTest, ACostSaysWhichPriceIsMissingAndFromWhen)
{
    const auto trays = growDueTrays(1);
    const std::string medium = sheetOf(trays.front()).record.medium.name;
    ASSERT_TRUE(journal->costs().savePrice({{},
                                            PriceItem::Medium,
                                            sheetOf(trays.front()).record.medium.id,
                                            date(2026, 3, 9),
                                            money(0.5)}));
    openSheetOf("BR001");
    const QString said = textsIn(sheet()).join(' ');
    EXPECT_TRUE(said.contains(QString("The first price of %1 is from 9 Mar 2026, after the sowing.")
                                  .arg(QString::fromStdString(medium))))
        << said.toStdString();
    EXPECT_TRUE(said.contains("There is no price of work.")) << said.toStdString();
    EXPECT_TRUE(said.contains("together, as far as known"));
}

TEST_F(TrayPageTest, TheFreePlacesStandInRowsOfOneHeight)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    pressOnSheet("movePlace");
    auto* dialog = sheet().findChild<PlaceDialog*>();
    ASSERT_NE(dialog, nullptr);
    auto* list = find<QListWidget>(*dialog, "placeList");
    ASSERT_TRUE(soon([&] { return list->isVisible(); }));
    const int high = list->visualItemRect(list->item(0)).height();
    EXPECT_GT(high, list->fontMetrics().height() + scaled(6));
    EXPECT_EQ(list->visualItemRect(list->item(1)).height(), high);
    dialog->close();
}

TEST_F(TrayPageTest, LeadsToTheScaleWithItsTray)
{
    growDueTrays(1);
    openSheetOf("BR001");
    QSignalSpy asked(page.get(), &Page::weighingAsked);
    pressOnSheet("weigh");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().toString(), "BR001");
}

TEST_F(TrayPageTest, TheStripSaysItsStagesToThoseWhoCantSeeIt)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    const auto* strip = find<StageStrip>(sheet(), "stageStrip");
    EXPECT_EQ(strip->accessibleName(), "Stages");
    EXPECT_EQ(strip->accessibleDescription(),
              "under weight: planned 10 Mar, began 10 Mar; blackout: planned 13 Mar, due 13 Mar; "
              "light: planned 14 Mar, due 14 Mar");
    pressOnSheet("moveOn");
    EXPECT_TRUE(soon([&] {
        return strip->accessibleDescription().contains("blackout: planned 13 Mar, began 12 Mar");
    }));
    EXPECT_TRUE(strip->accessibleDescription().contains("light: planned 14 Mar, due 13 Mar"));
}

TEST_F(TrayPageTest, TheStripPaintsPlanAboveWhatCameOfIt)
{
    sow(broccoli(1, kTwoDaysAgo));
    StageStrip strip;
    strip.show(sheetOf("BR001").plan, kTwoDaysAgo, std::nullopt, clock.now());
    show(strip, {600, 104});
    const QImage drawn = strip.grab().toImage();
    const auto isPainted = [&](const QColor& colour) {
        for (int y = 0; y < drawn.height(); ++y) {
            for (int x = 0; x < drawn.width(); ++x) {
                if (drawn.pixelColor(x, y) == colour) {
                    return true;
                }
            }
        }
        return false;
    };
    EXPECT_TRUE(isPainted(stageColour(Stage::UnderWeight))); // has been
    EXPECT_FALSE(isPainted(stageColour(Stage::Light)));      // is still to come, hence paler
}

} // namespace
} // namespace plumule::ui
