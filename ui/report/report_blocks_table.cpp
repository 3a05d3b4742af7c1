// Part of ui/report/report_blocks.h: tables.
#include "ui/report/report_blocks.h"

#include <algorithm>
#include <numeric>

namespace plumule::ui {
namespace {

constexpr double kCellGap = 10; // between columns
constexpr std::size_t kKeptRows = 14;
constexpr double kNarrowestWords = 56;

struct TableShape
{
    double size = 8.5;  // of the letters
    double padding = 5; // above and below a row

    std::vector<double> left;
    std::vector<double> wide;
    std::vector<bool> isRight;
};

QString cellOf(const QStringList& row, std::size_t column)
{
    return row.value(static_cast<qsizetype>(column));
}

// The longest word of a column: narrower it can't be without breaking one.
double longestWord(const PaperPen& pen, const QString& text, double size)
{
    double widest = 0;
    for (const QString& word : text.split(' ')) {
        widest = std::max(widest, pen.wideOf(word, size, QFont::DemiBold));
    }
    return widest;
}

// Takes what is too much from the widest columns of words first.
void shrink(std::vector<double>& wide, const std::vector<double>& least, double room)
{
    double sum = std::accumulate(wide.begin(), wide.end(), 0.0);
    while (sum > room + 0.01) {
        std::size_t widest = wide.size();
        for (std::size_t i = 0; i < wide.size(); ++i) {
            if (wide[i] > least[i] + 0.01 && (widest == wide.size() || wide[i] > wide[widest])) {
                widest = i;
            }
        }
        if (widest == wide.size()) {
            // Nothing gives way: all columns become narrower alike.
            for (double& each : wide) {
                each *= room / sum;
            }
            return;
        }
        const double less = std::min({sum - room, wide[widest] - least[widest], 8.0});
        wide[widest] -= less;
        sum -= less;
    }
}

TableShape shapeOf(const ReportTable& table, const PaperPen& pen, double room)
{
    TableShape shape;
    if (table.isDense) {
        shape.size = 7.5;
        shape.padding = 2;
    }
    std::vector<double> least;
    const auto columns = static_cast<std::size_t>(table.header.size());
    for (std::size_t column = 0; column < columns; ++column) {
        const bool isRight = table.isRight(static_cast<int>(column));
        const QString head = cellOf(table.header, column);
        double natural = pen.wideOf(head, shape.size);
        double word = longestWord(pen, head, shape.size);
        for (const QStringList& row : table.rows) {
            const QString cell = cellOf(row, column);
            const double cellWide = pen.wideOf(cell, shape.size, QFont::DemiBold);
            natural = std::max(natural, cellWide);
            word = std::max(word, isRight ? cellWide : longestWord(pen, cell, shape.size));
        }
        shape.wide.push_back(natural + 1);
        least.push_back(
            std::min(natural + 1, isRight ? word + 1 : std::max(word, kNarrowestWords)));
        shape.isRight.push_back(isRight);
    }
    const double gaps = kCellGap * double(columns - 1);
    shrink(shape.wide, least, room - gaps);
    const double spare = room - gaps - std::accumulate(shape.wide.begin(), shape.wide.end(), 0.0);
    double x = 0;
    for (std::size_t column = 0; column < columns; ++column) {
        // What is left over is shared out, so that the table fills the page's width.
        shape.wide[column] += spare / double(columns);
        shape.left.push_back(x);
        x += shape.wide[column] + kCellGap;
    }
    return shape;
}

double highOfRow(const QStringList& row, const TableShape& shape, const PaperPen& pen)
{
    double high = 0;
    for (std::size_t column = 0; column < shape.wide.size(); ++column) {
        high = std::max(high, pen.highOf(cellOf(row, column), shape.size, shape.wide[column],
                                         column == 0 ? QFont::DemiBold : QFont::Normal));
    }
    return high + 2 * shape.padding;
}

void drawRow(const PaperPen& pen, QRectF at, const QStringList& row, const TableShape& shape,
             bool isHead)
{
    for (std::size_t column = 0; column < shape.wide.size(); ++column) {
        const QRectF cell(at.x() + shape.left[column], at.y() + shape.padding, shape.wide[column],
                          at.height() - 2 * shape.padding);
        const int across = shape.isRight[column] ? Qt::AlignRight : Qt::AlignLeft;
        pen.text(cell, cellOf(row, column), shape.size,
                 column == 0 && !isHead ? QFont::DemiBold : QFont::Normal,
                 isHead ? kPaperMuted : kPaperInk,
                 across | (isHead ? Qt::AlignBottom : Qt::AlignTop) | Qt::TextWordWrap);
    }
    pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, isHead ? kPaperInk : kPaperRule,
             isHead ? 0.8 : 0.5);
}

} // namespace

std::vector<PaperBlock> paperTable(const ReportTable& table, const PaperPen& pen, double wide)
{
    const TableShape shape = shapeOf(table, pen, wide);
    std::vector<PaperBlock> blocks;
    if (!table.caption.isEmpty()) {
        const double high = pen.highOf(table.caption, 9.5, wide, QFont::DemiBold);
        blocks.push_back(
            {high + 14, true, [caption = table.caption](const PaperPen& used, QRectF at) {
                 used.text(at.adjusted(0, 12, 0, 0), caption, 9.5, QFont::DemiBold, kPaperInk,
                           Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
             }});
    }
    const auto draw = [shape](const QStringList& row, bool isHead) {
        return [shape, row, isHead](const PaperPen& used, QRectF at) {
            drawRow(used, at, row, shape, isHead);
        };
    };
    const auto head = std::make_shared<PaperBlock>();
    head->high = highOfRow(table.header, shape, pen);
    head->staysWithNext = true;
    head->draw = draw(table.header, true);
    blocks.push_back(*head);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        // A short table is not broken; of a long one neither the first nor the last row stands
        // alone on a page.
        const bool isLast = i + 1 == table.rows.size();
        const bool staysWithNext =
            !isLast && (table.rows.size() <= kKeptRows || i == 0 || i + 2 == table.rows.size());
        blocks.push_back({highOfRow(table.rows[i], shape, pen), staysWithNext,
                          draw(table.rows[i], false), head});
    }
    return blocks;
}

} // namespace plumule::ui
