#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/trial/layout_grid.h"
#include "ui/trial/plan_view.h"
#include "ui/trial/trials_page.h"

#include <QCheckBox>
#include <QComboBox>
#include <QMenu>
#include <QSpinBox>
#include <QTableView>

namespace plumule::ui {
namespace {

// A plan made by keys, clicks and menus in an empty room of 32 places.
class PlanFlowTest : public GrowingTest
{
protected:
    std::unique_ptr<TrialsPage> page;

    void openPlan()
    {
        page = openPage<TrialsPage>();
        click(find<QPushButton>(*page, "newTrial"));
        ASSERT_FALSE(draft().trays.empty());
    }
    [[nodiscard]] const TrialDraft& draft() { return page->plan().draft(); }
    [[nodiscard]] bool isFollowed(const std::function<bool()>& holds) { return soon(holds); }
    [[nodiscard]] bool mayKeep() { return find<QPushButton>(*page, "planKeep")->isEnabled(); }
    [[nodiscard]] QString layoutWords() { return find<QLabel>(*page, "layoutWords")->text(); }
    void keep() { click(find<QPushButton>(*page, "planKeep")); }
    [[nodiscard]] std::vector<Trial> trials() { return journal->trials().all().value(); }
    // By the arrow keys, as an open list is walked.
    void chooseByKey(const char* name, Qt::Key key)
    {
        auto* box = find<QComboBox>(*page, name);
        box->setFocus();
        QTest::keyClick(box, key);
    }
    void tickMedium(int row)
    {
        auto* menu = find<QPushButton>(*page, "planMedia")->menu();
        menu->actions().at(row)->trigger();
    }
    [[nodiscard]] std::vector<LayoutTile*> tiles()
    {
        std::vector<LayoutTile*> shown;
        for (auto* each : find<LayoutGrid>(*page, "planLayout")->findChildren<LayoutTile*>()) {
            if (each->isVisible()) {
                shown.push_back(each);
            }
        }
        return shown;
    }
    void pressUndo()
    {
        auto* undo = messages.findChild<QPushButton*>("messageAction");
        ASSERT_TRUE(undo->isVisible()) << messages.text().toStdString();
        click(undo);
    }
};

TEST_F(PlanFlowTest, EnterInAnyFieldKeepsThePlanAsOneActThatIsTakenBack)
{
    openPlan();
    write(*page, "planQuestion", "Which bed gives most?");
    write(*page, "planName", "Beds");
    write(*page, "planPerson", "Mo");
    const int before = actsIn(*journal);
    press(Qt::Key_Return);
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(actsIn(*journal), before + 1);
    ASSERT_EQ(trials().size(), 1U);
    EXPECT_EQ(trials().front().name, "Beds");
    EXPECT_EQ(trials().front().question, "Which bed gives most?");
    EXPECT_FALSE(page->hasUnsaved());
    pressUndo();
    EXPECT_TRUE(trials().empty());
}

TEST_F(PlanFlowTest, APlanWithoutAQuestionSaysWhatIsMissing)
{
    openPlan();
    keep();
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(trials().empty());
    EXPECT_TRUE(journal->trays().list({})->empty());
}

TEST_F(PlanFlowTest, MediaAreTickedInTheMenuAndTheControlIsOneOfThem)
{
    openPlan();
    const std::size_t before = draft().treatments.size();
    const auto all = journal->media().all().value();
    int added = -1;
    for (std::size_t i = 0; i < all.size() && added < 0; ++i) {
        const bool isIn =
            std::any_of(draft().treatments.begin(), draft().treatments.end(),
                        [&](const Treatment& each) { return each.medium == all[i].id; });
        added = isIn ? -1 : static_cast<int>(i);
    }
    ASSERT_GE(added, 0);
    tickMedium(added);
    EXPECT_TRUE(isFollowed([&] { return draft().treatments.size() == before + 1; }));
    EXPECT_EQ(find<QPushButton>(*page, "planMedia")->text(), QString("%1 media").arg(before + 1));
    auto* control = find<QComboBox>(*page, "planControl");
    EXPECT_EQ(control->count(), int(before) + 2) << "none, and each of those compared";
    chooseByKey("planControl", Qt::Key_End);
    EXPECT_TRUE(isFollowed([&] { return draft().trial.control.has_value(); }));
    tickMedium(added);
    EXPECT_TRUE(isFollowed([&] { return draft().treatments.size() == before; }));
}

TEST_F(PlanFlowTest, OneMediumAloneIsNoTrialAndSaysSo)
{
    openPlan();
    write(*page, "planQuestion", "Which?");
    const auto all = journal->media().all().value();
    while (draft().treatments.size() > 1) {
        const MediumId last = draft().treatments.back().medium;
        const std::size_t before = draft().treatments.size();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].id == last) {
                tickMedium(static_cast<int>(i));
            }
        }
        ASSERT_TRUE(isFollowed([&] { return draft().treatments.size() < before; }));
    }
    EXPECT_EQ(find<QPushButton>(*page, "planMedia")->text(), "1 medium");
    EXPECT_FALSE(mayKeep());
    EXPECT_FALSE(layoutWords().isEmpty()) << "why nothing can be drawn";
}

