#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/rice_blocks.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/harvest/weigh_question.h"
#include "ui/setup/setup_page.h"
#include "ui/trial/trials_page.h"

#include <QComboBox>
#include <QFile>
#include <QMenu>
#include <QSpinBox>

namespace plumule::ui {
namespace {

// The published trial, all of it typed and pressed in the window.
class RiceTrialTest : public WindowTest
{
protected:
    void SetUp() override { journal = riceJournal(folder.path().toStdString(), clock); }

    [[nodiscard]] TrialsPage& trials()
    {
        return *qobject_cast<TrialsPage*>(window->page("Trials"));
    }
    void nameTheRates()
    {
        window->showPage("Set-up");
        auto* setup = qobject_cast<SetupPage*>(window->page("Set-up"));
        setup->showPart("Media");
        for (const auto& [rate, yields] : m_yields) {
            click(visible("newRecord"));
            write(*setup, "mediumName", QString::fromStdString(rate));
            click(visible("saveRecord"));
            ASSERT_FALSE(window->messages().isRefusal()) << window->messages().text().toStdString();
        }
    }
    [[nodiscard]] QPushButton* visible(const char* name)
    {
        for (auto* each : window->findChildren<QPushButton*>(QString::fromLatin1(name))) {
            if (each->isVisible()) {
                return each;
            }
        }
        ADD_FAILURE() << name;
        return nullptr;
    }
    void chooseTheRates()
    {
        for (QAction* each : find<QPushButton>(trials(), "planMedia")->menu()->actions()) {
            const bool isRate = m_yields.count(each->text().toStdString()) > 0;
            if (each->isChecked() != isRate) {
                each->trigger();
            }
        }
    }
    void planAndSow()
    {
        window->showPage("Trials");
        click(find<QPushButton>(trials(), "newTrial"));
        chooseTheRates();
        write(trials(), "planQuestion", "Does the seeding rate change the yield?");
        find<QSpinBox>(trials(), "planBlocks")->setValue(4);
        find<QSpinBox>(trials(), "planEach")->setValue(4);
        give(trials(), "planDay", QString::fromStdString(toIso(clock.today())));
        auto* sow = find<QPushButton>(trials(), "planSow");
        ASSERT_TRUE(soon([&] { return sow->text() == "Sow these 24 trays" && sow->isEnabled(); }))
            << find<QLabel>(trials(), "layoutWords")->text().toStdString();
        click(sow);
        ASSERT_FALSE(window->messages().isRefusal()) << window->messages().text().toStdString();
    }
    void weighAll(const TrialProgress& progress)
    {
        goTo("Weigh-in");
        for (const TrialTray& tray : progress.trays) {
            const double net =
                m_yields.at(tray.record.medium.name).at("R" + std::to_string(tray.block));
            ASSERT_EQ(nameOfFocus(), "code") << tray.record.tray.code;
            enter(QString::fromStdString(tray.record.tray.code));
            ASSERT_EQ(nameOfFocus(), "gross");
            write(pageOf("Weigh-in"), "tare", "42");
            write(pageOf("Weigh-in"), "gross", QString::number(net + 42));
            press(Qt::Key_Return);
            keepWhatWasTyped();
            ASSERT_TRUE(soon([&] { return !sheetOf(tray.record.tray.id).harvests.empty(); }))
                << tray.record.tray.code;
            ASSERT_EQ(sheetOf(tray.record.tray.id).harvests.size(), 1U) << tray.record.tray.code;
            clearCode();
        }
    }
    // A gram a tray stands for a kg/ha: far more than any tray weighs. And none of them was moved
    // into light. Each is a question of its own.
    void keepWhatWasTyped()
    {
        auto* question = find<WeighQuestion>(pageOf("Weigh-in"), "question");
        while (question->isOpen()) {
            const QString asked = question->title();
            ASSERT_TRUE(soon([&] { return question->takesKeys(); }));
            press(asked.contains("Did you mean") ? Qt::Key_N : Qt::Key_Return);
            // A letter waits for another of a burst.
            ASSERT_TRUE(soon([&] { return question->title() != asked; })) << asked.toStdString();
        }
    }
    // The scale goes on to the next tray that is due; here the order is the block's.
    void clearCode()
    {
        auto* code = find<QLineEdit>(pageOf("Weigh-in"), "code");
        code->setFocus();
        code->selectAll();
    }
    [[nodiscard]] QString report(TrialId trial)
    {
        window->showPage("Trials");
        trials().openTrial(trial);
        ask.fileAnswer = folder.filePath("rice.html");
        find<QPushButton>(trials(), "trialReport")->menu()->actions().at(1)->trigger();
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return QFile::exists(ask.fileAnswer) && !window->tasks().isBusy(); }, 20'000));
        QFile file(ask.fileAnswer);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return QString::fromUtf8(file.readAll());
    }

    RiceYields m_yields = riceYields();
};

TEST_F(RiceTrialTest, PlannedSownAndWeighedInTheWindowGivesItsPublishedResult)
{
    openWindow();
    nameTheRates();
    planAndSow();
    const auto rows = journal->trials().list().value();
    ASSERT_EQ(rows.size(), 1U);
    const TrialId trial = rows[0].trial.id;
    const TrialProgress progress = journal->trials().progress(trial).value();
    ASSERT_EQ(progress.trays.size(), 24U);
    clock.set(progress.trays[0].plan.harvest);
    weighAll(progress);
    const QString said = report(trial);
    // F 2.17 of the rates and 5.86 of the blocks are asked of the sums, in rice_blocks_test.
    for (const char* published : {"6.7 %", "763.9 g"}) {
        EXPECT_TRUE(said.contains(published)) << published;
    }
    EXPECT_TRUE(said.contains("Does the seeding rate change the yield?"));
}

} // namespace
} // namespace plumule::ui
