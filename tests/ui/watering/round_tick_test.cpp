#include "tests/support/query_counter.h"
#include "tests/ui/watering/round_fixture.h"

#include <QLabel>
#include <QProgressBar>

namespace plumule::ui {
namespace {

// What is read again after a tick.
class RoundTickTest : public RoundTest
{
protected:
    // Whatever the page says, by its labels and rows.
    static QStringList said(QWidget& page)
    {
        QStringList words;
        for (const QLabel* each : page.findChildren<QLabel*>()) {
            words << each->objectName() + ": " + each->text();
        }
        for (const TrayRow* each : page.findChildren<TrayRow*>()) {
            words << each->objectName() + ": " + each->accessibleName() + " " +
                         each->accessibleDescription() + (each->isChecked() ? " ticked" : "");
        }
        return words;
    }
    // Only the whole round looks up how water is mixed.
    [[nodiscard]] int wholeReads() const { return queries.countOf("FROM water_recipe"); }

    QueryCounter queries; // before the journal is opened
};

TEST_F(RoundTickTest, OfATickedTrayItsRowAloneIsReadAndShown)
{
    sowBroccoli(6, Moment{date(2026, 3, 10), 7 * 60 + 30});
    const auto page = openPage();
    settleDown();
    queries.restart();
    QTest::keyClick(rowInHand(), Qt::Key_Space);
    settleDown();
    EXPECT_EQ(doneCount(), 1); // reads the round itself, once
    EXPECT_EQ(wholeReads(), 1);
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->value(), 1);
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("1 of 6 trays done"));
    const QStringList shown = said(*page);
    page->reload();
    EXPECT_EQ(said(*page), shown) << "the row is as a reading of the whole round shows it";
}

TEST_F(RoundTickTest, OfATickTakenBackAndDoneAgainTheRowAloneIsReadAndShown)
{
    sowBroccoli(6, Moment{date(2026, 3, 10), 7 * 60 + 30});
    const auto page = openPage();
    settleDown();
    const QStringList open = said(*page);
    QTest::keyClick(rowInHand(), Qt::Key_Space);
    settleDown();
    const QStringList ticked = said(*page);
    queries.restart();
    ASSERT_TRUE(journal->undo());
    settleDown();
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->value(), 0);
    const QStringList takenBack = said(*page);
    ASSERT_TRUE(journal->redo());
    settleDown();
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->value(), 1);
    const QStringList again = said(*page);
    EXPECT_EQ(wholeReads(), 0);
    EXPECT_EQ(again, ticked);
    ASSERT_TRUE(journal->undo());
    settleDown();
    page->reload();
    EXPECT_EQ(said(*page), takenBack) << "the row is as a reading of the whole round shows it";
    EXPECT_EQ(takenBack.filter("ticked"), open.filter("ticked"));
}

TEST_F(RoundTickTest, WhatElseIsTakenBackIsReadAllTheSame)
{
    const auto trays = sowBroccoli(6, Moment{date(2026, 3, 10), 7 * 60 + 30});
    const auto page = openPage();
    settleDown();
    ASSERT_TRUE(journal->trays().discard(trays[5], "mould", clock.now()));
    settleDown();
    ASSERT_EQ(find<QProgressBar>(*page, "roundProgress")->maximum(), 5);
    QTest::keyClick(rowInHand(), Qt::Key_Space);
    ASSERT_TRUE(journal->undo());
    ASSERT_TRUE(journal->undo()); // at once, before the page has read again
    settleDown();
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->maximum(), 6);
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->value(), 0);
}

TEST_F(RoundTickTest, WhatElseChangedIsReadAllTheSame)
{
    const auto trays = sowBroccoli(6, Moment{date(2026, 3, 10), 7 * 60 + 30});
    const auto page = openPage();
    settleDown();
    ASSERT_TRUE(journal->trays().discard(trays[5], "mould", clock.now()));
    QTest::keyClick(rowInHand(), Qt::Key_Space); // before the page has read again
    settleDown();
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->maximum(), 5);
    EXPECT_EQ(find<QProgressBar>(*page, "roundProgress")->value(), 1);
}

} // namespace
} // namespace plumule::ui
