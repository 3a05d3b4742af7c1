#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/tray/tray_entries.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "tests/support/season_asks.h"
#include "tests/ui/support/growing.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"
#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QFile>
#include <QImage>
#include <QSignalSpy>
#include <QtCharts/QChart>

#include <set>

namespace plumule::ui {
namespace {

// The share of an image's pixels that differ from the card behind a chart.
double inkOn(const QImage& image)
{
    const QRgb card = palette().card.rgb();
    qint64 inked = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            inked += (image.pixel(x, y) & 0xffffff) != (card & 0xffffff) ? 1 : 0;
        }
    }
    return double(inked) / double(qint64{image.width()} * image.height());
}

qint64 pixelsOf(const QImage& image, const QColor& colour)
{
    qint64 count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            count += image.pixelColor(x, y).rgb() == colour.rgb() ? 1 : 0;
        }
    }
    return count;
}

QByteArray bytesOf(const QString& path)
{
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

// Gives a view its size without a window.
void layOut(ChartView& view)
{
    view.resize(600, 300);
    QCoreApplication::processEvents(); // the chart lays itself out when told of its margins
    EXPECT_FALSE(view.grab().isNull());
}

// Two sowings and the two together, with a column beside them.
ChartSpec sowingsTogether()
{
    ChartSpec spec;
    spec.form = ChartForm::DotRows;
    spec.rows = {"T1", "T2", "All together"};
    spec.columns = {{"difference", {"+8 %", "+12 %", "+10 %"}}};
    for (int row = 0; row < 3; ++row) {
        ChartSeries series;
        series.name = "Mesh";
        series.marker = 2;
        series.form = row < 2 ? SeriesForm::Intervals : SeriesForm::Pooled;
        series.intervals = {{double(row), 2, 10, 20}};
        spec.series.push_back(series);
    }
    return spec;
}

// Twenty rows of as many dots each, none over another.
ChartSpec manyDots(int from, int to)
{
    ChartSpec spec;
    spec.key = "trial_so_far";
    spec.form = ChartForm::DotRows;
    spec.x.low = 0;
    spec.x.high = 31;
    ChartSeries dots;
    dots.marker = 2;
    for (int row = 0; row < 20; ++row) {
        spec.rows.push_back("T" + std::to_string(row));
        for (int i = from; i <= to; ++i) {
            ChartPoint point;
            point.x = row;
            point.y = i;
            point.isHollow = i % 5 == 0;
            dots.points.push_back(point);
        }
    }
    spec.series = {dots};
    return spec;
}

QImage drawn(const ChartSpec& spec)
{
    ChartView view;
    view.resize(1000, 1200);
    view.draw(spec);
    QCoreApplication::processEvents();
    return view.grab().toImage();
}

// One tray on one medium.
ChartSpec oneDot()
{
    ChartSpec spec;
    spec.key = "yield_adjusted";
    spec.form = ChartForm::DotRows;
    spec.rows = {"Steel mesh"};
    spec.x.key = "yield";
    spec.x.unit = "g";
    ChartSeries dots;
    dots.name = "Steel mesh";
    dots.marker = 2;
    dots.points = {{0, 100, "RD001", 7, false}};
    ChartSeries mean = dots;
    mean.form = SeriesForm::Intervals;
    mean.points.clear();
    mean.intervals = {{0, 80, 140, 200}};
    spec.series = {dots, mean};
    return spec;
}

class ChartTest : public GrowingTest
{
protected:
    // Every kind of chart of the sample's season that a page shows.
    std::vector<ChartSpec> sampleSpecs()
    {
        const SeasonFilter filter = journal->review().usualSeason();
        const SeasonAnswer answer = partsIn(*journal, filter).value();
        const SeasonReview& season = answer.review;
        const auto& fits = answer.heights;
        std::vector<ChartSpec> specs{heightChart(season), costByUsesChart(season)};
        for (const Response response :
             {Response::YieldPerTray, Response::CostPerGram, Response::HeightOnDay,
              Response::Evenness, Response::DaysToHarvest, Response::Residue, Response::Work}) {
            const auto comparison = comparisonIn(*journal, filter, response).value();
            specs.push_back(adjustedMeansChart(comparison));
            specs.push_back(differencesChart(comparison));
        }
        specs.push_back(paybackChart(answer.paybacks, season));
        for (const PieceAgeing& each : answer.ageing) {
            specs.push_back(ageingChart(each));
        }
        const auto variety = mostReadVariety(fits);
        EXPECT_TRUE(variety.has_value());
        specs.push_back(heightFitChart(fits, variety.value_or(VarietyId())));
        const auto trays = journal->trays().list(TrayFilter()).value();
        for (const TrayListRow& each : trays) {
            const auto tray = journal->harvests().atScale(each.record.tray.code);
            if (tray && tray->trial) {
                specs.push_back(trialSoFarChart(*tray->trial));
                return specs;
            }
        }
        ADD_FAILURE() << "no tray of the sample belongs to a trial";
        return specs;
    }
};

TEST(ChartView, ManyDotsLookAsFewDo)
{
    const QColor colour = markerColour(2);
    const auto whole = double(pixelsOf(drawn(manyDots(1, 30)), colour));
    const auto halves = double(pixelsOf(drawn(manyDots(1, 15)), colour) +
                               pixelsOf(drawn(manyDots(16, 30)), colour));
    EXPECT_GT(halves, 600 * 9);
    EXPECT_NEAR(whole / halves, 1, 0.1);
}

TEST_F(ChartTest, DrawsEveryKindOfChartOfTheSamplesSeasonWithoutAWindow)
{
    useSample();
    std::set<std::string> keys;
    auto specs = sampleSpecs();
    specs.push_back(differencesChart(
        comparisonIn(*journal, journal->review().usualSeason(), Response::YieldPerTray).value()));
    for (const ChartSpec& spec : specs) {
        SCOPED_TRACE(spec.key);
        keys.insert(spec.key);
        EXPECT_FALSE(spec.series.empty());
        ChartView view;
        view.draw(spec);
        layOut(view);
        EXPECT_EQ(view.spec(), spec);
        const QString path = folder.filePath("chart.png");
        ASSERT_TRUE(view.saveTo(path));
        const QImage image(path);
        ASSERT_FALSE(image.isNull());
        EXPECT_GE(image.width(), 1800);
        EXPECT_GE(image.height(), 900);
        EXPECT_GT(inkOn(image), 0.004);
        for (const ChartSeries& series : spec.series) {
            const bool isDrawn = !series.points.empty() || !series.intervals.empty();
            if (isDrawn && series.marker >= 0 && series.form == SeriesForm::Intervals) {
                EXPECT_GT(pixelsOf(image, markerColour(series.marker)), 20) << series.name;
            }
        }
        ASSERT_TRUE(QFile::remove(path));
    }
    EXPECT_GE(keys.size(), 9U);
}

TEST_F(ChartTest, HasWordsForEveryChartAndAxisOfTheSample)
{
    useSample();
    for (const ChartSpec& spec : sampleSpecs()) {
        const QString bare = QString::fromStdString(spec.key).replace('_', ' ');
        EXPECT_NE(chartTitle(spec), bare) << "no title for " << spec.key;
        EXPECT_TRUE(chartTitle(spec).front().isUpper()) << chartTitle(spec).toStdString();
        for (const ChartAxis* axis : {&spec.x, &spec.y}) {
            const QString title = axisTitle(*axis);
            EXPECT_FALSE(title.contains('_') || title.contains("%1"))
                << spec.key << ": " << title.toStdString();
            if (axis->key == "yield" || axis->key == "height" || axis->key == "cost_per_gram") {
                EXPECT_TRUE(title.contains(QString::fromStdString(axis->unit)));
            }
        }
    }
}

TEST_F(ChartTest, LeavesRoomForItsColumnsAndMarksThePooledRow)
{
    ChartView view;
    ChartSpec spec = sowingsTogether();
    view.draw(spec);
    layOut(view);
    const QRectF narrow = view.chart()->plotArea();
    const qint64 withBar = pixelsOf(view.grab().toImage(), markerColour(2));
    spec.columns.clear();
    view.draw(spec);
    layOut(view);
    EXPECT_GT(view.chart()->plotArea().right(), narrow.right() + 30);
    spec = sowingsTogether();
    spec.series.back().form = SeriesForm::Intervals;
    view.draw(spec);
    layOut(view);
    EXPECT_GT(withBar, 1.2 * double(pixelsOf(view.grab().toImage(), markerColour(2))))
        << "a bar is more than a line";
    EXPECT_TRUE(chartDescription(sowingsTogether()).contains("10"));
}

TEST_F(ChartTest, SaysInWordsWhatARowChartShows)
{
    const QString said = chartDescription(oneDot());
    EXPECT_TRUE(said.startsWith("Yield by medium, each dot a tray; adjusted means."));
    EXPECT_TRUE(said.contains("Steel mesh: mean 140.00, 80.00 to 200.00.")) << said.toStdString();
    ChartView view;
    view.draw(oneDot());
    EXPECT_EQ(view.accessibleDescription(), said);
    EXPECT_EQ(view.accessibleName(), chartTitle(oneDot()));
    ChartSpec marked;
    marked.key = "cost_by_uses";
    marked.form = ChartForm::Curves;
    marked.marks = {{"pays_back", "Steel mesh", 8, true}};
    EXPECT_TRUE(chartDescription(marked).contains("Steel mesh pays back at use 8."));
}

TEST_F(ChartTest, SavesADrawingWithItsWordsAndAPage)
{
    ChartView view;
    view.draw(oneDot());
    layOut(view);
    const QString svg = folder.filePath("chart.SVG");
    ASSERT_TRUE(view.saveTo(svg));
    const QByteArray drawing = bytesOf(svg);
    EXPECT_TRUE(drawing.contains("<svg"));
    EXPECT_TRUE(drawing.contains("<title>Yield by medium"));
    EXPECT_TRUE(drawing.contains("Steel mesh"));
    EXPECT_TRUE(drawing.toLower().contains(markerColour(2).name().toUtf8()));
    const QString pdf = folder.filePath("chart.pdf");
    ASSERT_TRUE(view.saveTo(pdf));
    EXPECT_TRUE(bytesOf(pdf).startsWith("%PDF-"));
    // With its font in it.
    EXPECT_TRUE(bytesOf(pdf).contains("Inter"));
    EXPECT_GT(bytesOf(pdf).size(), 4000);
}

TEST_F(ChartTest, SavesAChartThatWasNeverShownAtAReadableSize)
{
    ChartView view;
    view.draw(oneDot());
    const QString path = folder.filePath("chart.png");
    ASSERT_TRUE(view.saveTo(path));
    EXPECT_GE(QImage(path).width(), 900);
    EXPECT_GE(QImage(path).height(), 450);
}

TEST_F(ChartTest, SavesThreeTimesTheSizeThatIsShown)
{
    ChartView view;
    view.draw(oneDot());
    show(view, {600, 300});
    const QString path = folder.filePath("chart.png");
    ASSERT_TRUE(view.saveTo(path));
    EXPECT_EQ(QImage(path).width(), 1800);
    EXPECT_EQ(QImage(path).height(), 900);
}

TEST_F(ChartTest, SaysThatItCannotBeWritten)
{
    ChartView view;
    view.draw(oneDot());
    for (const char* name : {"nowhere/chart.png", "nowhere/chart.svg", "nowhere/chart.pdf"}) {
        EXPECT_FALSE(view.saveTo(folder.filePath(name))) << name;
    }
}

TEST_F(ChartTest, DrawsAnEmptyChartAndAnotherAfterIt)
{
    ChartView view;
    show(view, {600, 300});
    view.draw(ChartSpec());
    const qint64 none = pixelsOf(view.grab().toImage(), markerColour(2));
    EXPECT_EQ(none, 0);
    view.draw(oneDot());
    EXPECT_GT(pixelsOf(view.grab().toImage(), markerColour(2)), 20);
    view.draw(ChartSpec());
    EXPECT_EQ(pixelsOf(view.grab().toImage(), markerColour(2)), 0);
    EXPECT_EQ(view.chart()->axes().size(), 2);
}

TEST_F(ChartTest, TellsTheTrayOfTheDotThatIsPressed)
{
    ChartView view;
    view.draw(oneDot());
    show(view, {600, 300});
    const QSignalSpy chosen(&view, &ChartView::pointChosen);
    // The only row is centred on one half of the value axis.
    const QPointF place = view.chart()->mapToPosition(QPointF(100, 0.5));
    const QPoint dot = view.mapFromScene(view.chart()->mapToScene(place));
    QTest::mouseClick(view.viewport(), Qt::LeftButton, Qt::NoModifier, dot);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.front().front().toLongLong(), 7);
    QTest::mouseClick(view.viewport(), Qt::LeftButton, Qt::NoModifier, dot + QPoint(60, 0));
    EXPECT_EQ(chosen.count(), 1);
}

TEST_F(ChartTest, FollowsTheLook)
{
    ChartView view;
    view.draw(oneDot());
    show(view, {600, 300});
    const QColor onLight = markerColour(2);
    EXPECT_GT(pixelsOf(view.grab().toImage(), onLight), 20);
    applyTheme(*qApp, Ground::Dark);
    QCoreApplication::sendPostedEvents();
    const QImage dark = view.grab().toImage();
    EXPECT_GT(pixelsOf(dark, darkPalette().card), pixelsOf(dark, lightPalette().card));
    EXPECT_GT(pixelsOf(dark, markerColour(2)), 20);
    EXPECT_EQ(pixelsOf(dark, onLight), 0);
    applyTheme(*qApp, Ground::Light);
}

} // namespace
} // namespace plumule::ui
