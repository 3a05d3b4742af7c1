#include "app/window_program.h"

#include "tests/ui/support/growing.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"
#include "ui/window/first_start.h"
#include "ui/window/main_window.h"

#include <QFile>
#include <QLabel>

namespace plumule::app {
namespace {

class WindowProgramTest : public ui::GrowingTest
{
protected:
    // Another journal in the same folder.
    QString another(const QString& name)
    {
        const QString path = folder.filePath(name);
        RoomPlan plan;
        plan.room.name = name.toStdString();
        EXPECT_TRUE(Journal::create(path.toStdString(), plan, clock));
        return path;
    }
    QString noJournal()
    {
        const QString path = folder.filePath("letter.plumule");
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write("Dear all") == 8);
        return path;
    }
    [[nodiscard]] QString shownRoom()
    {
        return program.window()->findChild<QLabel*>("roomName")->text();
    }
    [[nodiscard]] QString lastOpened() const
    {
        return preferences.get(ui::Preference::LastJournal).toString();
    }
    [[nodiscard]] QString trouble()
    {
        QStringList words;
        for (const QLabel* label : program.firstStart()->findChildren<QLabel*>()) {
            if (label->isVisible()) {
                words << label->text();
            }
        }
        return words.join(' ');
    }

    [[nodiscard]] std::filesystem::path records() const
    {
        return folder.filePath("records").toStdString();
    }
    [[nodiscard]] QString logText() const
    {
        QFile file(folder.filePath("records/events.log"));
        return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
    }

