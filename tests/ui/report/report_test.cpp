#include "tests/ui/support/ui_fixture.h"
#include "ui/chart/chart_view.h"
#include "ui/report/report_blocks.h"
#include "ui/report/report_html.h"
#include "ui/report/report_pdf.h"
#include "ui/widget/theme.h"

#include <QApplication>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QSvgRenderer>
#include <QXmlStreamReader>

namespace plumule::ui {
namespace {

ChartSpec someChart()
{
    ChartSpec spec;
    spec.key = "yield_adjusted";
    spec.rows = {"Mesh", "Felt"};
    ChartSeries dots;
    dots.name = "Mesh";
    dots.marker = 2;
    for (int i = 0; i < 8; ++i) {
        dots.points.push_back(
            {double(i % 2), 200.0 + 7 * i, "RD00" + std::to_string(i), {}, false});
    }
    spec.series = {dots};
    spec.x.key = "yield";
    spec.x.unit = "g";
    return spec;
}

ReportTable longTable(int rows)
{
    ReportTable table;
    table.caption = "Trays";
    table.header = {"Tray", "Medium", "Yield, g"};
    table.rightFrom = 2;
    for (int i = 0; i < rows; ++i) {
        table.rows.push_back({QString("RD%1").arg(i), "Felt & <fleece> \"soft\"",
                              QString(QChar(0x2212)) + QString::number(i)});
    }
    return table;
}

class ReportTest : public UiTest
{
protected:
    QString path(const char* name) const { return folder.path() + '/' + name; }
    QByteArray bytesOf(const QString& name)
    {
        QFile file(name);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
        return file.readAll();
    }
    Report someReport()
    {
        Report report;
        report.title = "Trial <T3> & more";
        report.subtitle = "Potter's Row";
        report.foot = "Trial T3";
        report.add(ReportHeading{"Answer"});
        report.add(ReportWords{"Mesh out-yields felt.\nBy 30 g.", WordsLook::Lead});
        report.add(ReportFigures{{{"6.7 %", "variation"}, {"F 2.17", "of the medium"}}});
        report.add(ReportCaution{"What else differed", {"Feeding & light."}});
        report.add(ReportList{{"Use one seed lot.", "Grow 12 trays of each."}});
        report.add(ReportChart{someChart(), "Yield by medium"});
        report.add(longTable(90));
        QImage photo(2400, 1600, QImage::Format_RGB32);
        photo.fill(Qt::darkGreen);
        EXPECT_TRUE(photo.save(path("photo.png")));
        report.add(ReportPictures{
            "12 Mar 2026", {{path("photo.png"), "Mesh, RD001"}, {path("lost.png"), "Felt"}}});
        return report;
    }
    // The blocks of a report on paper 400 points wide.
    static std::vector<PaperBlock> blocksOf(const Report& report,
                                            const std::vector<DrawnChart>& charts)
    {
        QImage one(1, 1, QImage::Format_RGB32);
        QPainter painter(&one);
        return paperBlocks(report, charts, PaperPen(painter, 600 / 72.0), 400);
    }
};

TEST_F(ReportTest, LeavesOutWhatHasNothingToShow)
{
    Report report;
    report.add(ReportWords{"  \n"});
    report.add(ReportTable{});
    report.add(ReportList{});
    report.add(ReportCaution{"Beware", {}});
    report.add(ReportChart{});
    report.add(ReportPictures{"Day", {}});
    EXPECT_TRUE(report.blocks.empty());
}

// A medium brought in by a table may be called anything.
TEST_F(ReportTest, WhatIsWrittenInTheJournalIsNeverMarkup)
{
    const std::string tag = "</desc><script>alert(1)</script>\"'&<img src=x onerror=y>";
    ChartSpec spec = someChart();
    spec.rows = {tag, "Felt"};
    spec.series.front().name = tag;
    spec.series.front().points.front().note = tag;
    spec.marks = {{"pays_back", tag, 8, true}};
    const QString words = QString::fromStdString(tag);
    Report report;
    report.title = report.subtitle = report.foot = words;
    report.add(ReportHeading{words});
    report.add(ReportWords{words, WordsLook::Lead});
    report.add(ReportFigures{{{words, words}}});
    report.add(ReportCaution{words, {words}});
    report.add(ReportList{{words}});
    report.add(ReportChart{spec, words});
    ReportTable table = longTable(1);
    table.caption = table.rows[0][1] = words;
    report.add(table);
    const QByteArray html = reportHtml(report, chartsOf(report));
    EXPECT_FALSE(html.contains("<script"));
    EXPECT_FALSE(html.contains("<img"));
    EXPECT_TRUE(html.contains("&lt;script&gt;"));
    EXPECT_TRUE(html.contains("default-src 'none'")) << "nor would it run";
    QXmlStreamReader reader(html);
    while (!reader.atEnd()) {
        reader.readNext();
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    ChartView view;
    view.resize(640, 400);
    view.draw(spec);
    ASSERT_TRUE(view.saveTo(path("named.svg")));
    EXPECT_FALSE(bytesOf(path("named.svg")).contains("<script"));
}

TEST_F(ReportTest, HtmlIsWellFormedAndNeedsNothingElse)
{
    const Report report = someReport();
    const QByteArray html = reportHtml(report, chartsOf(report));
    QXmlStreamReader reader(html);
    int drawings = 0;
    int rows = 0;
    int images = 0;
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement) {
            continue;
        }
        EXPECT_NE(reader.name(), u"script");
        EXPECT_NE(reader.name(), u"link");
        drawings += reader.name() == u"svg" ? 1 : 0;
        rows += reader.name() == u"tr" ? 1 : 0;
        images += reader.name() == u"img" ? 1 : 0;
        for (const QXmlStreamAttribute& attribute : reader.attributes()) {
            const bool leadsOut = attribute.name() == u"src" || attribute.name() == u"href" ||
                                  attribute.name() == u"srcset";
            if (leadsOut) {
                EXPECT_TRUE(attribute.value().startsWith(u"data:image/jpeg;base64,"));
            }
        }
    }
    EXPECT_FALSE(reader.hasError())
        << reader.errorString().toStdString() << " in line " << reader.lineNumber();
    EXPECT_EQ(drawings, 1);
    EXPECT_EQ(rows, 91);
    EXPECT_EQ(images, 1) << "the lost one is its caption alone";
    EXPECT_FALSE(html.contains("url(")) << "no address in the style either";
    EXPECT_FALSE(html.contains("@import"));
    EXPECT_TRUE(html.contains("prefers-color-scheme: dark"));
}

TEST_F(ReportTest, PicturesInHtmlAreScaledDown)
{
    const Report report = someReport();
    const QByteArray html = reportHtml(report, chartsOf(report));
    const qsizetype start = html.indexOf("base64,") + 7;
    const QByteArray data =
        QByteArray::fromBase64(html.mid(start, html.indexOf('"', start) - start));
    const QImage image = QImage::fromData(data);
    EXPECT_EQ(image.size(), QSize(900, 600));
}

TEST_F(ReportTest, PdfHasItsPagesAndVectorCharts)
{
    Report report = someReport();
    report.blocks.pop_back(); // the photographs are the only pixels
    const auto charts = chartsOf(report);
    ASSERT_TRUE(writeReportPdf(path("report.pdf"), report, charts));
    const QByteArray a4 = bytesOf(path("report.pdf"));
    EXPECT_TRUE(a4.startsWith("%PDF"));
    EXPECT_TRUE(a4.contains("/MediaBox [0 0 595"));
    EXPECT_GE(a4.count("/Type /Page\n"), 3);
    EXPECT_FALSE(a4.contains("/Subtype /Image")) << "a chart was drawn in pixels";
    ASSERT_TRUE(writeReportPdf(path("report.pdf"), report, charts, QPageSize::Letter));
    EXPECT_TRUE(bytesOf(path("report.pdf")).contains("/MediaBox [0 0 612"));
}

TEST_F(ReportTest, ChartsAreTheSameOnPaperWhateverTheTheme)
{
    Report report;
    report.add(ReportChart{someChart(), "Yield"});
    const QByteArray light = chartsOf(report).front().svg;
    applyTheme(*qApp, Ground::Dark, 1.5);
    const QByteArray dark = chartsOf(report).front().svg;
    const QColor shown = ui::palette().card;
    applyTheme(*qApp, Ground::Light);
    EXPECT_EQ(light, dark);
    EXPECT_EQ(shown, darkPalette().card) << "the window keeps its own look";
    EXPECT_TRUE(QSvgRenderer(light).isValid());
    EXPECT_TRUE(light.contains("Mesh")) << "rows are named in text";
}

TEST_F(ReportTest, ARecordedChartLandsInsideItsFrame)
{
    Report report;
    report.add(ReportChart{someChart(), "Yield"});
    const auto charts = chartsOf(report);
    QImage page(1000, 800, QImage::Format_RGB32);
    page.fill(Qt::white);
    QPainter painter(&page);
    const PaperPen pen(painter, 2);
    const auto blocks = paperBlocks(report, charts, pen, 400);
    ASSERT_EQ(blocks.size(), 2U) << "title and chart";
    const QRectF frame(50, 50, 400, blocks[1].high);
    blocks[1].draw(pen, frame);
    painter.end();
    QRect inked;
    for (int y = 0; y < page.height(); ++y) {
        for (int x = 0; x < page.width(); ++x) {
            if (page.pixel(x, y) != qRgb(255, 255, 255)) {
                inked |= QRect(x, y, 1, 1);
            }
        }
    }
    const QRectF onPage(frame.topLeft() * 2, frame.size() * 2);
    EXPECT_TRUE(onPage.contains(inked));
    EXPECT_GT(inked.width(), onPage.width() * 0.8) << "as wide as the page";
}

TEST_F(ReportTest, NoHeadingStandsAloneAndTablesRepeatTheirHead)
{
    // Whatever stands before it, a heading has what it heads on its own page.
    for (int lines = 1; lines < 60; ++lines) {
        Report report;
        report.title = "T";
        for (int i = 0; i < lines; ++i) {
            report.add(ReportWords{"A line."});
        }
        report.add(ReportHeading{"Every tray"});
        report.add(longTable(40));
        const auto blocks = blocksOf(report, {});
        const auto pages = pagesOf(blocks, 500);
        const PaperBlock* heading = &blocks[static_cast<std::size_t>(lines) + 1];
        const PaperBlock* head = heading + 2;
        for (std::size_t page = 0; page < pages.size(); ++page) {
            ASSERT_NE(pages[page].back(), heading) << lines;
            ASSERT_NE(pages[page].back(), head) << "a table's head alone, " << lines;
            const PaperBlock* first = pages[page].front();
            if (first->repeated == nullptr && page > 0 && first > head) {
                continue;
            }
            ASSERT_EQ(first->repeated, nullptr) << "rows without their head, " << lines;
        }
        double used = 0;
        for (const PaperBlock* block : pages.front()) {
            used += block->high;
        }
        ASSERT_LE(used, 500) << lines;
    }
}

TEST_F(ReportTest, AShortTableIsNotBroken)
{
    for (int lines = 1; lines < 40; ++lines) {
        Report report;
        report.title = "T";
        for (int i = 0; i < lines; ++i) {
            report.add(ReportWords{"A line."});
        }
        report.add(longTable(6));
        const auto blocks = blocksOf(report, {});
        const PaperBlock* first = &blocks[static_cast<std::size_t>(lines) + 1];
        for (const PaperPage& page : pagesOf(blocks, 500)) {
            const auto rows = std::count_if(page.begin(), page.end(), [&](const PaperBlock* each) {
                return each >= first && each < first + 8;
            });
            ASSERT_TRUE(rows == 0 || rows == 8) << lines << " lines before it: " << rows;
        }
    }
}

TEST_F(ReportTest, ColumnsOfATableFillThePageAndDontOverlap)
{
    ReportTable table = longTable(2);
    table.rows[0][1] = QString("a long tale of what happened to this tray ").repeated(6);
    QImage one(1, 1, QImage::Format_RGB32);
    QPainter painter(&one);
    const PaperPen pen(painter, 600 / 72.0);
    const auto blocks = paperTable(table, pen, 300);
    ASSERT_EQ(blocks.size(), 4U);
    EXPECT_GT(blocks[2].high, 2 * blocks[3].high) << "its words are wrapped, and the row grows";
}

TEST_F(ReportTest, StoppedWorkLeavesTheFileAsItWas)
{
    const Report report = someReport();
    const auto charts = chartsOf(report);
    for (const QString& name : {path("report.pdf"), path("report.html")}) {
        QFile before(name);
        ASSERT_TRUE(before.open(QIODevice::WriteOnly));
        before.write("what stood there");
        before.close();
    }
    std::stop_source stop;
    stop.request_stop();
    const Progress stopped([](double) {}, stop.get_token());
    const Done pdf = writeReportPdf(path("report.pdf"), report, charts, QPageSize::A4, stopped);
    const Done html = writeReportHtml(path("report.html"), report, charts, stopped);
    ASSERT_FALSE(pdf);
    ASSERT_FALSE(html);
    EXPECT_EQ(pdf.error().kind, ErrorKind::Cancelled);
    EXPECT_EQ(html.error().kind, ErrorKind::Cancelled);
    EXPECT_EQ(bytesOf(path("report.pdf")), "what stood there");
    EXPECT_EQ(bytesOf(path("report.html")), "what stood there");
}

TEST_F(ReportTest, SaysSoWhereTheFileCantBeWritten)
{
    const Report report = someReport();
    const Done pdf = writeReportPdf(path("none/report.pdf"), report, chartsOf(report));
    ASSERT_FALSE(pdf);
    EXPECT_EQ(pdf.error().kind, ErrorKind::NotWritable);
    EXPECT_FALSE(writeReportHtml(path("none/report.html"), report, {}));
}

} // namespace
} // namespace plumule::ui
