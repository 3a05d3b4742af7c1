// Part of ui/watering/tray_row.h: how a row is drawn.
#include "ui/watering/tray_row.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QPainter>

namespace plumule::ui {
namespace {

constexpr int kBoxColumn = 46;
constexpr int kDayColumn = 88;
constexpr int kLastColumn = 108;
constexpr int kMoreColumn = 44;
constexpr int kGap = 8;

QFont codeFont()
{
    return uiFont(1.1, QFont::DemiBold);
}

QFont amountFont()
{
    return uiFont(1.0, QFont::DemiBold);
}

// Draws within the cell, with three dots where it does not fit.
void drawIn(QPainter& painter, QRect cell, Qt::Alignment alignment, const QString& text)
{
    painter.drawText(cell, alignment,
                     painter.fontMetrics().elidedText(text, Qt::ElideRight, cell.width()));
}

} // namespace

void TrayRow::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintGround(painter);
    if (asksWhetherNeeded()) {
        paintAnswer(painter, wateredArea(), tr("Watered"), hasFocus() ? tr("Space") : QString());
        paintAnswer(painter, notNeededArea(), tr("Not needed"), hasFocus() ? tr("D") : QString());
    } else {
        paintTick(painter);
    }
    painter.setOpacity(m_tray.isDone() ? 0.5 : 1.0);
    switch (formAt(width())) {
    case Form::OneLine:
        return paintOneLine(painter);
    case Form::TwoLines:
        return paintTwoLines(painter);
    case Form::FourLines:
        return paintFourLines(painter);
    }
}

