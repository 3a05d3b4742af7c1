#pragma once

#include "core/journal/harvest/harvest_entries.h"
#include "tests/ui/support/growing.h"
#include "tests/ui/support/key_time.h"
#include "ui/harvest/weigh_page.h"
#include "ui/harvest/weigh_question.h"

#include <QLineEdit>

namespace plumule::ui {

class WeighTest : public GrowingTest
{
protected:
    std::unique_ptr<WeighPage> page;
    KeyTime keys;

    void open(QSize size = {1232, 900})
    {
        page = openPage<WeighPage>(size);
        keys.rule(*page);
    }

    [[nodiscard]] QString textIn(const char* field)
    {
        return find<QLineEdit>(*page, field)->text();
    }
    [[nodiscard]] QString textOf(const char* shown) { return find<QLabel>(*page, shown)->text(); }
    [[nodiscard]] QString words() { return textOf("words"); }
    [[nodiscard]] std::vector<Harvest> cutsOf(const char* code) { return sheetOf(code).harvests; }
    [[nodiscard]] std::vector<Bowl> bowlsOf(const Harvest& cut)
    {
        return journal->harvests().cutAtScale(cut.id).value().bowls;
    }
    [[nodiscard]] WeighQuestion* question() { return find<WeighQuestion>(*page, "question"); }
    // What is asked now; empty where nothing is.
    [[nodiscard]] QString asked() { return question()->title(); }
    // Once the question takes keys.
    void answer(int key)
    {
        ASSERT_TRUE(soon([&] { return question()->takesKeys(); }));
        const QString before = asked();
        press(key);
        // A letter waits for another of a burst.
        ASSERT_TRUE(soon([&] { return asked() != before; })) << before.toStdString();
    }
    // By Tab from the weight, and back to it.
    void typeTare(const QString& grams)
    {
        press(Qt::Key_Tab);
        ASSERT_EQ(nameOfFocus(), "tare");
        type(grams);
        press(Qt::Key_Backtab, Qt::ShiftModifier);
        ASSERT_EQ(nameOfFocus(), "gross");
    }
    // Three trays of 300 to 310 g, so that there is something to expect: BR001 to BR003.
    void weighThree()
    {
        enter("BR001");
        for (const char* weight : {"300", "305", "310"}) {
            enter(weight);
        }
        ASSERT_EQ(textIn("code"), "BR004");
    }
};

} // namespace plumule::ui