TEST_F(PlanFlowTest, MoreTraysThanPlacesAreRefusedInWords)
{
    openPlan();
    write(*page, "planQuestion", "Which?");
    find<QSpinBox>(*page, "planEach")->setValue(60);
    EXPECT_TRUE(isFollowed([&] { return !mayKeep(); }));
    EXPECT_FALSE(find<QPushButton>(*page, "planSow")->isEnabled());
    EXPECT_FALSE(layoutWords().isEmpty());
    EXPECT_FALSE(find<LayoutGrid>(*page, "planLayout")->isVisible());
    find<QSpinBox>(*page, "planEach")->setValue(4);
    EXPECT_TRUE(isFollowed([&] { return mayKeep(); }));
}

TEST_F(PlanFlowTest, AFieldThatHoldsNoNumberIsMarkedAndKeepsThePlanFromBeingKept)
{
    openPlan();
    write(*page, "planQuestion", "Which?");
    for (const char* field : {"planMargin", "planSpread", "planSeed"}) {
        write(*page, field, "1,234");
        EXPECT_TRUE(isFollowed([&] { return !mayKeep(); })) << field;
        EXPECT_TRUE(find<QLineEdit>(*page, field)->property("wrong").toBool()) << field;
        EXPECT_TRUE(layoutWords().contains("1,234")) << layoutWords().toStdString();
        write(*page, field, "20");
        EXPECT_TRUE(isFollowed([&] { return mayKeep(); })) << field;
    }
    give(*page, "planDay", "some day");
    keep();
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(trials().empty());
    give(*page, "planDay", "2026-03-14");
    EXPECT_TRUE(isFollowed([&] { return mayKeep(); }));
    EXPECT_EQ(draft().plan.sowOn, date(2026, 3, 14));
}

TEST_F(PlanFlowTest, BlocksAndTraysOfEachStayWholeTogether)
{
    openPlan();
    auto* blocks = find<QSpinBox>(*page, "planBlocks");
    auto* each = find<QSpinBox>(*page, "planEach");
    blocks->setValue(3);
    EXPECT_EQ(each->value() % 3, 0);
    const int before = each->value();
    each->setFocus();
    QTest::keyClick(each, Qt::Key_Up);
    EXPECT_EQ(each->value(), before + 3) << "a tray more in each block";
    EXPECT_TRUE(isFollowed([&] { return draft().plan.traysEach == before + 3; }));
}

TEST_F(PlanFlowTest, ASoakIsOfferedWhereTheProtocolHasOne)
{
    openPlan();
    auto* variety = find<QComboBox>(*page, "planVariety");
    const auto choose = [&](const char* name) {
        variety->setCurrentIndex(variety->findText(name));
        Q_EMIT variety->activated(variety->currentIndex());
    };
    choose("Broccoli");
    EXPECT_FALSE(find<QCheckBox>(*page, "planSoak")->isVisible());
    choose("Pea shoots");
    ASSERT_TRUE(find<QCheckBox>(*page, "planSoak")->isVisible());
    find<QCheckBox>(*page, "planSoak")->setFocus();
    press(Qt::Key_Space);
    EXPECT_TRUE(isFollowed([&] { return draft().plan.startsWithSoak; }));
    choose("Broccoli");
    EXPECT_TRUE(isFollowed([&] { return !draft().plan.startsWithSoak; }));
}