void TrayRow::paintGround(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    if (!m_isLast) {
        painter.fillRect(QRect(0, height() - 1, width(), 1), colours.rule);
    }
    const QRectF inside = QRectF(rect()).adjusted(1, 2, -1, -3);
    if (underMouse() || isDown()) {
        QColor hover = colours.selection;
        hover.setAlphaF(isDown() ? 1.0F : 0.45F);
        painter.setPen(Qt::NoPen);
        painter.setBrush(hover);
        painter.drawRoundedRect(inside, scaled(7), scaled(7));
    }
    if (hasFocus()) {
        painter.setPen(QPen(colours.accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(inside, scaled(7), scaled(7));
    }
}

void TrayRow::paintTick(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const int side = scaled(28);
    const QRectF box(scaled(8) + 1, (wordsHeight() - side) / 2.0, side, side);
    if (!m_tray.isDone()) {
        painter.setPen(QPen(colours.accentSoft, 2));
        painter.setBrush(colours.field);
        painter.drawRoundedRect(box, scaled(7), scaled(7));
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.accentSoft);
    painter.drawRoundedRect(box, scaled(7), scaled(7));
    const auto at = [&](double x, double y) {
        return QPointF(box.x() + x * side, box.y() + y * side);
    };
    painter.setPen(QPen(colours.ground == Ground::Dark ? colours.ink : colours.accentInk, scaled(3),
                        Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(QPolygonF({at(0.29, 0.52), at(0.44, 0.67), at(0.72, 0.35)}));
}

void TrayRow::paintAnswer(QPainter& painter, QRect area, const QString& text,
                          const QString& key) const
{
    const Palette& colours = ui::palette();
    const bool isPressed = isDown() && area.contains(mapFromGlobal(QCursor::pos()));
    painter.setPen(QPen(colours.fieldEdge, 1));
    painter.setBrush(isPressed ? colours.selection : colours.field);
    painter.drawRoundedRect(QRectF(area).adjusted(0.5, 1.5, -0.5, -1.5), scaled(7), scaled(7));
    painter.setPen(colours.ink);
    painter.setFont(uiFont());
    if (key.isEmpty()) {
        painter.drawText(area, Qt::AlignCenter, text);
        return;
    }
    const int high = painter.fontMetrics().height();
    painter.drawText(area.adjusted(0, scaled(2), 0, -high / 2 - scaled(4)), Qt::AlignCenter, text);
    painter.setFont(uiFont(0.75, QFont::Medium));
    painter.setPen(colours.mutedInk);
    painter.drawText(area.adjusted(0, high / 2 + scaled(6), 0, -scaled(2)), Qt::AlignCenter, key);
}

void TrayRow::paintOneLine(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const int high = height();
    const int gap = scaled(kGap);
    int x = scaled(kBoxColumn) + gap / 2;
    const auto cell = [&](int wide) {
        const QRect rect(x, 0, wide, high);
        x += wide + gap;
        return rect;
    };
    const bool isAsked = asksWhetherNeeded();
    const int answers = isAsked ? answersWidth() - scaled(kDayColumn) : 0;
    const int fixed = scaled(kDayColumn + kLastColumn + kMoreColumn) + m_frame.codeWidth + answers;
    const int shared = width() - x - fixed - 6 * gap;
    painter.setPen(colours.ink);
    painter.setFont(codeFont());
    drawIn(painter, cell(m_frame.codeWidth), Qt::AlignVCenter, QString::fromStdString(m_tray.code));
    painter.setFont(uiFont());
    drawIn(painter, cell(shared * 28 / 100), Qt::AlignVCenter,
           QString::fromStdString(m_tray.variety));
    paintMedium(painter, cell(shared * 31 / 100));
    paintWater(painter, cell(shared * 41 / 100), Qt::AlignVCenter);
    painter.setPen(colours.mutedInk);
    if (!isAsked) {
        drawIn(painter, cell(scaled(kDayColumn)), Qt::AlignVCenter, dayOfGrowth(m_tray));
    }
    paintLast(painter, cell(scaled(kLastColumn)), Qt::AlignVCenter);
}

QRect TrayRow::firstLine(int lines) const
{
    const int left = scaled(kBoxColumn) + scaled(kGap) / 2;
    const int high = scaled(24);
    return {left, (wordsHeight() - lines * high) / 2, width() - scaled(kMoreColumn) - left, high};
}

void TrayRow::paintName(QPainter& painter, QRect line, int kept) const
{
    painter.setPen(ui::palette().ink);
    painter.setFont(codeFont());
    drawIn(painter, QRect(line.left(), line.top(), m_frame.codeWidth, line.height()),
           Qt::AlignVCenter, QString::fromStdString(m_tray.code));
    painter.setFont(uiFont());
    drawIn(painter, line.adjusted(m_frame.codeWidth + scaled(kGap), 0, -kept, 0), Qt::AlignVCenter,
           QString::fromStdString(m_tray.variety));
}

void TrayRow::paintTwoLines(QPainter& painter) const
{
    const int gap = scaled(kGap);
    const QRect line = firstLine(2);
    const int water = qMin(waterWidth(), line.width() / 2);
    paintName(painter, line, water + gap);
    paintWater(painter, line.adjusted(line.width() - water, 0, 0, 0),
               Qt::AlignVCenter | Qt::AlignRight);

    const QRect second = line.translated(0, line.height());
    const QString day = dayOfGrowth(m_tray);
    const int dayWide = QFontMetrics(uiFont()).horizontalAdvance(day) + 2;
    const int last = lastWidth();
    const int mediumWide = qMin(scaled(160), line.width() - last - dayWide - 2 * gap);
    paintMedium(painter, QRect(second.left(), second.top(), mediumWide, second.height()));
    painter.setPen(ui::palette().mutedInk);
    drawIn(painter, second.adjusted(mediumWide + gap, 0, 0, 0), Qt::AlignVCenter, day);
    paintLast(painter, second.adjusted(line.width() - last, 0, 0, 0),
              Qt::AlignVCenter | Qt::AlignRight);
}

void TrayRow::paintFourLines(QPainter& painter) const
{
    QRect line = firstLine(4);
    paintName(painter, line, 0);
    line.translate(0, line.height());
    paintWater(painter, line, Qt::AlignVCenter);
    line.translate(0, line.height());
    paintMedium(painter, line);
    line.translate(0, line.height());
    painter.setPen(ui::palette().mutedInk);
    drawIn(painter, line, Qt::AlignVCenter, dayOfGrowth(m_tray));
    paintLast(painter, line, Qt::AlignVCenter | Qt::AlignRight);
}

void TrayRow::paintMedium(QPainter& painter, QRect cell) const
{
    const int mark = scaled(20);
    painter.save();
    painter.translate(cell.left() + scaled(7), cell.center().y() + 1);
    painter.fillPath(markerShape(m_tray.medium.marker, scaled(11)),
                     markerColour(m_tray.medium.marker));
    painter.restore();
    painter.setPen(ui::palette().ink);
    drawIn(painter, cell.adjusted(mark, 0, 0, 0), Qt::AlignVCenter,
           QString::fromStdString(m_tray.medium.name));
}

int TrayRow::waterWidth() const
{
    int wide = QFontMetrics(uiFont()).horizontalAdvance(m_water.kind) + 2;
    if (!m_water.amount.isEmpty()) {
        wide += QFontMetrics(amountFont()).horizontalAdvance(m_water.amount) + scaled(5);
    }
    return wide;
}

void TrayRow::paintWater(QPainter& painter, QRect cell, Qt::Alignment alignment) const
{
    if (alignment.testFlag(Qt::AlignRight)) {
        cell.setLeft(qMax(cell.left(), cell.right() + 1 - waterWidth()));
    }
    painter.setPen(ui::palette().ink);
    if (!m_water.amount.isEmpty()) {
        painter.setFont(amountFont());
        const int wide = painter.fontMetrics().horizontalAdvance(m_water.amount);
        drawIn(painter, cell, Qt::AlignVCenter, m_water.amount);
        cell.setLeft(cell.left() + wide + scaled(5));
        painter.setFont(uiFont());
    }
    drawIn(painter, cell, Qt::AlignVCenter, m_water.kind);
}

int TrayRow::lastWidth() const
{
    return m_missed.isEmpty() ? QFontMetrics(uiFont()).horizontalAdvance(m_last) + 2
                              : QFontMetrics(amountFont()).horizontalAdvance(m_missed) + 2;
}

void TrayRow::paintLast(QPainter& painter, QRect cell, Qt::Alignment alignment) const
{
    const bool isMissed = !m_missed.isEmpty();
    painter.setPen(isMissed ? ui::palette().warning : ui::palette().mutedInk);
    painter.setFont(isMissed ? amountFont() : uiFont());
    drawIn(painter, cell, alignment, isMissed ? m_missed : m_last);
    painter.setFont(uiFont());
}

} // namespace plumule::ui
