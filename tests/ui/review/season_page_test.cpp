#include "tests/ui/support/growing.h"
#include "ui/chart/chart_view.h"
#include "ui/review/season_model.h"
#include "ui/review/season_page.h"

#include <QAbstractItemModelTester>
#include <QDateEdit>
#include <QFile>
#include <QMenu>
#include <QSignalSpy>
#include <QTableView>

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
    const SeasonReview review = journal->review().season(journal->review().usualSeason()).value();
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
    find<QDateEdit>(*page, "from")->setDate(QDate(2026, 1, 20));
    waitForAnswer();
    EXPECT_EQ(page->answer()->review.trays, 0);
    EXPECT_EQ(numbers(*page)->rowCount(), 0);
    EXPECT_TRUE(answerText(*page).contains("No tray was harvested in this span."));
    find<QDateEdit>(*page, "from")->setDate(QDate(2026, 1, 19));
    waitForAnswer();
    EXPECT_EQ(page->answer()->review.trays, 30);
}

TEST_F(SeasonPageTest, SaysThatOneTrayOfEachTellsNothingApartAndWhy)
{
    bringInRows("X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150\n"
                "X2,Kale,Steel mesh,2026-01-05,28,2026-01-19,180\n");
    const auto page = openSeason();
    const QString said = answerText(*page);
    EXPECT_TRUE(said.contains("Nothing can be told apart")) << said.toStdString();
    EXPECT_TRUE(said.contains("fewer than two trays")) << said.toStdString();
    EXPECT_TRUE(said.contains("Coir mix") && said.contains("Steel mesh")) << said.toStdString();
    EXPECT_TRUE(said.contains("one tray can't tell a medium from chance")) << said.toStdString();
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
    for (const auto metric :
         {SeasonPage::Metric::Yield, SeasonPage::Metric::CostPerGram, SeasonPage::Metric::Height}) {
        page->showMetric(metric);
        waitForAnswer();
        keys.insert(chart->spec().key);
        EXPECT_FALSE(chart->spec().series.empty()) << chart->spec().key;
    }
    EXPECT_EQ(keys.size(), 3U);
    ask.fileAnswer = folder.filePath("chart.png");
    QPushButton* save = nullptr;
    for (auto* each : page->findChildren<QPushButton*>()) {
        if (save == nullptr && each->accessibleName() == "Save this chart as a picture") {
            save = each;
        }
    }
    ASSERT_NE(save, nullptr);
    save->click();
    EXPECT_FALSE(QImage(ask.fileAnswer).isNull());
    EXPECT_FALSE(messages.isRefusal());
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
    const SeasonReview review = journal->review().season(journal->review().usualSeason()).value();
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

} // namespace
} // namespace plumule::ui
