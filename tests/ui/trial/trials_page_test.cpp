#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/support/season_asks.h"
#include "tests/ui/support/growing.h"
#include "ui/chart/chart_view.h"
#include "ui/climate/climate_card.h"
#include "ui/label/label_dialog.h"
#include "ui/review/season_answer.h"
#include "ui/trial/answer_view.h"
#include "ui/trial/layout_grid.h"
#include "ui/trial/plan_view.h"
#include "ui/trial/trial_report.h"
#include "ui/trial/trial_view.h"
#include "ui/trial/trials_page.h"

#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QMenu>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTableView>
#include <QTimer>

#include <set>

namespace plumule::ui {
namespace {

class TrialsPageTest : public GrowingTest
{
protected:
    std::unique_ptr<TrialsPage> page;

    void openTrials(QSize size = {1232, 900})
    {
        useSample();
        page = openPage<TrialsPage>(size);
    }
    void openPlan()
    {
        openTrials();
        click(find<QPushButton>(*page, "newTrial"));
        ASSERT_FALSE(draft().trays.empty());
    }
    [[nodiscard]] const TrialDraft& draft() { return page->plan().draft(); }
    void setField(const char* name, const QString& text)
    {
        auto* field = find<QLineEdit>(*page, name);
        field->clear();
        QTest::keyClicks(field, text);
        settleDown();
    }
    void settle()
    {
        EXPECT_TRUE(QTest::qWaitFor(
            [&] {
                const auto* timer =
                    page->plan().findChild<QTimer*>(QString(), Qt::FindDirectChildrenOnly);
                return timer != nullptr && !timer->isActive();
            },
            5000));
    }
    void chooseDesign(Design chosen)
    {
        auto* design = find<QComboBox>(*page, "planDesign");
        design->setCurrentIndex(design->findData(int(chosen)));
        Q_EMIT design->activated(design->currentIndex());
        settle();
    }
    [[nodiscard]] std::vector<PlaceId> placesOfDraft()
    {
        std::vector<PlaceId> places;
        for (const PlannedTray& tray : draft().trays) {
            places.push_back(tray.place.value_or(PlaceId()));
        }
        return places;
    }
    [[nodiscard]] std::vector<LayoutTile*> tiles() { return tilesIn("planLayout"); }
    // Those in sight, by code.
    [[nodiscard]] std::vector<LayoutTile*> tilesIn(const char* name)
    {
        auto* grid = find<LayoutGrid>(*page, name);
        const QStringList codes = [&] {
            QStringList names;
            for (auto* tile : grid->findChildren<LayoutTile*>()) {
                if (tile->isVisible()) {
                    names << tile->objectName();
                }
            }
            names.sort();
            return names;
        }();
        std::vector<LayoutTile*> sorted;
        for (const QString& code : codes) {
            for (auto* tile : grid->findChildren<LayoutTile*>(code)) {
                if (tile->isVisible()) {
                    sorted.push_back(tile);
                }
            }
        }
        return sorted;
    }
    [[nodiscard]] std::optional<TrialRow> trialIn(TrialState state)
    {
        const auto rows = journal->trials().list().value();
        for (const TrialRow& row : rows) {
            if (row.state == state && row.media.size() > 1) {
                return row;
            }
        }
        return std::nullopt;
    }
};

TEST_F(TrialsPageTest, ListsEveryTrialWithItsState)
{
    openTrials();
    const auto rows = journal->trials().list().value();
    const auto* table = find<QTableView>(*page, "trials")->model();
    ASSERT_EQ(table->rowCount(), int(rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_EQ(table->index(int(i), 0).data().toString().toStdString(), rows[i].trial.code);
    }
}

TEST_F(TrialsPageTest, KeepsTheQuestionWhereTheListIsNarrow)
{
    openTrials();
    auto* table = find<QTableView>(*page, "trials");
    const auto questionAt = [&](int wide) {
        page->resize(wide, 640);
        settleDown();
        return table->columnWidth(1);
    };
    EXPECT_GE(questionAt(1200), 250);
    EXPECT_FALSE(table->isColumnHidden(6));
    EXPECT_GE(questionAt(800), 200);
    EXPECT_TRUE(table->isColumnHidden(6));
    EXPECT_FALSE(table->isColumnHidden(3));
    EXPECT_GE(questionAt(560), 200);
    EXPECT_GE(questionAt(420), 200);
    EXPECT_FALSE(table->isColumnHidden(0));
}

TEST_F(TrialsPageTest, BeginsANewTrialWithPlacesDrawnAndItsChanceOfAnAnswer)
{
    openPlan();
    EXPECT_EQ(int(draft().trays.size()), draft().count());
    EXPECT_EQ(int(tiles().size()), draft().count());
    EXPECT_FALSE(find<ChartView>(*page, "powerChart")->spec().series.empty());
    const QString said = find<QLabel>(*page, "outlook")->text();
    EXPECT_TRUE(said.contains("times in 100")) << said.toStdString();
    EXPECT_EQ(find<QPushButton>(*page, "planSow")->text(),
              QString("Sow these %1 trays").arg(draft().count()));
    EXPECT_GT(find<QTableView>(*page, "supplies")->model()->rowCount(), 2);
}

TEST_F(TrialsPageTest, FollowsTheFieldsAsTheyAreTyped)
{
    openPlan();
    const QString before = find<QLabel>(*page, "outlook")->text();
    const int count = draft().count();
    find<QSpinBox>(*page, "planBlocks")->setValue(2);
    find<QSpinBox>(*page, "planEach")->setValue(2);
    settle();
    EXPECT_EQ(draft().count(), count / 2);
    EXPECT_EQ(draft().plan.blocks, 2);
    EXPECT_NE(find<QLabel>(*page, "outlook")->text(), before);
    setField("planMargin", "4o");
    settle();
    EXPECT_FALSE(find<QPushButton>(*page, "planSow")->isEnabled());
    setField("planMargin", "40");
    settle();
    EXPECT_EQ(draft().trial.margin, grams(40));
    EXPECT_TRUE(find<QLabel>(*page, "powerTitle")->text().contains("40 g"));
    EXPECT_TRUE(find<QPushButton>(*page, "planSow")->isEnabled());
}

TEST_F(TrialsPageTest, DrawsTheSamePlacesForTheSameNumber)
{
    openPlan();
    const QString first = find<QLineEdit>(*page, "drawNumber")->text();
    const auto before = placesOfDraft();
    const auto treatments = [&] {
        std::vector<int> order;
        for (const PlannedTray& tray : draft().trays) {
            order.push_back(tray.treatment);
        }
        return order;
    };
    const auto orderBefore = treatments();
    clock.set({clock.today(), 7 * 60 + 11});
    click(find<QPushButton>(*page, "drawAgain"));
    EXPECT_NE(find<QLineEdit>(*page, "drawNumber")->text(), first);
    EXPECT_NE(treatments(), orderBefore);
    setField("drawNumber", first);
    settle();
    EXPECT_EQ(treatments(), orderBefore);
    EXPECT_EQ(placesOfDraft(), before);
}

TEST_F(TrialsPageTest, ChangesTwoTraysAboutByHandAndSaysSo)
{
    openPlan();
    const auto before = placesOfDraft();
    click(tiles()[0]);
    click(tiles()[1]);
    const auto after = placesOfDraft();
    EXPECT_EQ(after[0], before[1]);
    EXPECT_EQ(after[1], before[0]);
    EXPECT_TRUE(draft().trays[0].isMoved && draft().trays[1].isMoved);
    EXPECT_TRUE(find<QLabel>(*page, "layoutWords")->text().contains("2 trays moved by hand"));
    // What the draw does not depend on leaves the moves alone.
    setField("planMargin", "25");
    settle();
    EXPECT_EQ(placesOfDraft(), after);
}

TEST_F(TrialsPageTest, MovesATrayToAFreePlaceFromTheMenu)
{
    openPlan();
    find<QSpinBox>(*page, "planBlocks")->setValue(2);
    find<QSpinBox>(*page, "planEach")->setValue(2);
    settle();
    auto* move = find<QPushButton>(*page, "moveTile");
    EXPECT_FALSE(move->isEnabled());
    click(tiles()[0]);
    ASSERT_TRUE(move->isEnabled());
    const auto before = placesOfDraft();
    move->menu()->actions().front()->trigger();
    EXPECT_NE(placesOfDraft()[0], before[0]);
    EXPECT_TRUE(draft().trays[0].isMoved);
    const auto after = placesOfDraft();
    EXPECT_EQ(std::set<PlaceId>(after.begin(), after.end()).size(), before.size());
}

TEST_F(TrialsPageTest, LaysOutALatinSquareAndACompletelyRandomTrial)
{
    openPlan();
    chooseDesign(Design::CompletelyRandom);
    EXPECT_EQ(draft().plan.design, Design::CompletelyRandom);
    EXPECT_TRUE(std::all_of(draft().trays.begin(), draft().trays.end(),
                            [](const PlannedTray& each) { return each.block == 1; }));
    chooseDesign(Design::LatinSquare);
    EXPECT_EQ(draft().plan.traysEach, int(draft().treatments.size()));
    EXPECT_FALSE(find<QSpinBox>(*page, "planEach")->isEnabled());
    const auto& last = draft().trays.back();
    EXPECT_TRUE(page->findChildren<LayoutTile*>().back()->accessibleName().contains(
        QString("row %1, column %2").arg(last.block).arg(last.position)));
}

TEST_F(TrialsPageTest, GrowsEachMediumWithAndWithoutNutrient)
{
    openPlan();
    const auto media = draft().treatments.size();
    find<QSpinBox>(*page, "planBlocks")->setValue(2);
    find<QSpinBox>(*page, "planEach")->setValue(2);
    auto* feeding = find<QComboBox>(*page, "planFeeding");
    feeding->setCurrentIndex(1);
    Q_EMIT feeding->activated(1);
    settle();
    ASSERT_EQ(draft().treatments.size(), 2 * media);
    EXPECT_EQ(draft().treatments[0].medium, draft().treatments[1].medium);
    EXPECT_NE(draft().treatments[0].feeding, draft().treatments[1].feeding);
}

TEST_F(TrialsPageTest, KeepsAPlanAndOpensItAgainAsItWas)
{
    openPlan();
    setField("planQuestion", "Is the mesh worth its washing?");
    setField("planName", "Mesh again");
    click(tiles()[0]);
    click(tiles()[2]);
    click(find<QPushButton>(*page, "planKeep"));
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const TrialDraft kept = draft();
    ASSERT_TRUE(kept.trial.id.isStored());
    page->openList();
    page->openTrial(kept.trial.id);
    EXPECT_EQ(draft(), kept);
    EXPECT_EQ(journal->trials().draft(kept.trial.id).value(), kept);
}

TEST_F(TrialsPageTest, SowsThePlanAsOneActAndTakesItBackAsOne)
{
    page = openPage<TrialsPage>();
    click(find<QPushButton>(*page, "newTrial"));
    setField("planQuestion", "Which bed?");
    give(*page, "planDay", "2026-03-12");
    settle();
    ASSERT_EQ(draft().trays.size(), 8U);
    const auto before = journal->trays().list({})->size();
    const TrialDraft planned = draft();
    ask.agrees = true;
    click(find<QPushButton>(*page, "planSow"));
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const auto trials = journal->trials().all().value();
    const auto newest = std::max_element(
        trials.begin(), trials.end(), [](const Trial& a, const Trial& b) { return a.id < b.id; });
    const TrialProgress progress = journal->trials().progress(newest->id).value();
    ASSERT_EQ(progress.trays.size(), planned.trays.size());
    for (const TrialTray& tray : progress.trays) {
        const bool isAsDrawn =
            std::any_of(planned.trays.begin(), planned.trays.end(), [&](const PlannedTray& each) {
                return each.place == tray.record.place && each.block == tray.block &&
                       planned.treatments[std::size_t(each.treatment)].medium ==
                           tray.record.medium.id;
            });
        EXPECT_TRUE(isAsDrawn) << tray.record.tray.code;
    }
    EXPECT_TRUE(page->trial().isVisible());
    EXPECT_EQ(tilesIn("trialLayout").size(), planned.trays.size());
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(journal->trays().list({})->size(), before);
}

TEST_F(TrialsPageTest, AsksBeforeItSowsOnAnotherDayThanPlanned)
{
    openPlan();
    setField("planName", "Later");
    ASSERT_NE(draft().plan.sowOn, clock.today());
    ask.agrees = false;
    const auto before = journal->trays().list({})->size();
    click(find<QPushButton>(*page, "planSow"));
    ASSERT_FALSE(ask.questions.isEmpty())
        << find<QLabel>(*page, "layoutWords")->text().toStdString();
    EXPECT_TRUE(ask.questions.back().contains(dayText(draft().plan.sowOn)))
        << ask.questions.back().toStdString();
    EXPECT_EQ(journal->trays().list({})->size(), before);
    ask.agrees = true;
    click(find<QPushButton>(*page, "planSow"));
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(TrialsPageTest, AHarvestedTrialOpensWithItsAnswer)
{
    openTrials();
    const auto done = trialIn(TrialState::Ended);
    ASSERT_TRUE(done);
    page->openTrial(done->trial.id);
    auto& view = *page->trial().findChild<AnswerView*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.answer().has_value(); }, 20'000));
    const SeasonComparison own =
        trialAnswerIn(*journal, done->trial.id)->season.comparisons.front();
    EXPECT_EQ(view.answer()->season.comparisons.front().n, own.n);
    EXPECT_GT(own.n, 0);
    EXPECT_FALSE(find<QLabel>(view, "headline")->text().isEmpty());
    const QSignalSpy asked(page.get(), &TrialsPage::trayAsked);
    Q_EMIT find<ChartView>(view, "leftChart")->pointChosen(own.trays.front().tray.value);
    EXPECT_EQ(asked.count(), 1);
}

TEST_F(TrialsPageTest, AnAnswerOfGroupsIsChosenAsInTheSeason)
{
    openTrials();
    const auto done = trialIn(TrialState::Ended);
    ASSERT_TRUE(done);
    page->openTrial(done->trial.id);
    auto& view = *page->trial().findChild<AnswerView*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.answer().has_value(); }, 20'000));
    auto& groups = *find<QComboBox>(view, "groups");
    groups.setCurrentIndex(groups.findText("Reusable and single-use"));
    Q_EMIT groups.activated(groups.currentIndex());
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return !view.answer()->season.comparisons.front().groups.empty(); }, 20'000));
    EXPECT_EQ(view.asked().groups, Grouping::Reuse);
    EXPECT_TRUE(find<QLabel>(view, "headline")->text().contains("group"));
    // The report follows.
    for (const ComparisonAsk& each : reportQuestion(done->trial.id, view.asked()).asks) {
        EXPECT_EQ(each.groups, Grouping::Reuse);
    }
}

TEST_F(TrialsPageTest, ClimateStandsUnderHeights)
{
    openTrials();
    const auto done = trialIn(TrialState::Ended);
    ASSERT_TRUE(done);
    page->openTrial(done->trial.id);
    auto& view = *page->trial().findChild<AnswerView*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.answer().has_value(); }, 20'000));
    auto* climate = find<ClimateCard>(view, "climateCard");
    EXPECT_TRUE(climate->isHidden());
    click(find<Segmented>(view, "trialMetric")->segment(2));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !climate->isHidden(); }, 20'000));
    EXPECT_FALSE(plumule::isEmpty(find<ChartView>(*climate, "climateChart")->spec()));
}

