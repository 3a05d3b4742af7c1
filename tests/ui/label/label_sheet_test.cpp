#include "core/journal/tray/tray_entries.h"
#include "tests/ui/label/scanned.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/label/label_code.h"
#include "ui/text/label_reason.h"

#include <QFile>

namespace plumule::ui {
namespace {

std::vector<LabelTray> someLabels(int count, const QString& prefix = "RD")
{
    std::vector<LabelTray> labels;
    for (int i = 1; i <= count; ++i) {
        LabelTray label;
        label.code = prefix + QStringLiteral("%1").arg(i, 3, 10, QLatin1Char('0'));
        label.variety = "Radish, rose";
        label.medium = "Coconut fibre, fine";
        label.marker = i % 8;
        label.sown = date(2026, 3, 12);
        label.due = date(2026, 3, 24);
        label.place = QString::fromUtf8("A3 · place 2");
        label.trial = "T3 block 1";
        labels.push_back(label);
    }
    return labels;
}

LabelPaper sheetOf(LabelStock stock, int rows, int columns)
{
    LabelPaper paper;
    paper.stock = stock;
    paper.rows = rows;
    paper.columns = columns;
    return paper;
}

LabelPaper rollOf(double wide, double high)
{
    LabelPaper paper;
    paper.stock = LabelStock::Roll;
    paper.labelWide = wide;
    paper.labelHigh = high;
    return paper;
}

LabelPaper withMargins(LabelPaper paper, double margin, double gap)
{
    paper.marginLeft = paper.marginTop = paper.marginRight = paper.marginBottom = margin;
    paper.gapAcross = paper.gapDown = gap;
    return paper;
}

// Whether any pixel of a frame along the label's edge, as wide as `millimetres`, is inked.
bool isEdgeInked(const QImage& image, double millimetres)
{
    const int frame = qRound(millimetres / 25.4 * 200);
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const bool isFrame =
                x < frame || y < frame || x >= image.width() - frame || y >= image.height() - frame;
            if (isFrame && qGray(image.pixel(x, y)) < 128) {
                return true;
            }
        }
    }
    return false;
}

struct LabelSheetTest : UiTest
{};

TEST_F(LabelSheetTest, EveryCodeIsReadBackByAnotherDecoder)
{
    const std::vector<LabelPaper> papers = {
        sheetOf(LabelStock::A4, 8, 3),
        withMargins(sheetOf(LabelStock::A4, 13, 5), 8, 2),
        withMargins(sheetOf(LabelStock::A4, 16, 7), 5, 1),
        withMargins(sheetOf(LabelStock::Letter, 10, 3), 12, 3),
        withMargins(sheetOf(LabelStock::Letter, 17, 8), 2, 0),
    };
    for (const LabelPaper& paper : papers) {
        const auto size = labelSizeOf(paper);
        ASSERT_TRUE(size.has_value()) << toLine(paper).toStdString();
        const auto labels = someLabels(paper.labelsOnPage());
        const QImage page = pageImage(labels, paper, 0);
        for (int number = 0; number < paper.labelsOnPage(); ++number) {
            const QRectF place = labelPlace(paper, number);
            const QImage one =
                page.copy(QRectF(place.topLeft() / 25.4 * 200, place.size() / 25.4 * 200).toRect());
            EXPECT_EQ(qrCodesIn(one), QStringList(labels[static_cast<std::size_t>(number)].code))
                << size->width() << " x " << size->height();
        }
    }
}

TEST_F(LabelSheetTest, LabelsOfARollAreReadOneByOne)
{
    for (const QSizeF size : {QSizeF(62, 29), QSizeF(57, 32), QSizeF(50, 30), QSizeF(40, 30),
                              QSizeF(100, 50), QSizeF(24, 15), QSizeF(30, 60)}) {
        const LabelPaper paper = rollOf(size.width(), size.height());
        const auto labels = someLabels(3);
        EXPECT_EQ(labelPages(paper, 3), 3);
        for (int page = 0; page < 3; ++page) {
            EXPECT_EQ(qrCodesIn(pageImage(labels, paper, page)),
                      QStringList(labels[static_cast<std::size_t>(page)].code))
                << size.width() << " x " << size.height();
        }
    }
}

TEST_F(LabelSheetTest, CodesKeepTheirLetterCaseAndLetters)
{
    for (const QString& code : {QStringLiteral("rd-29"), QString::fromUtf8("Größe 7"),
                                QStringLiteral("BROCCOLI-SPRING-2026-014")}) {
        auto labels = someLabels(1);
        labels.front().code = code;
        EXPECT_EQ(qrCodesIn(pageImage(labels, rollOf(62, 29), 0)), QStringList(code));
    }
}

TEST_F(LabelSheetTest, NothingIsPrintedWhereALabelIsCut)
{
    for (const QSizeF size : {QSizeF(62, 29), QSizeF(40, 30), QSizeF(24, 15)}) {
        auto labels = someLabels(1);
        labels.front().variety = "A variety with an uncommonly long name, late sown";
        labels.front().medium = "A medium whose name is longer than any label could ever be";
        EXPECT_FALSE(isEdgeInked(pageImage(labels, rollOf(size.width(), size.height()), 0), 0.6));
    }
}

