#include "ui/watering/round_list.h"

#include "tests/ui/support/ui_fixture.h"
#include "ui/watering/decision_row.h"

#include <QVBoxLayout>

#include <numeric>

namespace plumule::ui {
namespace {

constexpr int kShelves = 12;
constexpr int kPlaces = 10;
constexpr int kTrays = kShelves * kPlaces;

// A round of 120 trays on twelve shelves, more than are in sight at once, and a decision on the
// last shelf.
class RoundListTest : public UiTest
{
protected:
    Round round;
    QWidget window;
    RoundList* list = new RoundList;

    void SetUp() override
    {
        round.date = date(2026, 3, 12);
        for (int i = 0; i < kTrays; ++i) {
            RoundTray tray;
            tray.tray = {i + 1};
            tray.code = "BR" + std::to_string(100 + i);
            tray.variety = "Broccoli";
            tray.spot = spot(i);
            round.trays.push_back(tray);
        }
        StageDecision decision;
        decision.tray = {kTrays + 1};
        decision.code = "RD001";
        decision.spot = spot(kTrays - 1);
        round.decisions.push_back(decision);
        auto* column = new QVBoxLayout(&window);
        column->addWidget(list);
        list->showRound(round, UnitText(UnitSystem::Metric), {});
    }
    static Spot spot(int place)
    {
        const int shelf = place / kPlaces;
        Spot made;
        made.place = {place + 1};
        made.shelfId = {shelf + 1};
        made.rack = "A";
        made.shelf = std::to_string(shelf + 1);
        made.number = place % kPlaces + 1;
        made.rank = place;
        return made;
    }
    [[nodiscard]] std::vector<std::int64_t> shownTrays() const
    {
        std::vector<std::int64_t> trays;
        for (const TrayRow* row : list->findChildren<TrayRow*>()) {
            trays.push_back(row->tray().tray.value);
        }
        return trays;
    }
};

TEST_F(RoundListTest, AreRowsInSightFirstAndTheRestWhenTheyWereSeen)
{
    EXPECT_GE(shownTrays().size(), 40u);
    EXPECT_LT(shownTrays().size(), 60u);
    show(window, {800, 600});
    EXPECT_TRUE(soon([this] { return shownTrays().size() == kTrays; })) << shownTrays().size();
    std::vector<std::int64_t> inTurn(kTrays);
    std::iota(inTurn.begin(), inTurn.end(), 1);
    EXPECT_EQ(shownTrays(), inTurn) << "in walking order";
    EXPECT_EQ(list->findChildren<DecisionRow*>().size(), 1);
}

TEST_F(RoundListTest, ARowThatIsAskedForIsThere)
{
    ASSERT_NE(list->row({70}), nullptr);
    EXPECT_LT(shownTrays().size(), std::size_t{kTrays}) << "no more than is needed";
    EXPECT_EQ(list->row({9'999}), nullptr);
    EXPECT_EQ(shownTrays().size(), std::size_t{kTrays});
}

TEST_F(RoundListTest, ADecisionFurtherDownIsFound)
{
    ASSERT_NE(list->firstDecision(), nullptr);
    EXPECT_EQ(list->firstDecision()->decision().code, "RD001");
    EXPECT_NE(list->decision({kTrays + 1}), nullptr);
}

TEST_F(RoundListTest, TheFirstOpenTrayIsFoundHoweverFarItIs)
{
    for (RoundTray& tray : round.trays) {
        if (tray.tray != TrayId{77}) {
            tray.given.emplace();
        }
    }
    list->showRound(round, UnitText(UnitSystem::Metric), {});
    show(window, {800, 600});
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    list->focusFirstOpen();
    ASSERT_NE(list->currentRow(), nullptr);
    EXPECT_EQ(list->currentRow()->tray().tray, TrayId{77});
    list->focusNextOpen(list->currentRow());
    ASSERT_NE(list->currentDecision(), nullptr) << "stays open until it is made";
    QTest::keyClick(list->row({1}), Qt::Key_End);
    ASSERT_NE(list->currentRow(), nullptr);
    EXPECT_EQ(list->currentRow()->tray().tray, TrayId{kTrays});
}

TEST_F(RoundListTest, ShownAgainItHasOneRowATrayAndWhatIsNew)
{
    round.trays.back().given.emplace();
    list->showRound(round, UnitText(UnitSystem::Metric), {});
    EXPECT_EQ(shownTrays().size(), std::size_t{kTrays});
    EXPECT_TRUE(list->row({kTrays})->isChecked());
    round.trays.resize(45);
    list->showRound(round, UnitText(UnitSystem::Metric), {});
    show(window, {800, 600});
    EXPECT_TRUE(soon([this] { return shownTrays().size() == 45; })) << shownTrays().size();
}

} // namespace
} // namespace plumule::ui
