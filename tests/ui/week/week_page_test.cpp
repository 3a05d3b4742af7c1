#include "ui/week/week_page.h"

#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/week/week_entries.h"
#include "core/week/repeat_rules.h"
#include "tests/ui/support/aside_page.h"
#include "tests/ui/support/key_time.h"
#include "tests/ui/support/look_check.h"
#include "ui/week/repeat_dialog.h"
#include "ui/week/repeats_dialog.h"

#include <QComboBox>
#include <QFile>
#include <QMenu>
#include <QSpinBox>
#include <QTableView>

namespace plumule::ui {
namespace {

// Thursday 12 March 2026: broccoli sown two days ago, and more proposed each Thursday.
class WeekPageTest : public AsidePageTest
{
protected:
    void SetUp() override
    {
        AsidePageTest::SetUp();
        sow(broccoli(2, kTwoDaysAgo));
    }
    void TearDown() override
    {
        page.reset();
        AsidePageTest::TearDown();
    }
    RepeatId repeat(int trays, Date from, std::optional<Date> until = std::nullopt)
    {
        Repeat one;
        one.variety = varietyNamed("Broccoli");
        one.medium = inertMedium().id;
        one.trays = trays;
        one.weekdays = weekdayBit(weekdayOf(from));
        one.from = from;
        one.until = until;
        const auto saved = journal->week().save(one);
        EXPECT_TRUE(saved) << (saved ? "" : told(saved.error()));
        return saved ? saved->id : RepeatId();
    }
    void open(QSize size = {1232, 900})
    {
        page = openPage<WeekPage>(size);
        settleDown();
        keys.rule(*page);
    }
    [[nodiscard]] QString allWords() { return textsIn(*page).join('\n'); }
    [[nodiscard]] int growing()
    {
        TrayFilter filter;
        filter.state = TrayState::Growing;
        return static_cast<int>(journal->trays().list(filter)->size());
    }
    template <class Dialog>
    [[nodiscard]] Dialog* opened()
    {
        EXPECT_TRUE(soon(
            [] { return qobject_cast<Dialog*>(QApplication::activeModalWidget()) != nullptr; }));
        return qobject_cast<Dialog*>(QApplication::activeModalWidget());
    }

    std::unique_ptr<WeekPage> page;
    KeyTime keys;
};

TEST_F(WeekPageTest, SaysWhatComesAndWhen)
{
    open();
    const QString words = allWords();
    EXPECT_TRUE(words.contains("Thu 12 Mar – Wed 25 Mar")) << words.toStdString();
    EXPECT_TRUE(words.contains("<b>2</b> Broccoli, A1")) << words.toStdString();
    EXPECT_TRUE(words.contains("2 moves"));
    EXPECT_TRUE(words.contains("2 cuts"));
    EXPECT_TRUE(find<QLabel>(*page, "noProposals")->isVisible());
}

TEST_F(WeekPageTest, AKeySowsWhatIsProposedForToday)
{
    repeat(3, clock.today());
    open();
    EXPECT_EQ(find<QLabel>(*page, "proposalWhen")->text(), "Thu 12 Mar, today");
    EXPECT_TRUE(allWords().contains("<b>3*</b> Broccoli")) << allWords().toStdString();
    press(Qt::Key_1);
    ASSERT_TRUE(soon([&] { return growing() == 5; })) << messages.text().toStdString();
    EXPECT_EQ(messages.text(), "Sowed BR003, BR004, BR005.");
    ASSERT_TRUE(soon([&] { return find<QLabel>(*page, "proposalWhen")->text() == "Thu 19 Mar"; }));
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(growing(), 2);
}

TEST_F(WeekPageTest, AScannersKeysSowNothing)
{
    repeat(3, clock.today());
    open();
    keys.scan([&] { type("1111"); });
    settleDown();
    press(Qt::Key_Down);
    EXPECT_EQ(growing(), 2);
}

TEST_F(WeekPageTest, NotThisTimeSkipsOneDay)
{
    repeat(3, clock.today());
    open();
    click(find<QPushButton>(*page, "skip1"));
    ASSERT_TRUE(soon([&] { return find<QLabel>(*page, "proposalWhen")->text() == "Thu 19 Mar"; }));
    EXPECT_EQ(messages.text(), "Skipped the repeating sowing of Broccoli, " +
                                   QString::fromStdString(inertMedium().name) + " on 12 Mar.");
    EXPECT_EQ(growing(), 2);
}

TEST_F(WeekPageTest, SaysWhereASowingWasMovedTo)
{
    // 30 of 32 places are free until the two are cut.
    repeat(31, clock.today() + 1, clock.today() + 1);
    open();
    const QString when = find<QLabel>(*page, "proposalWhen")->text();
    EXPECT_TRUE(when.endsWith(", not Fri 13 Mar")) << when.toStdString();
    const QString words = find<QLabel>(*page, "proposalWords")->text();
    EXPECT_TRUE(words.startsWith("Fri 13 Mar has 30 free places,")) << words.toStdString();
}

TEST_F(WeekPageTest, RefusesInWordsWherePlacesAreShort)
{
    repeat(31, clock.today());
    open();
    press(Qt::Key_1);
    ASSERT_TRUE(soon([&] { return messages.isRefusal(); }));
    EXPECT_TRUE(messages.text().startsWith("Of 31 places that it needs 30 are free now"))
        << messages.text().toStdString();
    EXPECT_EQ(growing(), 2);
}

TEST_F(WeekPageTest, ARepeatingSowingIsAddedByHand)
{
    open();
    press(Qt::Key_R);
    auto* list = opened<RepeatsDialog>();
    ASSERT_NE(list, nullptr);
    click(find<QPushButton>(*list, "repeatAdd"));
    auto* dialog = opened<RepeatDialog>();
    ASSERT_NE(dialog, nullptr);
    auto* variety = find<QComboBox>(*dialog, "repeatVariety");
    variety->setCurrentIndex(variety->findText("Broccoli"));
    find<QSpinBox>(*dialog, "repeatTrays")->setValue(4);
    click(find<QPushButton>(*dialog, "repeatSave"));
    EXPECT_EQ(find<QLabel>(*dialog, "refusal")->text(),
              "The sowing repeats on no day: choose at least one weekday, or a number of days "
              "between sowings.");
    click(find<QPushButton>(*dialog, "weekday1"));
    click(find<QPushButton>(*dialog, "weekday4"));
    click(find<QPushButton>(*dialog, "repeatSave"));
    auto* table = find<QTableView>(*list, "repeats");
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 1; }));
    EXPECT_EQ(table->model()->index(0, 3).data().toString(), "every Mon, Thu");
    EXPECT_EQ(table->model()->index(0, 6).data().toString(), "Thu 12 Mar");

    click(find<QPushButton>(*list, "repeatsClose"));
}