TEST_F(LabelSheetTest, LabelsUsedAlreadyAreSkippedOnTheFirstSheetOnly)
{
    LabelPaper paper = sheetOf(LabelStock::A4, 4, 2);
    paper.skip = 5;
    const auto labels = someLabels(7);
    EXPECT_EQ(labelPages(paper, 7), 2);
    EXPECT_EQ(qrCodesIn(pageImage(labels, paper, 0)), QStringList({"RD001", "RD002", "RD003"}));
    EXPECT_EQ(qrCodesIn(pageImage(labels, paper, 1)),
              QStringList({"RD004", "RD005", "RD006", "RD007"}));
}

TEST_F(LabelSheetTest, PdfHasAPageASheetOfThePapersSize)
{
    const QString path = folder.path() + "/labels.pdf";
    const auto read = [&] {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    };
    ASSERT_TRUE(writeLabels(path, someLabels(30), sheetOf(LabelStock::A4, 8, 3)));
    EXPECT_EQ(read().count("/Type /Page\n"), 2);
    EXPECT_TRUE(read().contains("/MediaBox [0 0 595"));
    ASSERT_TRUE(writeLabels(path, someLabels(3), rollOf(62, 29)));
    EXPECT_EQ(read().count("/Type /Page\n"), 3);
    EXPECT_TRUE(read().contains("/MediaBox [0 0 176")) << "62 mm are 175.7 points";
    const auto lost = writeLabels(folder.path() + "/none/labels.pdf", someLabels(1), LabelPaper());
    ASSERT_FALSE(lost.has_value());
    EXPECT_EQ(lost.error().kind, ErrorKind::NotWritable);
}

TEST_F(LabelSheetTest, RefusesPaperThatHoldsNoLabels)
{
    struct Row
    {
        LabelPaper paper;
        LabelReason reason;
    };
    LabelPaper used = sheetOf(LabelStock::A4, 2, 2);
    used.skip = 4;
    LabelPaper pushed = sheetOf(LabelStock::A4, 2, 2);
    pushed.gapAcross = -1;
    const std::vector<Row> rows = {
        {sheetOf(LabelStock::A4, 0, 3), LabelReason::Rows},
        {sheetOf(LabelStock::A4, 3, 0), LabelReason::Columns},
        {sheetOf(LabelStock::A4, 20, 3), LabelReason::Size},
        {sheetOf(LabelStock::A4, 8, 9), LabelReason::Size},
        {withMargins(sheetOf(LabelStock::Letter, 1, 1), 120, 0), LabelReason::Size},
        {withMargins(sheetOf(LabelStock::A4, 2, 2), -1, 0), LabelReason::Margin},
        {pushed, LabelReason::Gap},
        {rollOf(23.9, 15), LabelReason::Size},
        {rollOf(24, 14.9), LabelReason::Size},
        {used, LabelReason::Skip},
    };
    for (const Row& row : rows) {
        const auto size = labelSizeOf(row.paper);
        ASSERT_FALSE(size.has_value()) << static_cast<int>(row.reason);
        EXPECT_EQ(size.error().kind, ErrorKind::Invalid);
        EXPECT_EQ(size.error().reason, row.reason);
        EXPECT_FALSE(writeLabels(folder.path() + "/no.pdf", someLabels(1), row.paper));
    }
    EXPECT_TRUE(labelSizeOf(rollOf(24, 15)));
}

TEST_F(LabelSheetTest, PaperIsRememberedAsALine)
{
    LabelPaper paper = withMargins(sheetOf(LabelStock::Letter, 10, 3), 12.5, 3);
    EXPECT_EQ(labelPaperFrom(toLine(paper)), paper);
    EXPECT_EQ(labelPaperFrom(toLine(rollOf(57, 32))), rollOf(57, 32));
    EXPECT_EQ(labelPaperFrom(QString()), LabelPaper());
    EXPECT_EQ(labelPaperFrom("{\"rows\": 400}"), LabelPaper()) << "what can't be printed";
}

TEST_F(LabelSheetTest, LabelsSayWhatTheJournalKnows)
{
    useSample();
    const auto rows = journal->trays().list({});
    ASSERT_TRUE(rows.has_value());
    std::vector<TrayId> ids;
    for (const TrayListRow& row : *rows) {
        if (row.record.trialCode && row.spot && row.record.tray.state == TrayState::Growing) {
            ids.insert(ids.begin(), row.record.tray.id);
        }
    }
    ASSERT_GE(ids.size(), 2U);
    const auto labels = labelsFor(*journal, ids);
    ASSERT_TRUE(labels.has_value());
    ASSERT_EQ(labels->size(), ids.size());
    for (std::size_t i = 0; i < ids.size(); ++i) {
        const auto sheet = journal->trays().sheet(ids[i]);
        const LabelTray& label = (*labels)[i];
        EXPECT_EQ(label.code.toStdString(), sheet->record.tray.code) << "the order asked for";
        EXPECT_EQ(label.variety.toStdString(), sheet->record.variety);
        EXPECT_EQ(label.medium.toStdString(), sheet->record.medium.name);
        EXPECT_EQ(label.sown, sheet->record.tray.sownOn);
        EXPECT_EQ(label.due, std::optional(sheet->plan.harvest.date));
        EXPECT_TRUE(label.trial.startsWith(QString::fromStdString(*sheet->record.trialCode)));
    }
}

} // namespace
} // namespace plumule::ui
