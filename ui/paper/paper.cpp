#include "ui/paper/paper.h"

#include "ui/widget/saved_file.h"
#include "ui/widget/theme.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPdfWriter>

namespace plumule::ui {
namespace {

constexpr double kFootHigh = 22;

} // namespace

QFont PaperPen::font(double points, QFont::Weight weight) const
{
    QFont font = uiFont(1.0, weight);
    font.setPixelSize(qMax(1, qRound(points * m_scale)));
    return font;
}

void PaperPen::text(QRectF cell, const QString& words, double points, QFont::Weight weight,
                    const QColor& ink, int flags) const
{
    const QRectF rect = onDevice(cell);
    const QFont used = font(points, weight);
    const bool isWrapped = (flags & Qt::TextWordWrap) != 0;
    m_painter.setFont(used);
    m_painter.setPen(ink);
    m_painter.drawText(
        rect, flags,
        isWrapped ? words : QFontMetricsF(used).elidedText(words, Qt::ElideRight, rect.width()));
}

double PaperPen::highOf(const QString& words, double points, double wide,
                        QFont::Weight weight) const
{
    const QRectF box(0, 0, wide * m_scale, 1e6);
    return QFontMetricsF(font(points, weight)).boundingRect(box, Qt::TextWordWrap, words).height() /
           m_scale;
}

double PaperPen::wideOf(const QString& words, double points, QFont::Weight weight) const
{
    return QFontMetricsF(font(points, weight)).horizontalAdvance(words) / m_scale;
}

void PaperPen::line(QPointF from, QPointF to, const QColor& ink, double thick) const
{
    m_painter.setPen(QPen(ink, thick * m_scale));
    m_painter.drawLine(from * m_scale, to * m_scale);
}

void PaperPen::fill(QRectF rect, const QColor& ink, double rounding) const
{
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(ink);
    m_painter.drawRoundedRect(onDevice(rect), rounding * m_scale, rounding * m_scale);
    m_painter.setBrush(Qt::NoBrush);
}

void PaperPen::box(QRectF square, Box look) const
{
    m_painter.setPen(QPen(kPaperInk, 0.9 * m_scale));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRoundedRect(onDevice(square), 2 * m_scale, 2 * m_scale);
    if (look == Box::Ticked) {
        const auto at = [&](double x, double y) {
            return QPointF(square.x() + x * square.width(), square.y() + y * square.height()) *
                   m_scale;
        };
        m_painter.setPen(QPen(kPaperInk, 1.4 * m_scale));
        m_painter.drawPolyline(QPolygonF({at(0.22, 0.52), at(0.43, 0.74), at(0.8, 0.26)}));
    }
}

std::vector<PaperPage> pagesOf(const std::vector<PaperBlock>& blocks, double high)
{
    std::vector<PaperPage> pages(1);
    double used = 0;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const PaperBlock& block = blocks[i];
        double needed = block.high;
        for (std::size_t next = i; blocks[next].staysWithNext && next + 1 < blocks.size(); ++next) {
            needed += blocks[next + 1].high;
        }
        if (needed > high) {
            needed = block.high;
        }
        if (used > 0 && (block.beginsPage || used + needed > high)) {
            pages.emplace_back();
            used = 0;
            if (block.repeated) {
                pages.back().push_back(block.repeated.get());
                used = block.repeated->high;
            }
        }
        pages.back().push_back(&block);
        used += block.high;
    }
    return pages;
}

bool printSheet(QPagedPaintDevice& paper, const PaperSheet& sheet)
{
    QPainter painter;
    if (!painter.begin(&paper)) {
        return false;
    }
    const double scale = paper.logicalDpiX() / 72.0;
    const QSizeF whole = QSizeF(paper.width(), paper.height()) / scale;
    const QRectF area(sheet.margin, sheet.margin, whole.width() - 2 * sheet.margin,
                      whole.height() - 2 * sheet.margin - kFootHigh);
    const PaperPen pen(painter, scale);
    const auto blocks = sheet.blocks(pen, area.width());
    const auto pages = pagesOf(blocks, area.height());
    for (std::size_t page = 0; page < pages.size(); ++page) {
        if ((sheet.isStopped && sheet.isStopped()) || (page > 0 && !paper.newPage())) {
            return false;
        }
        double y = area.y();
        for (const PaperBlock* block : pages[page]) {
            block->draw(pen, {area.x(), y, area.width(), block->high});
            y += block->high;
        }
        const PaperFoot foot = sheet.foot(page + 1, pages.size());
        const QRectF line(area.x(), whole.height() - sheet.margin - 12, area.width(), 12);
        const double right = foot.right.isEmpty() ? 0 : pen.wideOf(foot.right, 8.5) + 12;
        pen.text(line.adjusted(0, 0, -right, 0), foot.left, 8.5, QFont::Normal, kPaperMuted);
        pen.text(line, foot.right, 8.5, QFont::Normal, kPaperMuted,
                 Qt::AlignRight | Qt::AlignVCenter);
    }
    return painter.end();
}

Done writePdf(const QString& path, const QString& title, const QPageSize& size,
              const std::function<bool(QPagedPaintDevice&)>& print)
{
    return saveFile(path, [&](QIODevice& file) {
        QPdfWriter writer(&file);
        writer.setResolution(600);
        writer.setTitle(title);
        writer.setCreator(QStringLiteral("Plumule"));
        writer.setPageSize(size);
        writer.setPageMargins(QMarginsF());
        return print(writer);
    });
}

} // namespace plumule::ui