TEST_F(PlanFlowTest, APlanIsRemovedOnceAgreedAndOfferedBack)
{
    openPlan();
    write(*page, "planQuestion", "Which?");
    keep();
    ASSERT_EQ(trials().size(), 1U);
    ask.agrees = false;
    click(find<QPushButton>(*page, "planRemove"));
    EXPECT_EQ(trials().size(), 1U);
    ask.agrees = true;
    click(find<QPushButton>(*page, "planRemove"));
    EXPECT_TRUE(trials().empty());
    EXPECT_TRUE(find<QTableView>(*page, "trials")->isHidden() ||
                find<QPushButton>(*page, "newTrial")->isVisible())
        << "back at the list";
    EXPECT_TRUE(messages.text().contains("T1")) << messages.text().toStdString();
    pressUndo();
    EXPECT_EQ(trials().size(), 1U);
}

TEST_F(PlanFlowTest, EscapeAsksWhereSomethingIsNotKept)
{
    openPlan();
    press(Qt::Key_Escape);
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_TRUE(find<QPushButton>(*page, "newTrial")->isVisible());
    click(find<QPushButton>(*page, "newTrial"));
    write(*page, "planQuestion", "Which?");
    EXPECT_TRUE(page->hasUnsaved());
    ask.whenUnsaved = ScriptedAsk::Unsaved::Stay;
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_FALSE(find<QPushButton>(*page, "newTrial")->isVisible());
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    press(Qt::Key_Escape);
    EXPECT_TRUE(find<QPushButton>(*page, "newTrial")->isVisible());
    ASSERT_EQ(trials().size(), 1U);
    EXPECT_EQ(trials().front().question, "Which?");
}

TEST_F(PlanFlowTest, NamesAreKeptAsTheyAreTyped)
{
    for (const HostileText& each : hostileTexts()) {
        openPlan();
        putInto(*page, "planQuestion", each.text);
        keep();
        ASSERT_FALSE(messages.isRefusal()) << each.what << messages.text().toStdString();
        EXPECT_EQ(QString::fromStdString(draft().trial.question), each.text) << each.what;
        EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "") << each.what;
        page.reset();
        ASSERT_TRUE(journal->undo()) << "its places are free for the next one";
    }
}

TEST_F(PlanFlowTest, MediaWithMarksInTheirNamesAreShownAsTheyAre)
{
    Medium marked = inertMedium();
    marked.name = "Mesh & <b>mix</b> %1";
    ASSERT_TRUE(journal->media().save(marked));
    openPlan();
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
    QStringList entries;
    for (const QAction* each : find<QPushButton>(*page, "planMedia")->menu()->actions()) {
        entries << each->text();
    }
    EXPECT_TRUE(entries.contains("Mesh && <b>mix</b> %1")) << entries.join('|').toStdString();
}

TEST_F(PlanFlowTest, AReadOnlyJournalOffersNeitherKeepingNorSowing)
{
    const std::filesystem::path path = journal->path();
    journal.reset();
    auto opened = Journal::open(path, clock, Access::ReadOnly);
    ASSERT_TRUE(opened);
    journal = std::move(*opened);
    openPlan();
    EXPECT_FALSE(mayKeep());
    EXPECT_FALSE(find<QPushButton>(*page, "planSow")->isEnabled());
}

// Tiles alone.
class LayoutGridTest : public GrowingTest
{
protected:
    LayoutGrid grid;
    std::vector<std::pair<int, int>> exchanged;
    std::vector<int> pressed;
    std::vector<int> chosen;

    void SetUp() override
    {
        GrowingTest::SetUp();
        QObject::connect(&grid, &LayoutGrid::exchangeAsked,
                         [this](int a, int b) { exchanged.emplace_back(a, b); });
        QObject::connect(&grid, &LayoutGrid::pressed,
                         [this](int tile) { pressed.push_back(tile); });
        QObject::connect(&grid, &LayoutGrid::chosenChanged,
                         [this](int tile) { chosen.push_back(tile); });
    }
    static LayoutTile::Content tile(const QString& code)
    {
        return {code, 1, {}, {}, code + ", Mesh, A1 · place 1", false};
    }
    void showTwoRows(LayoutGrid::Press press, QSize size = {700, 300})
    {
        grid.show({{"A1", {tile("X1"), tile("X2"), tile("X3")}}, {"A2", {tile("X4"), tile("X5")}}},
                  press);
        show(grid, size);
        settleDown();
    }
    [[nodiscard]] LayoutTile* tileOf(const char* code)
    {
        for (auto* each : grid.findChildren<LayoutTile*>(QString("tile") + code)) {
            if (each->isVisible()) {
                return each;
            }
        }
        return nullptr;
    }
};

