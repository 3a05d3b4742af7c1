#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/tray_row.h"

namespace plumule::ui {
namespace {

// One day of a room with 40 trays, all of it by the keyboard.
class WholeDayTest : public WindowTest
{
protected:
    [[nodiscard]] Round roundNow() { return journal->watering().roundNow().value(); }
    [[nodiscard]] std::vector<DueRow> due()
    {
        return journal->harvests().weighIn(clock.today())->due;
    }

    // Space on each row that is not done; it leads to the next by itself.
    void walkTheRound()
    {
        const int all = static_cast<int>(roundNow().trays.size());
        ASSERT_GE(all, 28);
        for (int i = 0; i < all; ++i) {
            // Space leaves a decision for later.
            for (int each = 0;
                 each < 12 && qobject_cast<DecisionRow*>(QApplication::focusWidget()) != nullptr;
                 ++each) {
                press(Qt::Key_Space);
            }
            const auto* row = qobject_cast<TrayRow*>(QApplication::focusWidget());
            ASSERT_NE(row, nullptr) << i << " " << nameOfFocus().toStdString();
            ASSERT_FALSE(row->tray().isDone()) << i;
            press(Qt::Key_Space);
            QCoreApplication::sendPostedEvents();
        }
        EXPECT_EQ(roundNow().doneCount(), all);
    }
    // From the page's empty code field on.
    void weighTwelve()
    {
        ASSERT_EQ(due().size(), 12U);
        ASSERT_EQ(nameOfFocus(), "code");
        enter("BR001");
        press(Qt::Key_Tab);
        ASSERT_EQ(nameOfFocus(), "tare");
        type("38.5");
        press(Qt::Key_Backtab, Qt::ShiftModifier);
        for (int i = 0; i < 12; ++i) {
            ASSERT_EQ(nameOfFocus(), "gross");
            enter(QString::number(338 + i % 4) + ".5");
        }
        EXPECT_TRUE(due().empty());
    }
    // It was a slip.
    void weighTheLastAnew()
    {
        pressCtrl(Qt::Key_Z);
        ASSERT_EQ(due().size(), 1U);
        const std::string slipped = due().front().code;
        EXPECT_TRUE(sheetOf(slipped.c_str()).harvests.empty());
        EXPECT_TRUE(window->messages().text().startsWith("Taken back"));
        EXPECT_TRUE(soon([&] { return badgeOf("Weigh-in") == "1"; }));
        ASSERT_EQ(nameOfFocus(), "code");
        enter(QString::fromStdString(slipped));
        enter("340.5");
        EXPECT_TRUE(due().empty());
        EXPECT_EQ(sheetOf(slipped.c_str()).record.tray.state, TrayState::Harvested);
    }
};

TEST_F(WholeDayTest, TheRoundTwelveTraysAtTheScaleAndASlipTakenBack)
{
    growDueTrays(12);
    sow(broccoli(28, kTwoDaysAgo));
    ASSERT_EQ(journal->trays().list({})->size(), 40U);
    openWindow({1024, 768});

    walkTheRound();
    EXPECT_TRUE(soon([&] {
        return find<QLabel>(pageOf("Round"), "pageSubtitle")
            ->text()
            .contains(QStringLiteral("%1 of %1 trays done").arg(roundNow().trays.size()));
    }));

    clock.set({clock.today(), 8 * 60 + 30});
    goTo("Weigh-in");
    weighTwelve();
    EXPECT_TRUE(soon([&] { return badgeOf("Weigh-in").isEmpty(); }));

    weighTheLastAnew();
    Mass sum;
    const auto rows = journal->trays().list({}).value();
    for (const TrayListRow& row : rows) {
        sum += row.yield.value_or(Mass());
    }
    // Eleven of 300 to 303 g, and the one that was weighed anew: 302 g.
    EXPECT_EQ(sum, grams(3 * (300 + 301 + 302) + 2 * 303 + 302));

    // The evening round asks for those that grow on.
    clock.set({clock.today(), 18 * 60 + 5});
    goTo("Round");
    EXPECT_TRUE(soon(
        [&] { return find<QLabel>(pageOf("Round"), "pageTitle")->text() == "Evening round"; }));
    EXPECT_EQ(roundNow().trays.size(), 28U);
    walkTheRound();
}

} // namespace
} // namespace plumule::ui