TEST_F(TrialsPageTest, AGrowingTrialShowsEachTrayAndOpensIt)
{
    openTrials();
    const auto growing = trialIn(TrialState::Growing);
    ASSERT_TRUE(growing);
    page->openTrial(growing->trial.id);
    const auto shown = tilesIn("trialLayout");
    EXPECT_EQ(int(shown.size()), growing->trays);
    const QSignalSpy asked(page.get(), &TrialsPage::trayAsked);
    click(shown.front());
    EXPECT_EQ(asked.count(), 1);
    press(Qt::Key_Escape);
    EXPECT_TRUE(find<QTableView>(*page, "trials")->isVisible());
}

TEST_F(TrialsPageTest, ChangesWhatATrialAsks)
{
    openTrials();
    const auto done = trialIn(TrialState::Ended);
    ASSERT_TRUE(done);
    page->openTrial(done->trial.id);
    click(find<QPushButton>(*page, "trialChange"));
    auto* dialog = page->findChild<QWidget*>("trialDialog");
    ASSERT_NE(dialog, nullptr);
    auto* question = find<QLineEdit>(*dialog, "trialQuestion");
    question->setText("Asked anew?");
    find<QLineEdit>(*dialog, "trialMargin")->setText("none");
    click(find<QPushButton>(*dialog, "trialSave"));
    EXPECT_FALSE(find<QLabel>(*dialog, "refusal")->text().isEmpty());
    find<QLineEdit>(*dialog, "trialMargin")->setText("33");
    click(find<QPushButton>(*dialog, "trialSave"));
    const auto trials = journal->trials().all().value();
    for (const Trial& each : trials) {
        if (each.id == done->trial.id) {
            EXPECT_EQ(each.question, "Asked anew?");
            EXPECT_EQ(each.margin, grams(33));
        }
    }
}