    WindowProgram program{clock, ask, preferences, records()};
};

TEST_F(WindowProgramTest, AsksForAJournalWhereThereIsNone)
{
    preferences.set(ui::Preference::LastJournal, QString());
    program.start();
    ASSERT_NE(program.firstStart(), nullptr);
    EXPECT_TRUE(program.firstStart()->isVisible());
    EXPECT_EQ(program.window(), nullptr);
}

TEST_F(WindowProgramTest, OpensTheJournalThatIsChosenAndRemembersIt)
{
    program.start();
    const QString path = another("cellar.plumule");
    Q_EMIT program.firstStart()->chosen(path);
    ASSERT_NE(program.window(), nullptr);
    EXPECT_TRUE(program.window()->isVisible());
    EXPECT_FALSE(program.firstStart()->isVisible());
    EXPECT_EQ(lastOpened(), path);
    EXPECT_EQ(shownRoom(), "cellar.plumule");
}

TEST_F(WindowProgramTest, OpensTheLastJournalAgain)
{
    preferences.set(ui::Preference::LastJournal, another("cellar.plumule"));
    program.start();
    EXPECT_EQ(program.firstStart(), nullptr);
    ASSERT_NE(program.window(), nullptr);
    EXPECT_EQ(shownRoom(), "cellar.plumule");
}

TEST_F(WindowProgramTest, SaysWhyTheLastJournalCantBeOpened)
{
    const QString gone = folder.filePath("gone.plumule");
    preferences.set(ui::Preference::LastJournal, gone);
    program.start();
    ASSERT_NE(program.firstStart(), nullptr);
    EXPECT_EQ(program.window(), nullptr);
    EXPECT_TRUE(trouble().contains("gone.plumule")) << trouble().toStdString();
    // The way on stays open.
    Q_EMIT program.firstStart()->chosen(another("cellar.plumule"));
    EXPECT_NE(program.window(), nullptr);
}

TEST_F(WindowProgramTest, SaysAtTheFirstStartWhyAChoiceIsRefused)
{
    program.start();
    Q_EMIT program.firstStart()->chosen(noJournal());
    EXPECT_EQ(program.window(), nullptr);
    EXPECT_TRUE(program.firstStart()->isVisible());
    EXPECT_TRUE(trouble().contains("not a Plumule journal")) << trouble().toStdString();
    EXPECT_NE(lastOpened(), noJournal());
}

TEST_F(WindowProgramTest, AnotherJournalReplacesTheWindow)
{
    ASSERT_TRUE(program.openFile(another("cellar.plumule")));
    const QString loft = another("loft.plumule");
    Q_EMIT program.window()->journalAsked(loft);
    EXPECT_TRUE(soon([&] { return shownRoom() == "loft.plumule"; }));
    EXPECT_TRUE(program.window()->isVisible());
    EXPECT_EQ(lastOpened(), loft);
    // The one before is let go: it may be written again.
    const auto opened = Journal::open(folder.filePath("cellar.plumule").toStdString(), clock);
    ASSERT_TRUE(opened);
    EXPECT_FALSE((*opened)->isReadOnly());
}

TEST_F(WindowProgramTest, ARefusedJournalLeavesTheOneThatIsOpen)
{
    const QString cellar = another("cellar.plumule");
    ASSERT_TRUE(program.openFile(cellar));
    ui::MainWindow* before = program.window();
    Q_EMIT before->journalAsked(noJournal());
    EXPECT_TRUE(
        soon([&] { return program.window()->messages().text().contains("not a Plumule"); }));
    EXPECT_EQ(program.window(), before);
    EXPECT_EQ(shownRoom(), "cellar.plumule");
    EXPECT_EQ(lastOpened(), cellar);
}

TEST_F(WindowProgramTest, SaysWhyAJournalIsOpenToReadOnly)
{
    const QString path = another("cellar.plumule");
    const auto elsewhere = Journal::open(path.toStdString(), clock);
    ASSERT_TRUE(elsewhere);
    ASSERT_TRUE(program.openFile(path));
    EXPECT_TRUE(program.window()->messages().text().contains("open in another"))
        << program.window()->messages().text().toStdString();
}

TEST_F(WindowProgramTest, SaysAfterACrashWhatWasRecordedLast)
{
    const QString path = another("cellar.plumule");
    {
        const auto cellar = Journal::open(path.toStdString(), clock);
        ASSERT_TRUE(cellar);
        ASSERT_TRUE((*cellar)->room().addRack("By the door", 1, 2));
    }
    {
        // As a program that ended without closing leaves it.
        const OpenMark mark(records(), path.toStdString());
        std::filesystem::copy(records(), records().string() + ".left");
    }
    std::filesystem::remove_all(records());
    std::filesystem::rename(records().string() + ".left", records());
    ASSERT_TRUE(program.openFile(path));
    const QString text = program.window()->messages().text();
    EXPECT_TRUE(text.contains("ended unexpectedly")) << text.toStdString();
    EXPECT_TRUE(text.contains("By the door")) << text.toStdString();
    EXPECT_TRUE(logText().contains("ended-unexpectedly \"cellar.plumule\""));
    // Once is enough.
    ASSERT_TRUE(program.openFile(another("loft.plumule")));
    ASSERT_TRUE(program.openFile(path));
    EXPECT_FALSE(program.window()->messages().text().contains("ended unexpectedly"));
}

TEST_F(WindowProgramTest, WritesDownWhatWasOpenedAndRefusedButNotWhatItHolds)
{
    ASSERT_TRUE(program.openFile(another("cellar.plumule")));
    EXPECT_FALSE(program.openFile(noJournal()));
    EXPECT_TRUE(logText().contains("opened \"cellar.plumule\"")) << logText().toStdString();
    EXPECT_TRUE(logText().contains("not-opened \"letter.plumule\" not-a-journal"));
    EXPECT_FALSE(logText().contains(folder.path()));
}

TEST_F(WindowProgramTest, ANewLookKeepsThePageAndIsLaidOutAtOnce)
{
    ASSERT_TRUE(program.openFile(another("cellar.plumule")));
    program.window()->showPage("Trays");
    const QPointer<ui::MainWindow> before = program.window();
    preferences.set(ui::Preference::FontScale, 2.0);
    Q_EMIT before->lookChanged();
    ASSERT_TRUE(soon([&] { return before.isNull() && program.window() != nullptr; }));
    EXPECT_EQ(program.window()->pageShown(), "Trays");
    EXPECT_TRUE(program.window()->isVisible());
    const auto* mode = program.window()->page("Weigh-in")->findChild<ui::Segmented*>("mode");
    ASSERT_NE(mode, nullptr);
    EXPECT_NE(qobject_cast<ui::FlowLayout*>(mode->layout()), nullptr)
        << "segments go on in a second line in large type";
    ui::applyTheme(*qApp, ui::Ground::Light);
}

} // namespace
} // namespace plumule::app
