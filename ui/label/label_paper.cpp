#include "ui/label/label_paper.h"

#include "ui/text/label_reason.h"

#include <QJsonDocument>
#include <QJsonObject>

#include <array>
#include <utility>

namespace plumule::ui {
namespace {

using Measure = std::pair<const char*, double LabelPaper::*>;
constexpr std::array<Measure, 8> kMeasures{{{"margin_left", &LabelPaper::marginLeft},
                                            {"margin_top", &LabelPaper::marginTop},
                                            {"margin_right", &LabelPaper::marginRight},
                                            {"margin_bottom", &LabelPaper::marginBottom},
                                            {"gap_across", &LabelPaper::gapAcross},
                                            {"gap_down", &LabelPaper::gapDown},
                                            {"label_wide", &LabelPaper::labelWide},
                                            {"label_high", &LabelPaper::labelHigh}}};

constexpr std::array<std::pair<const char*, LabelStock>, 3> kStocks{
    {{"a4", LabelStock::A4}, {"letter", LabelStock::Letter}, {"roll", LabelStock::Roll}}};

constexpr double kLongestRollLabel = 300;

// Without a check.
QSizeF labelSize(const LabelPaper& paper)
{
    if (paper.stock == LabelStock::Roll) {
        return {paper.labelWide, paper.labelHigh};
    }
    const QSizeF page = paper.pageSize();
    const double wide =
        page.width() - paper.marginLeft - paper.marginRight - (paper.columns - 1) * paper.gapAcross;
    const double high =
        page.height() - paper.marginTop - paper.marginBottom - (paper.rows - 1) * paper.gapDown;
    return {wide / paper.columns, high / paper.rows};
}

} // namespace

QSizeF LabelPaper::pageSize() const
{
    if (stock == LabelStock::Roll) {
        return {labelWide, labelHigh};
    }
    return QPageSize(stock == LabelStock::A4 ? QPageSize::A4 : QPageSize::Letter)
        .size(QPageSize::Millimeter);
}

int LabelPaper::labelsOnPage() const
{
    return stock == LabelStock::Roll ? 1 : rows * columns;
}

Result<QSizeF> labelSizeOf(const LabelPaper& paper)
{
    const bool isRoll = paper.stock == LabelStock::Roll;
    if (!isRoll) {
        if (paper.rows < 1) {
            return fail(ErrorKind::Invalid, LabelReason::Rows);
        }
        if (paper.columns < 1) {
            return fail(ErrorKind::Invalid, LabelReason::Columns);
        }
        if (paper.marginLeft < 0 || paper.marginTop < 0 || paper.marginRight < 0 ||
            paper.marginBottom < 0) {
            return fail(ErrorKind::Invalid, LabelReason::Margin);
        }
        if (paper.gapAcross < 0 || paper.gapDown < 0) {
            return fail(ErrorKind::Invalid, LabelReason::Gap);
        }
    }
    const QSizeF size = labelSize(paper);
    const bool isTooLong =
        isRoll && (size.width() > kLongestRollLabel || size.height() > kLongestRollLabel);
    if (size.width() < kLeastLabelWide || size.height() < kLeastLabelHigh || isTooLong) {
        return fail(ErrorKind::Invalid, LabelReason::Size,
                    QStringLiteral("%1 × %2 mm")
                        .arg(size.width(), 0, 'f', 1)
                        .arg(size.height(), 0, 'f', 1)
                        .toStdString());
    }
    if (!isRoll && (paper.skip < 0 || paper.skip >= paper.labelsOnPage())) {
        return fail(ErrorKind::Invalid, LabelReason::Skip);
    }
    return size;
}

QRectF labelPlace(const LabelPaper& paper, int number)
{
    const QSizeF size = labelSize(paper);
    if (paper.stock == LabelStock::Roll) {
        return {QPointF(), size};
    }
    const int row = number / paper.columns;
    const int column = number % paper.columns;
    return {QPointF(paper.marginLeft + column * (size.width() + paper.gapAcross),
                    paper.marginTop + row * (size.height() + paper.gapDown)),
            size};
}

int labelPages(const LabelPaper& paper, int labels)
{
    const int skipped = paper.stock == LabelStock::Roll ? 0 : paper.skip;
    const int onPage = paper.labelsOnPage();
    return labels == 0 ? 0 : (labels + skipped + onPage - 1) / onPage;
}

QString toLine(const LabelPaper& paper)
{
    QJsonObject line;
    for (const auto& [name, stock] : kStocks) {
        if (stock == paper.stock) {
            line["stock"] = QLatin1String(name);
        }
    }
    line["rows"] = paper.rows;
    line["columns"] = paper.columns;
    for (const auto& [name, measure] : kMeasures) {
        line[QLatin1String(name)] = paper.*measure;
    }
    return QString::fromUtf8(QJsonDocument(line).toJson(QJsonDocument::Compact));
}

LabelPaper labelPaperFrom(const QString& text)
{
    const QJsonObject line = QJsonDocument::fromJson(text.toUtf8()).object();
    LabelPaper paper;
    for (const auto& [name, stock] : kStocks) {
        if (line["stock"].toString() == QLatin1String(name)) {
            paper.stock = stock;
        }
    }
    paper.rows = line["rows"].toInt(paper.rows);
    paper.columns = line["columns"].toInt(paper.columns);
    for (const auto& [name, measure] : kMeasures) {
        paper.*measure = line[QLatin1String(name)].toDouble(paper.*measure);
    }
    return labelSizeOf(paper) ? paper : LabelPaper();
}

} // namespace plumule::ui
