#pragma once

#include "core/journal/journal.h"
#include "ui/page/page.h"

#include <QTemporaryDir>
#include <QTest>
#include <QWidget>
#include <gtest/gtest.h>

#include <optional>

namespace plumule::ui {

// Answers every question at once, as the test has set it.
class ScriptedAsk : public Ask
{
public:
    bool agrees = true;
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
    template <class Widget>
    static Widget* find(QWidget& within, const char* name)
    {
        auto* found = within.findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
};

} // namespace plumule::ui
