#include "tests/ui/support/field_window.h"
#include "ui/text/text.h"
#include "ui/widget/date_field.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QAction>
#include <QApplication>
#include <QCalendarWidget>
#include <QLocale>
#include <QSignalSpy>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

const Date kNear = date(2026, 3, 12);

struct TypedDay
{
    const char* text;
    QLocale::Language language;
    QLocale::Territory territory;
    std::optional<Date> day;
};

TEST(DayFrom, ReadsTheDesktopsFormIsoAndOurOwn)
{
    const TypedDay table[] = {
        {"2026-03-05", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"2026-03-05", QLocale::German, QLocale::Germany, date(2026, 3, 5)},
        {"5 Mar 2026", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"Thu 5 Mar 2026", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"Mon 5 Mar 2026", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"5 march 2026", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"5 Mar", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"28 Dec", QLocale::C, QLocale::AnyTerritory, date(2025, 12, 28)},
        {"  5  Mar  2026 ", QLocale::C, QLocale::AnyTerritory, date(2026, 3, 5)},
        {"3/5/26", QLocale::English, QLocale::UnitedStates, date(2026, 3, 5)},
        {"3/5/2026", QLocale::English, QLocale::UnitedStates, date(2026, 3, 5)},
        {"03/05/2026", QLocale::English, QLocale::UnitedStates, date(2026, 3, 5)},
        {"March 5, 2026", QLocale::English, QLocale::UnitedStates, date(2026, 3, 5)},
        {"Thursday, March 5, 2026", QLocale::English, QLocale::UnitedStates, date(2026, 3, 5)},
        {"5.3.2026", QLocale::German, QLocale::Germany, date(2026, 3, 5)},
        {"05.03.26", QLocale::German, QLocale::Germany, date(2026, 3, 5)},
        {"05/03/2026", QLocale::English, QLocale::UnitedKingdom, date(2026, 3, 5)},
        {"29 Feb 2026", QLocale::C, QLocale::AnyTerritory, std::nullopt},
        {"13/13/2026", QLocale::English, QLocale::UnitedStates, std::nullopt},
        {"tomorrow", QLocale::C, QLocale::AnyTerritory, std::nullopt},
        {"", QLocale::C, QLocale::AnyTerritory, std::nullopt},
    };
    for (const TypedDay& each : table) {
        const auto read = dayFrom(each.text, QLocale(each.language, each.territory), kNear);
        EXPECT_EQ(read.has_value(), each.day.has_value()) << each.text;
        if (read && each.day) {
            EXPECT_EQ(toIso(*read), toIso(*each.day)) << each.text;
        }
    }
}

// Fields one below another, as a form has them.
class DateFieldTest : public FieldWindowTest
{
protected:
    DateField* day = new DateField("day");
    TimeField* time = new TimeField("time");

    void SetUp() override
    {
        day->setDate(kNear);
        time->setMinute(7 * 60 + 30);
        show({day, time});
    }
};

TEST_F(DateFieldTest, TabEntersAndLeavesWithOnePress)
{
    QTest::keyClick(before, Qt::Key_Tab);
    ASSERT_EQ(QApplication::focusWidget(), day);
    EXPECT_EQ(day->selectedText(), "Thu 12 Mar 2026") << "ready to be typed over";
    QTest::keyClick(day, Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), time);
    QTest::keyClick(time, Qt::Key_Backtab);
    EXPECT_EQ(QApplication::focusWidget(), day);
}

TEST_F(DateFieldTest, IsTypedOverAndSaysTheDayInFull)
{
    const QSignalSpy given(day, &DateField::dateGiven);
    type(day, "2026-04-01");
    EXPECT_EQ(day->date(), date(2026, 4, 1)) << "before it is left";
    QTest::keyClick(day, Qt::Key_Tab);
    EXPECT_EQ(day->text(), "Wed 1 Apr 2026");
    EXPECT_EQ(given.count(), 1);
    type(day, "1 Apr 2026");
    QTest::keyClick(day, Qt::Key_Return);
    EXPECT_EQ(given.count(), 1) << "the same day is no other day";
    EXPECT_EQ(day->text(), "Wed 1 Apr 2026");
}

TEST_F(DateFieldTest, KeepsAndMarksWhatItCantRead)
{
    const QSignalSpy given(day, &DateField::dateGiven);
    type(day, "soon");
    QTest::keyClick(day, Qt::Key_Tab);
    EXPECT_EQ(day->text(), "soon");
    EXPECT_TRUE(day->property("wrong").toBool());
    EXPECT_FALSE(day->date().has_value());
    EXPECT_TRUE(day->isUnreadable());
    EXPECT_FALSE(day->requireDate());
    EXPECT_EQ(given.count(), 0);
    type(day, "5 Mar");
    EXPECT_FALSE(day->property("wrong").toBool()) << "not while it is typed";
    QTest::keyClick(day, Qt::Key_Tab);
    EXPECT_EQ(day->text(), "Thu 5 Mar 2026");
}

TEST_F(DateFieldTest, GoesByDaysAndMonthsWithTheArrows)
{
    const QSignalSpy given(day, &DateField::dateGiven);
    day->setFocus();
    QTest::keyClick(day, Qt::Key_Up);
    EXPECT_EQ(day->date(), date(2026, 3, 13));
    QTest::keyClick(day, Qt::Key_Down);
    QTest::keyClick(day, Qt::Key_Down);
    EXPECT_EQ(day->date(), date(2026, 3, 11));
    QTest::keyClick(day, Qt::Key_PageUp);
    EXPECT_EQ(day->date(), date(2026, 4, 11));
    EXPECT_EQ(given.count(), 4);
}

TEST_F(DateFieldTest, TakesADayFromTheCalendar)
{
    const QSignalSpy given(day, &DateField::dateGiven);
    day->setFocus();
    QTest::keyClick(day, Qt::Key_Down, Qt::AltModifier);
    auto* calendar = day->findChild<QCalendarWidget*>("calendar");
    ASSERT_NE(calendar, nullptr);
    ASSERT_TRUE(calendar->isVisible());
    EXPECT_EQ(calendar->selectedDate(), QDate(2026, 3, 12));
    Q_EMIT calendar->clicked(QDate(2026, 3, 20));
    EXPECT_EQ(day->date(), date(2026, 3, 20));
    EXPECT_EQ(given.count(), 1);
    EXPECT_FALSE(calendar->isVisible());
}

TEST_F(DateFieldTest, AnEmptyDayIsNotGiven)
{
    day->setDate(std::nullopt);
    EXPECT_FALSE(day->date().has_value());
    EXPECT_FALSE(day->isUnreadable());
    EXPECT_FALSE(day->requireDate());
    day->setDate(kNear);
    const QSignalSpy given(day, &DateField::dateGiven);
    day->setFocus();
    day->selectAll();
    QTest::keyClick(day, Qt::Key_Delete);
    QTest::keyClick(day, Qt::Key_Tab);
    EXPECT_FALSE(day->date().has_value());
    EXPECT_EQ(given.count(), 1);
}

} // namespace
} // namespace plumule::ui
