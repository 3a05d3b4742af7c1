#pragma once

#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/journal.h"
#include "ui/page/page.h"

#include <QApplication>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QWidget>
#include <gtest/gtest.h>

#include <functional>
#include <optional>

namespace plumule::ui {

// Answers every question at once, as the test has set it.
class ScriptedAsk : public Ask
{
public:
    enum class Unsaved
    {
        Save,
        Leave,
        Stay
    };
    bool agrees = true;
    Unsaved whenUnsaved = Unsaved::Stay;
    QString lineAnswer;
    QString fileAnswer;
    QStringList questions; // what was asked

    void confirm(QWidget*, const QString&, const QString& question, const QString&,
                 Yes yes) override
    {
        questions << question;
        if (agrees) {
            yes();
        }
    }
    void unsaved(QWidget*, const QString& question, Yes save, Yes leave) override
    {
        questions << question;
        if (whenUnsaved == Unsaved::Save) {
            save();
        } else if (whenUnsaved == Unsaved::Leave) {
            leave();
        }
    }
    void line(QWidget*, const QString& title, const QString&, const QString&,
              Answered answered) override
    {
        questions << title;
        if (!lineAnswer.isEmpty()) {
            answered(lineAnswer);
        }
    }
    void fileToOpen(QWidget*, const QString& title, const QString&, Answered answered) override
    {
        questions << title;
        if (!fileAnswer.isEmpty()) {
            answered(fileAnswer);
        }
    }
    void fileToSave(QWidget*, const QString& title, const QString&, const QString&,
                    Answered answered) override
    {
        questions << title;
        if (!fileAnswer.isEmpty()) {
            answered(fileAnswer);
        }
    }
    void folder(QWidget*, const QString& title, Answered answered) override
    {
        questions << title;
        if (!fileAnswer.isEmpty()) {
            answered(fileAnswer);
        }
    }
};

// A journal in a temporary folder, a fixed clock (Thursday 12 March 2026, 07:10) and what pages
// need.
class UiTest : public ::testing::Test
{
protected:
    QTemporaryDir folder;
    FixedClock clock{Moment{date(2026, 3, 12), 7 * 60 + 10}};
    ScriptedAsk ask;
    PassingPreferences preferences;
    MessageBar messages;
    Tasks tasks;
    std::unique_ptr<Journal> journal;

    void SetUp() override
    {
        RoomPlan plan;
        plan.room.name = "Test room";
        plan.racks = 2;
        auto made = Journal::create((folder.path() + "/test.plumule").toStdString(), plan, clock);
        ASSERT_TRUE(made.has_value());
        journal = std::move(*made);
    }
    [[nodiscard]] Services services() { return {ask, messages, preferences, tasks}; }

    // Fills the journal with the invented sample room, as of the clock.
    void useSample()
    {
        ASSERT_TRUE(journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA).has_value());
    }

    // Shows the widget at a size and waits until it is laid out.
    static void show(QWidget& widget, QSize size = {1440, 900})
    {
        widget.resize(size);
        widget.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&widget));
    }
    static void click(QWidget* widget) { QTest::mouseClick(widget, Qt::LeftButton); }
    // Whether it holds within three seconds; events go on meanwhile.
    static bool soon(const std::function<bool()>& holds) { return QTest::qWaitFor(holds, 3000); }
    // Lets what was queued by now happen, what that queues, and the layout after it.
    static void settleDown()
    {
        for (int round = 0; round < 4; ++round) {
            bool isThrough = false;
            // A timer of no time comes after all that is queued before it.
            QTimer::singleShot(0, qApp, [&isThrough] { isThrough = true; });
            EXPECT_TRUE(soon([&isThrough] { return isThrough; }));
        }
    }
    // Writes over what stands in a field, key by key, and stays in it.
    static void write(QWidget& within, const char* field, const QString& text)
    {
        auto* found = find<QLineEdit>(within, field);
        ASSERT_NE(found, nullptr);
        found->setFocus();
        found->selectAll();
        QTest::keyClick(found, Qt::Key_Delete);
        QTest::keyClicks(found, text);
        ASSERT_EQ(found->text(), text);
    }
    // Writes over it and leaves it with Tab.
    static void give(QWidget& within, const char* field, const QString& text)
    {
        write(within, field, text);
        QTest::keyClick(find<QLineEdit>(within, field), Qt::Key_Tab);
    }
    template <class Widget>
    static Widget* find(QWidget& within, const char* name)
    {
        auto* found = within.findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
};

} // namespace plumule::ui