TEST_F(LayoutGridTest, ASecondPressChangesTwoAboutAndOnTheSameTakesTheChoiceBack)
{
    showTwoRows(LayoutGrid::Press::Exchanges);
    click(tileOf("X2"));
    EXPECT_EQ(grid.chosen(), 1);
    click(tileOf("X5"));
    ASSERT_EQ(exchanged.size(), 1U);
    EXPECT_EQ(exchanged.front(), std::make_pair(1, 4));
    showTwoRows(LayoutGrid::Press::Exchanges);
    click(tileOf("X3"));
    click(tileOf("X3"));
    EXPECT_EQ(grid.chosen(), -1);
    EXPECT_EQ(exchanged.size(), 1U);
    EXPECT_TRUE(pressed.empty());
}

TEST_F(LayoutGridTest, ATileIsDraggedOntoAnother)
{
    showTwoRows(LayoutGrid::Press::Exchanges);
    auto* from = tileOf("X1");
    const QPoint to = from->mapFromGlobal(tileOf("X4")->mapToGlobal(QPoint(10, 10)));
    QTest::mousePress(from, Qt::LeftButton, Qt::NoModifier, QPoint(10, 10));
    QTest::mouseMove(from, to);
    QTest::mouseRelease(from, Qt::LeftButton, Qt::NoModifier, to);
    ASSERT_EQ(exchanged.size(), 1U);
    EXPECT_EQ(exchanged.front(), std::make_pair(0, 3));
}

TEST_F(LayoutGridTest, WhereTilesAreNotExchangeableAPressTellsWhichAndADragNothing)
{
    showTwoRows(LayoutGrid::Press::Opens);
    click(tileOf("X4"));
    EXPECT_EQ(pressed, std::vector<int>{3});
    auto* from = tileOf("X1");
    const QPoint to = from->mapFromGlobal(tileOf("X4")->mapToGlobal(QPoint(10, 10)));
    QTest::mousePress(from, Qt::LeftButton, Qt::NoModifier, QPoint(10, 10));
    QTest::mouseRelease(from, Qt::LeftButton, Qt::NoModifier, to);
    EXPECT_TRUE(exchanged.empty());
    EXPECT_EQ(pressed.size(), 1U);
}

TEST_F(LayoutGridTest, IsPressedByTheKeyboardToo)
{
    showTwoRows(LayoutGrid::Press::Exchanges);
    tileOf("X1")->setFocus();
    QTest::keyClick(tileOf("X1"), Qt::Key_Space);
    EXPECT_EQ(grid.chosen(), 0);
    QTest::keyClick(tileOf("X2"), Qt::Key_Space);
    ASSERT_EQ(exchanged.size(), 1U);
    EXPECT_EQ(exchanged.front(), std::make_pair(0, 1));
}

TEST_F(LayoutGridTest, ARowGoesOnInTheNextLineWhereThereIsLittleRoom)
{
    showTwoRows(LayoutGrid::Press::Exchanges, {700, 300});
    EXPECT_EQ(tileOf("X1")->y(), tileOf("X3")->y());
    grid.resize(260, 600);
    settleDown();
    EXPECT_LT(tileOf("X1")->y(), tileOf("X3")->y());
    EXPECT_LT(tileOf("X3")->y(), tileOf("X4")->y()) << "rows stay in their order";
    EXPECT_LE(tileOf("X3")->geometry().right(), grid.width());
}

TEST_F(LayoutGridTest, SaysEachTileWholeToThoseWhoCantSeeIt)
{
    showTwoRows(LayoutGrid::Press::Exchanges);
    EXPECT_EQ(tileOf("X1")->accessibleName(), "X1, Mesh, A1 · place 1");
    EXPECT_EQ(unnamedControls(grid).join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
