#include "core/exchange/csv.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "tests/support/season_asks.h"
#include "tests/ui/support/growing.h"
#include "ui/chart/chart_card.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"
#include "ui/review/season_model.h"
#include "ui/review/season_page.h"
#include "ui/widget/widgets.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QFileInfo>
#include <QLineEdit>
#include <QMenu>
#include <QSignalSpy>
#include <QTableView>

#include <algorithm>
#include <set>

namespace plumule::ui {
namespace {

class SeasonPageTest : public GrowingTest
{
protected:
    void bringIn(const QString& file)
    {
        const auto preview = journal->exchange().preview(file.toStdString());
        ASSERT_TRUE(preview && preview->isClean());
        ASSERT_TRUE(journal->exchange().importTrays(*preview, "table.csv"));
    }
    void bringInRows(const QString& rows)
    {
        const QString path = folder.filePath("table.csv");
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write("code,variety,medium,sown,seed_g,harvested,net_g\n" + rows.toUtf8());
        file.close();
        bringIn(path);
    }
    // The page once its first answer is there.
    std::unique_ptr<SeasonPage> openSeason(QSize size = {1232, 900})
    {
        auto page = openPage<SeasonPage>(size);
        EXPECT_TRUE(QTest::qWaitFor([&] { return page->answer().has_value(); }, 20'000));
        return page;
    }
    // Waits for the answer to what was just asked.
    void waitForAnswer()
    {
        EXPECT_TRUE(QTest::qWaitFor([&] { return !tasks.isBusy(); }, 20'000));
        QCoreApplication::sendPostedEvents();
    }
    static QAbstractItemModel* numbers(SeasonPage& page)
    {
        return find<QTableView>(page, "numbers")->model();
    }
    static QString cell(SeasonPage& page, const QString& medium, SeasonModel::Column column)
    {
        const QAbstractItemModel* model = numbers(page);
        for (int row = 0; row < model->rowCount(); ++row) {
            if (model->index(row, SeasonModel::MediumName).data() == medium) {
                return model->index(row, column).data().toString();
            }
        }
        ADD_FAILURE() << "no row " << medium.toStdString();
        return {};
    }
    static QString answerText(SeasonPage& page)
    {
        return find<QLabel>(page, "headline")->text() + ' ' + find<QLabel>(page, "detail")->text();
    }
    static void chooseVariety(SeasonPage& page, const QString& variety)
    {
        for (QAction* each : find<QPushButton>(page, "varieties")->menu()->actions()) {
            if (each->text() == variety) {
                each->trigger();
                return;
            }
        }
        ADD_FAILURE() << "no variety " << variety.toStdString();
    }
};

// PlantGrowth (Dobson 1983); means 5.032, 4.661 and 5.526 as published.
TEST_F(SeasonPageTest, ShowsThePublishedMeansOfTheImportedPlantWeights)
{
    bringIn(PLUMULE_REFERENCES "/plant_weights_as_trays.csv");
    const auto page = openSeason();
    ASSERT_EQ(numbers(*page)->rowCount(), 3);
    const std::pair<const char*, const char*> published[] = {
        {"ctrl", "5.032"}, {"trt1", "4.661"}, {"trt2", "5.526"}};
    for (const auto& [medium, mean] : published) {
        EXPECT_EQ(cell(*page, medium, SeasonModel::Trays), "10");
        EXPECT_EQ(cell(*page, medium, SeasonModel::Mean).toStdString(), mean) << medium;
        EXPECT_EQ(cell(*page, medium, SeasonModel::Days), "15.0");
    }
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("30 trays, 1 variety"));
    EXPECT_EQ(find<QLabel>(*page, "leftOut")->text(), "Every tray of the span is counted.");
}

TEST_F(SeasonPageTest, ShowsTheSampleSeasonWithTheReviewsOwnNumbers)
{
    useSample();
    const auto page = openSeason();
    const SeasonReview review = reviewIn(*journal, journal->review().usualSeason()).value();
    ASSERT_GE(review.media.size(), 3U);
    ASSERT_EQ(numbers(*page)->rowCount(), int(review.media.size()));
    for (const MediumSeason& each : review.media) {
        const QString medium = QString::fromStdString(each.medium.name);
        EXPECT_EQ(cell(*page, medium, SeasonModel::Trays), QString::number(each.yield.n));
        EXPECT_NEAR(cell(*page, medium, SeasonModel::Mean).toDouble(), each.yield.mean, 0.051);
        ASSERT_TRUE(each.costPerGram);
        EXPECT_NEAR(cell(*page, medium, SeasonModel::CostPerGram).toDouble(), *each.costPerGram,
                    0.00051);
    }
    EXPECT_TRUE(find<QLabel>(*page, "leftOut")->text().contains("still growing"));
    EXPECT_FALSE(find<QLabel>(*page, "headline")->text().isEmpty());
    EXPECT_FALSE(find<ChartView>(*page, "leftChart")->spec().series.empty());
}

TEST_F(SeasonPageTest, CountsOnlyTheChosenVarieties)
{
    useSample();
    const auto page = openSeason();
    const int all = page->answer()->review.trays;
    chooseVariety(*page, "Pea, tendril");
    waitForAnswer();
    const SeasonReview chosen = page->answer()->review;
    EXPECT_EQ(chosen.varieties, 1);
    EXPECT_GT(chosen.trays, 0);
    EXPECT_LT(chosen.trays, all);
    EXPECT_EQ(find<QPushButton>(*page, "varieties")->text(), "Pea, tendril");
    for (const MediumSeason& medium : chosen.media) {
        EXPECT_EQ(cell(*page, QString::fromStdString(medium.medium.name), SeasonModel::Trays),
                  QString::number(medium.yield.n));
        for (const SeasonTray& tray : medium.trays) {
            EXPECT_EQ(tray.variety, "Pea, tendril");
        }
    }
    chooseVariety(*page, "All varieties");
    waitForAnswer();
    EXPECT_EQ(page->answer()->review.trays, all);
    EXPECT_EQ(find<QPushButton>(*page, "varieties")->text(), "All varieties");
}

TEST_F(SeasonPageTest, CountsOnlyTheDaysThatAreAskedFor)
{
    bringIn(PLUMULE_REFERENCES "/plant_weights_as_trays.csv");
    const auto page = openSeason();
    give(*page, "from", "2026-01-20");
    waitForAnswer();
    EXPECT_EQ(page->answer()->review.trays, 0);
    EXPECT_EQ(numbers(*page)->rowCount(), 0);
    EXPECT_TRUE(answerText(*page).contains("No tray was harvested in this span."));
    give(*page, "from", "2026-01-19");
    waitForAnswer();
    EXPECT_EQ(page->answer()->review.trays, 30);
}

TEST_F(SeasonPageTest, SaysThatOneTrayOfEachTellsNothingApartAndWhy)
{
    bringInRows("X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150\n"
                "X2,Kale,Steel mesh,2026-01-05,28,2026-01-19,180\n");
    const auto page = openSeason();
    const QString said = answerText(*page);
    EXPECT_TRUE(said.contains("Steel mesh and Coir mix: no verdict from one tray of each. About "))
        << said.toStdString();
    EXPECT_TRUE(said.contains("more trials with 2 trays of each.")) << said.toStdString();
    EXPECT_EQ(cell(*page, "Coir mix", SeasonModel::Interval), "none from one tray");
}

TEST_F(SeasonPageTest, SaysThatOneMediumAloneHasNothingToBeComparedWith)
{
    bringInRows("X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150\n"
                "X2,Kale,Coir mix,2026-01-05,28,2026-01-19,180\n"
                "X3,Kale,Coir mix,2026-01-05,28,2026-01-19,165\n");
    const auto page = openSeason();
    const QString said = answerText(*page);
    EXPECT_FALSE(said.contains("fewer than two trays")) << said.toStdString();
    EXPECT_FALSE(said.contains(":  ")) << said.toStdString();
}

TEST_F(SeasonPageTest, AnswersAnewWhenATrayIsHarvested)
{
    bringInRows("X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150\n"
                "X2,Kale,Coir mix,2026-01-05,28,2026-01-19,160\n");
    const auto page = openSeason();
    EXPECT_EQ(cell(*page, "Coir mix", SeasonModel::Trays), "2");
    bringInRows("X3,Kale,Coir mix,2026-01-05,28,2026-01-19,170\n");
    EXPECT_TRUE(QTest::qWaitFor([&] { return page->answer()->review.trays == 3; }, 20'000));
    EXPECT_EQ(cell(*page, "Coir mix", SeasonModel::Trays), "3");
}

TEST_F(SeasonPageTest, ShowsEachMetricAndSavesItsChart)
{
    useSample();
    const auto page = openSeason();
    auto* chart = find<ChartView>(*page, "leftChart");
    std::set<std::string> keys;
    const Response responses[] = {Response::YieldPerTray, Response::YieldPerTraySown,
                                  Response::CostPerGram,  Response::HeightOnDay,
                                  Response::Evenness,     Response::DaysToHarvest,
                                  Response::Residue,      Response::Work,
                                  Response::YieldPerArea, Response::YieldPerSeed,
                                  Response::YieldPerDay};
    for (const Response response : responses) {
        page->showMetric(response);
        waitForAnswer();
        keys.insert(chart->spec().key);
        EXPECT_FALSE(chart->spec().series.empty()) << chart->spec().key;
        // Every chart is worded: a key without words would show as itself.
        EXPECT_NE(chartTitle(chart->spec()),
                  QString::fromStdString(chart->spec().key).replace('_', ' '));
        EXPECT_NE(axisTitle(chart->spec().x),
                  QString::fromStdString(chart->spec().x.key).replace('_', ' '));
    }
    EXPECT_EQ(keys.size(), std::size(responses));
    auto* card = qobject_cast<ChartCard*>(chart->parentWidget());
    ASSERT_NE(card, nullptr);
    for (const char* name : {"chart.png", "chart.svg", "chart.pdf", "chart.csv"}) {
        ask.fileAnswer = folder.filePath(name);
        for (auto* each : card->findChildren<QPushButton*>()) {
            if (each->accessibleName() == "Save this chart") {
                each->click();
            }
        }
        EXPECT_GT(QFileInfo(ask.fileAnswer).size(), 200) << name;
        EXPECT_FALSE(messages.isRefusal());
    }
    EXPECT_FALSE(QImage(folder.filePath("chart.png")).isNull());
}

TEST_F(SeasonPageTest, OneMetricIsChosenOutOfTheButtonsAndTheMenu)
{
    useSample();
    const auto page = openSeason();
    auto* metric = find<Segmented>(*page, "metric");
    auto* more = find<QPushButton>(*page, "moreMetrics");
    more->menu()->actions().front()->trigger();
    waitForAnswer();
    EXPECT_EQ(metric->chosen(), -1);
    EXPECT_EQ(page->answer()->comparisons.front().ask.response, Response::YieldPerTraySown);
    EXPECT_EQ(more->text(), "Yield per tray sown");
    metric->segment(1)->click();
    waitForAnswer();
    EXPECT_EQ(page->answer()->comparisons.front().ask.response, Response::CostPerGram);
    EXPECT_EQ(more->text(), "More");
}

TEST_F(SeasonPageTest, ReckonsWithAnotherPriceWithoutStoringIt)
{
    useSample();
    const auto page = openSeason();
    page->showMetric(Response::CostPerGram);
    waitForAnswer();
    const auto costOf = [&](const std::string& name) {
        for (const MediumSeason& each : page->answer()->review.media) {
            if (each.medium.name == name) {
                return each.costPerGram.value();
            }
        }
        return -1.0;
    };
    MediumId coir;
    for (const MediumSeason& each : page->answer()->review.media) {
        coir = each.medium.name == "Coir mix" ? each.medium.id : coir;
    }
    const double before = costOf("Coir mix");
    const double meshBefore = costOf("Steel mesh");
    auto* field =
        find<QLineEdit>(*page, QString("whatIfPrice%1").arg(coir.value).toLatin1().constData());
    QTest::keyClicks(field, "9.5");
    EXPECT_TRUE(QTest::qWaitFor([&] { return costOf("Coir mix") > before * 1.2; }, 20'000));
    EXPECT_DOUBLE_EQ(costOf("Steel mesh"), meshBefore);
    EXPECT_TRUE(find<QLabel>(*page, "whatIfWords")->text().contains("as if"));
    EXPECT_NEAR(
        *reviewIn(*journal, journal->review().usualSeason()).value().media.front().costPerGram,
        before, 1e-9);
    find<QPushButton>(*page, "whatIfBack")->click();
    EXPECT_TRUE(QTest::qWaitFor([&] { return costOf("Coir mix") == before; }, 20'000));
}

TEST_F(SeasonPageTest, TellsHowPiecesAgeAndOpensATrayOfTheirs)
{
    useSample();
    const auto page = openSeason();
    ASSERT_FALSE(page->answer()->ageing.empty());
    const PieceAgeing& first = page->answer()->ageing.front();
    EXPECT_TRUE(find<QLabel>(*page, "ageingWords")
                    ->text()
                    .contains(QString::fromStdString(first.medium.name)));
    auto* chart = find<ChartView>(*page, "ageingChart0");
    EXPECT_EQ(chart->spec(), ageingChart(first));
    const QSignalSpy asked(page.get(), &SeasonPage::trayAsked);
    Q_EMIT chart->pointChosen(first.points.front().tray.value);
    EXPECT_EQ(asked.count(), 1);
    page->showMetric(Response::HeightOnDay);
    waitForAnswer();
    EXPECT_FALSE(find<QLabel>(*page, "ageingWords")->isVisible());
}

TEST_F(SeasonPageTest, DeclaresASeasonAndShowsWhichOneItAnswersFor)
{
    useSample();
    const auto page = openSeason();
    auto* season = find<QComboBox>(*page, "season");
    EXPECT_TRUE(season->currentText().startsWith("Season 20"))
        << season->currentText().toStdString();
    EXPECT_EQ(page->answer()->series.kind, SeriesKind::Season);
    season->setCurrentIndex(season->count() - 1);
    Q_EMIT season->activated(season->currentIndex());
    auto* dialog = find<QDialog>(*page, "seasonDialog");
    find<QLineEdit>(*dialog, "seasonName")->setText("Next year");
    find<QLineEdit>(*dialog, "seasonPlanned")->setText("5");
    find<QPushButton>(*dialog, "seasonSave")->click();
    waitForAnswer();
    const auto seasons = journal->seasons().all().value();
    ASSERT_EQ(seasons.size(), 2U);
    EXPECT_EQ(seasons.back().season.name, "Next year");
    EXPECT_EQ(seasons.back().season.plannedTrials, 5);
    EXPECT_EQ(find<QComboBox>(*page, "season")->currentText(), "Season Next year");
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(journal->seasons().all()->size(), 1U);
}

TEST_F(SeasonPageTest, WithDaysOfYourOwnTheLatestSeasonIsTheOneToChange)
{
    useSample();
    Season later;
    later.name = "Next year";
    later.startsOn = clock.today();
    ASSERT_TRUE(journal->seasons().save(later));
    ASSERT_EQ(journal->seasons().all()->size(), 2U);
    const auto page = openSeason();
    give(*page, "from", QString::fromStdString(toIso(clock.today() - 30)));
    waitForAnswer();
    auto* season = find<QComboBox>(*page, "season");
    ASSERT_EQ(season->currentText(), "Days of your own");
    season->setCurrentIndex(season->findText("Change this season…"));
    Q_EMIT season->activated(season->currentIndex());
    auto* dialog = find<QDialog>(*page, "seasonDialog");
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(find<QLineEdit>(*dialog, "seasonName")->text(), "Next year");
}

TEST_F(SeasonPageTest, DaysOfYourOwnGiveIntervalsAndNoVerdict)
{
    useSample();
    const auto page = openSeason();
    const SeasonFilter usual = journal->review().usualSeason();
    give(*page, "from", QString::fromStdString(toIso(usual.from + 30)));
    waitForAnswer();
    EXPECT_EQ(find<QComboBox>(*page, "season")->currentText(), "Days of your own");
    EXPECT_TRUE(find<QLabel>(*page, "headline")->text().contains("no verdict"))
        << answerText(*page).toStdString();
    const auto& pairs = page->answer()->comparisons.front().pairs;
    EXPECT_TRUE(std::any_of(pairs.begin(), pairs.end(),
                            [](const MediaPair& pair) { return pair.lower.has_value(); }));
}

TEST_F(SeasonPageTest, AnswersForGroupsByTheMarginThatIsChosen)
{
    useSample();
    const auto page = openSeason();
    for (const auto& [name, row] : {std::pair("groups", 3), std::pair("margin", 2)}) {
        auto* box = find<QComboBox>(*page, name);
        box->setCurrentIndex(row);
        Q_EMIT box->activated(row);
    }
    waitForAnswer();
    const SeasonComparison& comparison = page->answer()->comparisons.front();
    EXPECT_EQ(comparison.margin.percent, 5);
    ASSERT_EQ(comparison.groupPairs.size(), 1U);
    EXPECT_TRUE(find<QLabel>(*page, "headline")->text().contains("eusable group"))
        << answerText(*page).toStdString();
}

TEST_F(SeasonPageTest, FoldsTheSumsAway)
{
    useSample();
    const auto page = openSeason();
    auto* sums = find<QLabel>(*page, "sums");
    EXPECT_FALSE(sums->isVisible());
    for (const char* word : {"Tukey", "Shapiro", "adjusted p"}) {
        EXPECT_FALSE(answerText(*page).contains(word)) << word;
    }
    find<QPushButton>(*page, "sumsButton")->click();
    EXPECT_TRUE(sums->isVisible());
    EXPECT_TRUE(sums->text().contains("Tukey–Kramer")) << sums->text().toStdString();
}

TEST_F(SeasonPageTest, PutsSeasonsSideBySide)
{
    useSample();
    const auto page = openSeason();
    auto* beside = find<QComboBox>(*page, "beside");
    beside->setCurrentIndex(beside->findData(int(Split::HalfYears)));
    Q_EMIT beside->activated(beside->currentIndex());
    waitForAnswer();
    ASSERT_GE(page->answer()->beside.size(), 2U);
    const auto* table = find<QTableView>(*page, "besideTable")->model();
    EXPECT_EQ(table->columnCount(), 1 + int(page->answer()->beside.size()));
    int trays = 0;
    for (const SeasonBeside& each : page->answer()->beside) {
        trays += each.review.trays;
    }
    EXPECT_EQ(trays, page->answer()->review.trays);
}

TEST_F(SeasonPageTest, CountsOnlyTheChosenTrialsAndShelves)
{
    useSample();
    const auto page = openSeason();
    const int all = page->answer()->review.trays;
    for (const char* menu : {"seasonTrials", "seasonShelves"}) {
        auto* choice = find<QPushButton>(*page, menu);
        choice->menu()->actions().at(2)->trigger();
        waitForAnswer();
        EXPECT_LT(page->answer()->review.trays, all) << menu;
        choice->menu()->actions().front()->trigger();
        waitForAnswer();
        EXPECT_EQ(page->answer()->review.trays, all) << menu;
    }
}

TEST_F(SeasonPageTest, SavesItsTablesAsTheyAreShown)
{
    useSample();
    const auto page = openSeason();
    ask.fileAnswer = folder.filePath("numbers.csv");
    find<QPushButton>(*page, "numbersSave")->click();
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const auto table = csvFrom(file.readAll().toStdString());
    ASSERT_TRUE(table.has_value());
    ASSERT_EQ(int(table->rows.size()), numbers(*page)->rowCount());
    EXPECT_EQ(QString::fromStdString(table->rows[0][SeasonModel::Mean]),
              numbers(*page)->index(0, SeasonModel::Mean).data().toString());
    ask.fileAnswer = folder.filePath("no/such/folder.csv");
    find<QPushButton>(*page, "numbersSave")->click();
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(SeasonPageTest, MakesAReportOfWhatIsFilteredAndLeavesTheWindowFree)
{
    useSample();
    const auto page = openSeason();
    chooseVariety(*page, "Pea, tendril");
    waitForAnswer();
    ask.fileAnswer = folder.filePath("season.html");
    find<QPushButton>(*page, "seasonReport")->menu()->actions().at(1)->trigger();
    EXPECT_TRUE(tasks.isBusy()) << "it is made beside the window";
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return QFile::exists(ask.fileAnswer) && !tasks.isBusy(); }, 20'000));
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray said = file.readAll();
    EXPECT_TRUE(said.contains("Pea, tendril"));
    EXPECT_FALSE(said.contains("Red cabbage"));
}

TEST_F(SeasonPageTest, AReportThatIsStoppedWritesNothing)
{
    useSample();
    const auto page = openSeason();
    ask.fileAnswer = folder.filePath("stopped.pdf");
    find<QPushButton>(*page, "seasonReport")->menu()->actions().front()->trigger();
    tasks.stopAll();
    waitForAnswer();
    EXPECT_FALSE(QFile::exists(ask.fileAnswer));
}

TEST_F(SeasonPageTest, ShowsWhatTastersSaidOfTheSpan)
{
    useSample();
    const auto page = openSeason();
    EXPECT_TRUE(page->isActiveWindow()) << "a chart of the answer was a window of its own";
    page->showRatings();
    const auto said = [&] { return textsIn(*page).join(' '); };
    EXPECT_TRUE(soon([&] { return said().contains("Radish tasting"); })) << said().toStdString();
    give(*page, "to", "2025-04-01");
    EXPECT_TRUE(soon([&] { return said().contains("No tasting was closed"); }))
        << said().toStdString();
}

TEST_F(SeasonPageTest, OpensTheTrayOfADot)
{
    useSample();
    const auto page = openSeason();
    const QSignalSpy asked(page.get(), &SeasonPage::trayAsked);
    Q_EMIT find<ChartView>(*page, "leftChart")->pointChosen(7);
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().value<TrayId>(), TrayId{7});
}

TEST_F(SeasonPageTest, FitsItsNarrowestWindow)
{
    useSample();
    // 1024 by 768 less the sidebar.
    const auto page = openSeason({816, 700});
    EXPECT_LE(page->minimumSizeHint().width(), 816);
    EXPECT_EQ(page->width(), 816);
}

TEST_F(SeasonPageTest, KeepsToTheRulesOfTableModels)
{
    useSample();
    SeasonModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    const SeasonReview review = reviewIn(*journal, journal->review().usualSeason()).value();
    model.show(review);
    EXPECT_EQ(model.rowCount(), int(review.media.size()));
    EXPECT_EQ(model.columnCount(), int(SeasonModel::Columns));
    QStringList heads;
    for (int column = 0; column < model.columnCount(); ++column) {
        heads << model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        EXPECT_FALSE(heads.back().isEmpty()) << column;
    }
    EXPECT_EQ(heads.removeDuplicates(), 0);
    model.show(SeasonReview());
    EXPECT_EQ(model.rowCount(), 0);
}

TEST_F(SeasonPageTest, EvennessAndHeightsWithoutReadingsSayNothingOfTheYield)
{
    bringInRows("BR001,Broccoli,Coir mix,2026-02-20,20,2026-03-05,300\n"
                "BR002,Broccoli,Coir mix,2026-02-20,20,2026-03-05,310\n"
                "BR003,Broccoli,Hemp mat,2026-02-20,20,2026-03-05,280\n"
                "BR004,Broccoli,Hemp mat,2026-02-20,20,2026-03-05,290\n");
    const auto page = openSeason();
    const auto* headline = find<QLabel>(*page, "headline");
    for (const Response response : {Response::Evenness, Response::HeightOnDay, Response::Residue}) {
        page->showMetric(response);
        waitForAnswer();
        EXPECT_TRUE(headline->text().startsWith("No ")) << headline->text().toStdString();
        EXPECT_FALSE(headline->text().contains("g a tray")) << headline->text().toStdString();
    }
}

} // namespace
} // namespace plumule::ui