TEST_F(TrialsPageTest, SavesThePreparationSheetOfWhatIsShown)
{
    openPlan();
    ask.fileAnswer = folder.filePath("prepare.pdf");
    find<QPushButton>(*page, "planPrepare")->menu()->actions().front()->trigger();
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << messages.text().toStdString();
    EXPECT_TRUE(file.read(5) == "%PDF-");
    ask.fileAnswer = folder.filePath("no/such/folder.pdf");
    find<QPushButton>(*page, "planPrepare")->menu()->actions().front()->trigger();
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(TrialsPageTest, OffersLabelsOfItsTraysAndItsReport)
{
    openTrials();
    const auto done = trialIn(TrialState::Ended);
    ASSERT_TRUE(done);
    page->openTrial(done->trial.id);
    click(find<QPushButton>(*page, "trialLabels"));
    auto* labels = page->findChild<LabelDialog*>();
    ASSERT_NE(labels, nullptr);
    EXPECT_EQ(int(labels->labels().size()), done->trays);
    labels->close();
    const char* kinds[] = {"trial.pdf", "trial.html"};
    for (int i = 0; i < 2; ++i) {
        ask.fileAnswer = folder.filePath(kinds[i]);
        find<QPushButton>(*page, "trialReport")->menu()->actions().at(i)->trigger();
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return QFile::exists(ask.fileAnswer) && !tasks.isBusy(); }, 20'000))
            << kinds[i];
        EXPECT_GT(QFile(ask.fileAnswer).size(), 5000) << kinds[i];
    }
}

