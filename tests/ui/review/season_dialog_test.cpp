#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/review/season_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/review/metric_text.h"
#include "ui/review/season_dialog.h"
#include "ui/widget/date_field.h"

#include <QClipboard>
#include <QComboBox>

namespace plumule::ui {
namespace {

class SeasonDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<SeasonDialog> dialog;

    void openDialog(const Season& season)
    {
        dialog = std::make_unique<SeasonDialog>(*journal, services(), season);
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    [[nodiscard]] Season unnamed() const
    {
        Season season;
        season.startsOn = date(2026, 3, 12);
        return season;
    }
    [[nodiscard]] Season stored(const char* name, Date startsOn)
    {
        Season season;
        season.name = name;
        season.startsOn = startsOn;
        const auto saved = journal->seasons().save(season);
        EXPECT_TRUE(saved);
        return saved.value_or(Season());
    }
    [[nodiscard]] std::vector<Season> seasons()
    {
        std::vector<Season> all;
        const auto spans = journal->seasons().all().value_or(std::vector<SeasonSpanOfDays>());
        for (const SeasonSpanOfDays& each : spans) {
            all.push_back(each.season);
        }
        return all;
    }
    void save() { click(find<QPushButton>(*dialog, "seasonSave")); }
    [[nodiscard]] QString refusal()
    {
        const auto* shown = find<QLabel>(*dialog, "refusal");
        return shown->isVisible() ? shown->text() : QString();
    }
    void harvestOne()
    {
        const auto trays = growDueTrays(1);
        WeighingDraft weighing;
        weighing.tray = trays.front();
        weighing.bowls = {{grams(300), grams(0)}};
        weighing.at = clock.now();
        ASSERT_TRUE(journal->harvests().record(weighing));
    }
};

TEST_F(SeasonDialogTest, DeclaresWhatWasTypedWithEnterAsOneActThatIsTakenBack)
{
    openDialog(unnamed());
    EXPECT_EQ(dialog->findChild<QPushButton*>("seasonRemove"), nullptr);
    write(*dialog, "seasonName", "Spring");
    write(*dialog, "seasonPlanned", "6");
    find<QComboBox>(*dialog, "seasonMetric")->setCurrentText(metricName(Response::CostPerGram));
    find<QLineEdit>(*dialog, "seasonName")->setFocus();
    const int before = actsIn(*journal);
    press(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    ASSERT_EQ(seasons().size(), 1U) << refusal().toStdString();
    EXPECT_EQ(seasons().front().name, "Spring");
    EXPECT_EQ(seasons().front().startsOn, date(2026, 3, 12));
    EXPECT_EQ(seasons().front().plannedTrials, 6);
    EXPECT_EQ(seasons().front().mainMetric, Response::CostPerGram);
    EXPECT_EQ(actsIn(*journal), before + 1);
    EXPECT_TRUE(messages.text().contains("Spring"));
    auto* undo = messages.findChild<QPushButton*>("messageAction");
    ASSERT_TRUE(undo->isVisible()) << "what was saved can be taken back";
    click(undo);
    EXPECT_TRUE(seasons().empty());
}

TEST_F(SeasonDialogTest, RefusesWhatIsMissingOrTakenInWords)
{
    const Season spring = stored("Spring", date(2026, 2, 1));
    openDialog(unnamed());
    save();
    EXPECT_FALSE(refusal().isEmpty()) << "no name";
    write(*dialog, "seasonName", "Spring");
    save();
    EXPECT_TRUE(refusal().contains("Spring")) << refusal().toStdString();
    write(*dialog, "seasonName", "Summer");
    give(*dialog, "seasonStart", "2026-02-01");
    save();
    EXPECT_TRUE(refusal().contains("Spring")) << refusal().toStdString();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(seasons().size(), 1U);
}

TEST_F(SeasonDialogTest, RefusesANumberOfTrialsThatIsNoneOrTooManyInWords)
{
    openDialog(unnamed());
    write(*dialog, "seasonName", "Spring");
    for (const char* typed : {"some", "1.5", "0", "-3", "100000"}) {
        write(*dialog, "seasonPlanned", typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(dialog->isVisible()) << typed;
        EXPECT_FALSE(refusal().isEmpty()) << typed;
        EXPECT_TRUE(seasons().empty()) << typed;
    }
    write(*dialog, "seasonPlanned", "8");
    press(Qt::Key_Return);
    ASSERT_EQ(seasons().size(), 1U) << refusal().toStdString();
    EXPECT_EQ(seasons().front().plannedTrials, 8);
}

TEST_F(SeasonDialogTest, RefusesADayThatIsNoneInWords)
{
    openDialog(unnamed());
    write(*dialog, "seasonName", "Spring");
    give(*dialog, "seasonStart", "soon");
    save();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_TRUE(seasons().empty());
    give(*dialog, "seasonStart", "1 Apr 2026");
    save();
    ASSERT_EQ(seasons().size(), 1U);
    EXPECT_EQ(seasons().front().startsOn, date(2026, 4, 1));
}

TEST_F(SeasonDialogTest, ShowsWhatIsStoredAndChangesItsNameAlone)
{
    Season season = stored("Spring", date(2026, 3, 20));
    season.plannedTrials = 5;
    season.mainMetric = Response::Residue;
    ASSERT_TRUE(journal->seasons().save(season));
    openDialog(season);
    EXPECT_EQ(find<QLineEdit>(*dialog, "seasonName")->text(), "Spring");
    EXPECT_EQ(find<DateField>(*dialog, "seasonStart")->date(), date(2026, 3, 20));
    EXPECT_EQ(find<QLineEdit>(*dialog, "seasonPlanned")->text(), "5");
    EXPECT_EQ(find<QComboBox>(*dialog, "seasonMetric")->currentText(),
              metricName(Response::Residue));
    write(*dialog, "seasonName", "Early spring");
    press(Qt::Key_Return);
    season.name = "Early spring";
    ASSERT_EQ(seasons().size(), 1U);
    EXPECT_EQ(seasons().front(), season);
}

TEST_F(SeasonDialogTest, WhatCountsIsNotChosenAfterTheFirstHarvest)
{
    const Season season = stored("Winter", date(2026, 2, 1));
    harvestOne();
    openDialog(season);
    find<QComboBox>(*dialog, "seasonMetric")->setCurrentText(metricName(Response::Residue));
    save();
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_EQ(seasons().front(), season);
}

TEST_F(SeasonDialogTest, RemovesItOnceAgreedAndOffersItBack)
{
    const Season season = stored("Spring", date(2026, 3, 20));
    openDialog(season);
    ask.agrees = false;
    click(find<QPushButton>(*dialog, "seasonRemove"));
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(seasons().size(), 1U);
    EXPECT_TRUE(dialog->isVisible());
    ask.agrees = true;
    click(find<QPushButton>(*dialog, "seasonRemove"));
    EXPECT_TRUE(seasons().empty());
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(messages.text().contains("Spring")) << messages.text().toStdString();
    auto* undo = messages.findChild<QPushButton*>("messageAction");
    ASSERT_TRUE(undo->isVisible());
    click(undo);
    ASSERT_EQ(seasons().size(), 1U);
    EXPECT_EQ(seasons().front().name, "Spring");
}

TEST_F(SeasonDialogTest, ASeasonWithHarvestsIsNotRemoved)
{
    const Season season = stored("Winter", date(2026, 2, 1));
    harvestOne();
    openDialog(season);
    click(find<QPushButton>(*dialog, "seasonRemove"));
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(seasons().size(), 1U);
}

TEST_F(SeasonDialogTest, EscapeAsksWhereSomethingWasTypedAndChangesNothing)
{
    openDialog(unnamed());
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(ask.questions.isEmpty());
    openDialog(unnamed());
    write(*dialog, "seasonName", "Spring");
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(seasons().empty());
}

TEST_F(SeasonDialogTest, NamesAreKeptAsTheyAreTyped)
{
    Date day = date(2026, 3, 12);
    for (const HostileText& each : hostileTexts()) {
        Season season = unnamed();
        season.startsOn = day;
        openDialog(season);
        putInto(*dialog, "seasonName", each.text);
        press(Qt::Key_Return);
        ASSERT_FALSE(dialog->isVisible()) << each.what << ": " << refusal().toStdString();
        EXPECT_EQ(QString::fromStdString(seasons().back().name), each.text) << each.what;
        EXPECT_TRUE(messages.text().contains(each.text)) << each.what;
        day = day + 1;
    }
}

TEST_F(SeasonDialogTest, ANameIsOneLine)
{
    openDialog(unnamed());
    auto* name = find<QLineEdit>(*dialog, "seasonName");
    name->setFocus();
    QGuiApplication::clipboard()->setText("Early\nspring");
    press(Qt::Key_V, Qt::ControlModifier);
    press(Qt::Key_Return);
    ASSERT_EQ(seasons().size(), 1U) << refusal().toStdString();
    EXPECT_EQ(seasons().front().name, "Early spring");
}

TEST_F(SeasonDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const Season season = stored("Spring", date(2026, 3, 20));
    const auto faults =
        faultsOfDialog([&] { return new SeasonDialog(*journal, services(), season); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
