#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/support/look_check.h"
#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/forgotten_bar.h"

namespace plumule::ui {
namespace {

class DecisionRowTest : public RoundPartTest
{
protected:
    [[nodiscard]] DecisionRow* rowOf(const char* code)
    {
        return page->findChild<DecisionRow*>(QString("decision") + code);
    }
    [[nodiscard]] Stage stageOf(TrayId tray)
    {
        const StagePlan plan = planOf(tray);
        return plan.spans[plan.current.value()].stage;
    }
    [[nodiscard]] bool isGone(const char* code)
    {
        return soon([&] { return rowOf(code) == nullptr; });
    }
};

TEST_F(DecisionRowTest, SaysTheCueTheVarietyAndTheDay)
{
    sowBroccoli(1, kDueNow);
    open();
    auto* row = rowOf("BR001");
    ASSERT_NE(row, nullptr);
    EXPECT_TRUE(find<QLabel>(*row, "cue")->text().startsWith("BR001: "));
    const QString about = find<QLabel>(*row, "about")->text();
    EXPECT_TRUE(about.contains("Broccoli"));
    EXPECT_TRUE(about.contains("day 4")) << about.toStdString();
    EXPECT_TRUE(about.contains("all that follows moves with it"));
    EXPECT_EQ(row->accessibleName(), find<QLabel>(*row, "cue")->text());
    EXPECT_EQ(row->readyText(), "Ready");
}

TEST_F(DecisionRowTest, OneThatIsLateSaysSinceWhen)
{
    sowBroccoli(1, {date(2026, 3, 7), 7 * 60 + 30});
    open();
    const QString about = find<QLabel>(*rowOf("BR001"), "about")->text();
    EXPECT_TRUE(about.contains("2 days")) << about.toStdString();
    EXPECT_EQ(find<QLabel>(*rowOf("BR001"), "about")->property("role").toString(), "warning");
}

TEST_F(DecisionRowTest, SpaceGoesPastItAndDecidesNothing)
{
    const auto due = sowBroccoli(1, kDueNow);
    open();
    ASSERT_TRUE(rowOf("BR001")->hasFocus());
    press(Qt::Key_Space);
    EXPECT_FALSE(rowOf("BR001")->hasFocus());
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR001"));
    EXPECT_EQ(stageOf(due.front()), Stage::UnderWeight);
}

TEST_F(DecisionRowTest, ArrowsWalkDecisionsAndTraysInOneOrder)
{
    sowBroccoli(4, kUnderWeight);
    sowBroccoli(1, kDueNow);
    open();
    press(Qt::Key_End);
    QStringList walked{nameOfFocus()};
    for (int i = 0; i < 5; ++i) {
        press(Qt::Key_Up);
        walked << nameOfFocus();
    }
    EXPECT_EQ(walked, QStringList({"trayBR005", "decisionBR005", "trayBR004", "trayBR003",
                                   "trayBR002", "trayBR001"}));
    press(Qt::Key_Up);
    EXPECT_EQ(nameOfFocus(), "trayBR001") << "the first stays";
}

TEST_F(DecisionRowTest, EachDecisionIsOneActOfTheGrowers)
{
    const auto due = sowBroccoli(3, kDueNow);
    open();
    const std::size_t before = acts();
    pressButton("readyBR001");
    EXPECT_TRUE(isGone("BR001"));
    EXPECT_EQ(acts(), before + 1);
    for (const TrayId tray : due) {
        EXPECT_EQ(stageOf(tray), Stage::Blackout);
    }
    click(find<QPushButton>(messages, "messageAction"));
    for (const TrayId tray : due) {
        EXPECT_EQ(stageOf(tray), Stage::UnderWeight);
    }
    EXPECT_TRUE(soon([&] { return rowOf("BR001") != nullptr; }));
}

TEST_F(DecisionRowTest, NotYetForAllMovesEachOfThemAsOneAct)
{
    const auto due = sowBroccoli(2, kDueNow);
    open();
    const Moment before = planOf(due[1]).harvest;
    const std::size_t entries = acts();
    letter(Qt::Key_N, [&] { return planOf(due[1]).harvest - before == 11 * 60; });
    EXPECT_EQ(planOf(due[0]).harvest, planOf(due[1]).harvest);
    EXPECT_EQ(acts(), entries + 1);
    EXPECT_TRUE(messages.text().startsWith("BR001, BR002: not yet"))
        << messages.text().toStdString();
    EXPECT_TRUE(messages.text().contains("this evening"));
}

TEST_F(DecisionRowTest, AskedOneByOneEachIsDecidedByItself)
{
    const auto due = sowBroccoli(3, kDueNow);
    open();
    pressButton("oneByOneBR001");
    ASSERT_TRUE(soon([&] { return rowOf("BR003") != nullptr; }));
    pressButton("readyBR002");
    EXPECT_TRUE(isGone("BR002"));
    EXPECT_EQ(stageOf(due[0]), Stage::UnderWeight);
    EXPECT_EQ(stageOf(due[1]), Stage::Blackout);
    EXPECT_NE(rowOf("BR003"), nullptr) << "the others still stand one by one";
    EXPECT_EQ(rowOf("BR001")->trays().size(), 1U);
}

TEST_F(DecisionRowTest, ADecisionOfTomorrowIsNotTakenToday)
{
    sowBroccoli(1, kUnderWeight);
    open();
    EXPECT_EQ(rowOf("BR001"), nullptr);
    pressButton("dayAfter");
    if (rowOf("BR001") != nullptr) {
        click(rowOf("BR001")->findChild<QPushButton*>("readyBR001"));
        EXPECT_TRUE(messages.isRefusal());
    }
    EXPECT_EQ(stageOf(journal->trays().find("BR001").value()), Stage::UnderWeight);
}

TEST_F(DecisionRowTest, AskedWithinAPastRoundItBeganThen)
{
    const auto due = sowBroccoli(1, {date(2026, 3, 8), 7 * 60 + 30});
    open();
    pressButton("dayBefore");
    ASSERT_NE(rowOf("BR001"), nullptr) << "it was due then";
    pressButton("readyBR001");
    const StagePlan plan = planOf(due.front());
    ASSERT_EQ(stageOf(due.front()), Stage::Blackout);
    EXPECT_EQ(plan.spans[*plan.current].start, (Moment{date(2026, 3, 11), 7 * 60}));
}

TEST_F(DecisionRowTest, NamesWithMarksAreReadAsTheyAre)
{
    const auto varieties = journal->varieties().all().value();
    for (const Variety& each : varieties) {
        if (each.name == "Broccoli") {
            Protocol protocol = journal->varieties().protocol(each.id).value();
            for (ProtocolStage& stage : protocol.stages) {
                stage.cue = "<i>hulls</i> shed & %1?";
            }
            ASSERT_TRUE(journal->varieties().save(protocol));
        }
    }
    sowBroccoli(1, kDueNow);
    open();
    EXPECT_TRUE(find<QLabel>(*rowOf("BR001"), "cue")->text().contains("<i>hulls</i> shed & %1?"))
        << find<QLabel>(*rowOf("BR001"), "cue")->text().toStdString();
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
}

TEST_F(DecisionRowTest, TurnsItsAnswersBelowWhereThereIsLittleRoom)
{
    sowBroccoli(2, kDueNow);
    open({1300, 900});
    auto* row = rowOf("BR001");
    auto* cue = find<QLabel>(*row, "cue");
    auto* ready = find<QPushButton>(*row, "readyBR001");
    EXPECT_LT(ready->mapTo(row, QPoint()).y(), cue->mapTo(row, QPoint()).y() + 60);
    page->resize(520, 800);
    settleDown();
    EXPECT_GT(ready->mapTo(row, QPoint()).y(), cue->mapTo(row, QPoint()).y());
    EXPECT_EQ(cutTexts(*row).join('\n').toStdString(), "");
}

// The bar on top that names those without water.
class ForgottenBarTest : public RoundPartTest
{
protected:
    // Watered last on that day.
    void sowDry(int count, Date last)
    {
        for (const TrayId tray : sowBroccoli(count, {date(2026, 3, 6), 7 * 60})) {
            ASSERT_TRUE(journal->trays().notYet(tray, 10 * kMinutesPerDay));
            ASSERT_TRUE(journal->watering().tick(tray, last, Slot::Evening));
        }
    }
};

TEST_F(ForgottenBarTest, IsNotThereWhileNothingIsForgotten)
{
    sowDry(2, clock.today() - 1);
    open();
    EXPECT_FALSE(isShown("forgotten"));
}

TEST_F(ForgottenBarTest, NamesOneTrayWithItsMediumAndPlace)
{
    sowDry(1, date(2026, 3, 8));
    open();
    ASSERT_TRUE(isShown("forgotten"));
    const QString said = words("forgottenWords");
    EXPECT_TRUE(said.contains("BR001")) << said.toStdString();
    EXPECT_TRUE(said.contains(QString::fromStdString(looseMix().name)));
    EXPECT_TRUE(said.contains("A1 · place 1"));
}

TEST_F(ForgottenBarTest, TakesTheWorstAndGoesOnceItIsWatered)
{
    sowDry(1, date(2026, 3, 9));
    sowDry(1, date(2026, 3, 7));
    open();
    EXPECT_TRUE(words("forgottenWords").contains("BR002")) << "the worst first";
    pressButton("takeForgotten");
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR002"));
    press(Qt::Key_Space);
    EXPECT_TRUE(soon([&] { return !words("forgottenWords").contains("BR002"); }));
    EXPECT_TRUE(isShown("forgotten"));
    pressButton("takeForgotten");
    press(Qt::Key_Space);
    EXPECT_TRUE(soon([&] { return !isShown("forgotten"); }));
}

} // namespace
} // namespace plumule::ui