TEST_F(WeekPageTest, ARepeatingSowingIsChangedAndEndedByHand)
{
    repeat(3, clock.today());
    open();
    click(find<QPushButton>(*page, "allRepeats"));
    auto* list = opened<RepeatsDialog>();
    ASSERT_NE(list, nullptr);
    auto* table = find<QTableView>(*list, "repeats");
    click(find<QPushButton>(*list, "repeatChange"));
    auto* dialog = opened<RepeatDialog>();
    ASSERT_NE(dialog, nullptr);
    EXPECT_TRUE(find<QPushButton>(*dialog, "weekday4")->isChecked());
    find<QComboBox>(*dialog, "repeatRhythm")->setCurrentIndex(1);
    find<QSpinBox>(*dialog, "repeatDays")->setValue(10);
    click(find<QPushButton>(*dialog, "repeatSave"));
    ASSERT_TRUE(
        soon([&] { return table->model()->index(0, 3).data().toString() == "every 10 days"; }));
    ASSERT_TRUE(soon([&] { return QApplication::activeModalWidget() == list; }));
    click(find<QPushButton>(*list, "repeatChange"));
    dialog = opened<RepeatDialog>();
    ASSERT_NE(dialog, nullptr);
    click(find<QPushButton>(*dialog, "repeatEnd"));
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 0; }));
    EXPECT_TRUE(ask.questions.last().startsWith("Propose it no more"));
    click(find<QPushButton>(*list, "repeatsClose"));
}

TEST_F(WeekPageTest, SavesTheWeekAsACalendarAndAsASheet)
{
    repeat(3, clock.today() + 1);
    open();
    ask.fileAnswer = folder.path() + "/week.ics";
    press(Qt::Key_K);
    ASSERT_TRUE(soon([&] { return QFile::exists(ask.fileAnswer); }));
    QFile calendar(ask.fileAnswer);
    ASSERT_TRUE(calendar.open(QIODevice::ReadOnly));
    const QByteArray text = calendar.readAll();
    EXPECT_TRUE(text.startsWith("BEGIN:VCALENDAR\r\n"));
    EXPECT_TRUE(text.contains("SUMMARY:Uncover 2 Broccoli\\, A1\r\n")) << text.toStdString();
    EXPECT_TRUE(text.contains("SUMMARY:Sow 3* Broccoli\r\n"));
    EXPECT_TRUE(text.contains("DTSTART:20260313T070000\r\n")) << "at the time of the round";
    ask.fileAnswer = folder.path() + "/week.pdf";
    press(Qt::Key_P);
    ASSERT_TRUE(soon([] { return QApplication::activePopupWidget() != nullptr; }));
    for (QAction* each : page->findChild<QMenu*>("sheetMenu")->actions()) {
        if (each->objectName() == "sheetToPdf") {
            each->trigger();
        }
    }
    QApplication::activePopupWidget()->close();
    ASSERT_TRUE(soon([&] { return QFile::exists(ask.fileAnswer); }));
    QFile sheet(ask.fileAnswer);
    ASSERT_TRUE(sheet.open(QIODevice::ReadOnly));
    EXPECT_TRUE(sheet.readAll().startsWith("%PDF"));
}

TEST_F(WeekPageTest, InANarrowWindowTheTasksStandBelowOneAnother)
{
    repeat(3, clock.today());
    open({700, 800});
    EXPECT_TRUE(allWords().contains("Uncover <b>2</b> Broccoli, A1")) << allWords().toStdString();
    page->resize(1232, 900);
    ASSERT_TRUE(soon([&] { return !allWords().contains("Uncover <b>2</b>"); }));
}

} // namespace
} // namespace plumule::ui