TEST_F(TrialsPageTest, SaysWhatIsMissingDayByDay)
{
    openTrials();
    const auto growing = trialIn(TrialState::Growing);
    ASSERT_TRUE(growing);
    const TrialProgress progress = journal->trials().progress(growing->trial.id).value();
    ASSERT_FALSE(progress.lacks.empty());
    page->openTrial(growing->trial.id);
    const QString said = textsIn(page->trial()).join('\n');
    for (const TrialLack& lack : progress.lacks) {
        EXPECT_TRUE(said.contains(QString::fromStdString(lack.code))) << lack.code;
        EXPECT_TRUE(said.contains(shortDayText(lack.on))) << toIso(lack.on);
    }
}

TEST_F(TrialsPageTest, FitsItsNarrowestWindow)
{
    openTrials({816, 700});
    for (const auto& open :
         {std::function<void()>([] {}), std::function<void()>([&] { page->openNew(); }),
          std::function<void()>([&] { page->openTrial(trialIn(TrialState::Ended)->trial.id); })}) {
        open();
        settleDown();
        EXPECT_LE(page->minimumSizeHint().width(), 816);
    }
}

TEST_F(TrialsPageTest, AsksBeforeAChangedPlanIsLeft)
{
    openPlan();
    EXPECT_FALSE(page->hasUnsaved());
    press(Qt::Key_Escape);
    EXPECT_TRUE(ask.questions.isEmpty()) << "nothing was changed";
    EXPECT_TRUE(find<QTableView>(*page, "trials")->isVisible());

    click(find<QPushButton>(*page, "newTrial"));
    write(*page, "planQuestion", "Which bed?");
    settle();
    EXPECT_TRUE(page->hasUnsaved());
    click(find<QPushButton>(*page, "planBack"));
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_FALSE(find<QTableView>(*page, "trials")->isVisible());
    const auto before = journal->trials().all()->size();
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    click(find<QPushButton>(*page, "planBack"));
    EXPECT_EQ(journal->trials().all()->size(), before + 1);
    EXPECT_TRUE(find<QTableView>(*page, "trials")->isVisible());
}

} // namespace
} // namespace plumule::ui
