// Part of ui/rack/rack_view.h: how it is drawn.
#include "ui/rack/rack_view.h"

#include "ui/widget/theme.h"

#include <QPaintEvent>
#include <QPainter>

#include <algorithm>

namespace plumule::ui {
namespace {

QFont headFont()
{
    return uiFont(1.0, QFont::DemiBold);
}

// As much of the light as there is room for; a day's sum is the last to go.
QString fittingLight(const ShelfLight& light, const QFont& font, double room)
{
    QStringList parts = lightParts(light);
    const QFontMetricsF metrics(font);
    QString words = parts.join(QStringLiteral(" · "));
    while (parts.size() > 1 && metrics.horizontalAdvance(words) > room) {
        parts.removeFirst();
        words = parts.join(QStringLiteral(" · "));
    }
    return metrics.elidedText(words, Qt::ElideRight, room);
}

} // namespace

void RackView::paintEvent(QPaintEvent* event)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintRacks(painter);
    for (const ShelfBox& shelf : m_plan.shelves) {
        paintShelf(painter, shelf);
    }
    for (int i = 0; i < cellCount(); ++i) {
        if (areaOf(i).intersects(event->rect())) {
            paintCell(painter, i);
        }
    }
    paintLanding(painter);
}

void RackView::paintRacks(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    for (const RackBox& rack : m_plan.racks) {
        painter.setPen(QPen(colours.cardEdge, 1));
        painter.setBrush(colours.card);
        painter.drawRoundedRect(rack.area.adjusted(0.5, 0.5, -0.5, -0.5), scaled(10), scaled(10));
        painter.setPen(colours.ink);
        painter.setFont(headFont());
        const double name = QFontMetricsF(headFont()).horizontalAdvance(rack.name) + scaled(10);
        painter.drawText(rack.head, Qt::AlignVCenter | Qt::AlignLeft, rack.name);
        painter.setPen(colours.mutedInk);
        painter.setFont(uiFont(0.88));
        const QRectF count = rack.head.adjusted(name, 0, 0, 0);
        painter.drawText(
            count, Qt::AlignVCenter | Qt::AlignRight,
            painter.fontMetrics().elidedText(rack.count, Qt::ElideRight, int(count.width())));
    }
}

void RackView::paintShelf(QPainter& painter, const ShelfBox& shelf) const
{
    const Palette& colours = ui::palette();
    const QFont nameFont = uiFont(0.92, QFont::DemiBold);
    painter.setPen(colours.ink);
    painter.setFont(nameFont);
    painter.drawText(shelf.head, Qt::AlignVCenter | Qt::AlignLeft, shelf.name);
    const double name = QFontMetricsF(nameFont).horizontalAdvance(shelf.name) + scaled(10);
    const QFont font = uiFont(0.86);
    const QRectF room = shelf.head.adjusted(name, 0, 0, 0);
    const QString words = fittingLight(shelf.light, font, room.width());
    painter.setFont(font);
    const auto dli = shelf.light.dli();
    const QString sum = dli ? dliText(*dli) : QString();
    const bool endsInSum = !sum.isEmpty() && words.endsWith(sum);
    painter.setPen(colours.mutedInk);
    const double sumWide = endsInSum ? QFontMetricsF(font).horizontalAdvance(sum) : 0;
    painter.drawText(room.adjusted(0, 0, -sumWide, 0), Qt::AlignVCenter | Qt::AlignRight,
                     endsInSum ? words.chopped(sum.size()) : words);
    if (endsInSum) {
        painter.setPen(colours.ink);
        painter.drawText(room, Qt::AlignVCenter | Qt::AlignRight, sum);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.fieldEdge);
    for (const QRectF& board : shelf.boards) {
        painter.drawRoundedRect(board, board.height() / 2, board.height() / 2);
    }
}

TileLook RackView::lookOf(int cell) const
{
    const RackCell& shown = *at(cell);
    TileLook look;
    look.by = m_by;
    look.hasCursor = hasFocus() && cell == m_cursor;
    if (shown.tray && m_chosen.contains(*shown.tray)) {
        look.hand = InHand::Chosen;
    }
    for (const CarriedTray& each : m_carry.trays) {
        if (shown.tray == each.tray) {
            look.hand = InHand::Leaves;
        }
        if (shown.tray && each.inTheWay == shown.tray) {
            look.isInTheWay = true;
        }
    }
    return look;
}

void RackView::paintCell(QPainter& painter, int cell) const
{
    const RackCell& shown = *at(cell);
    const StandingTray* tray = shown.tray ? m_room.find(*shown.tray) : nullptr;
    if (tray != nullptr) {
        paintTile(painter, shown.area, *tray, m_now, lookOf(cell));
    } else if (shown.spot) {
        const auto places = m_room.walk();
        paintFreePlace(painter, shown.area, *places[static_cast<std::size_t>(cell)], lookOf(cell));
    }
}

// Over the places: what would stand there. Where another tray is in the way that one stays in
// sight.
void RackView::paintLanding(QPainter& painter) const
{
    for (const CarriedTray& each : m_carry.trays) {
        const int cell = each.to ? cellOf(*each.to) : -1;
        const StandingTray* tray = m_room.find(each.tray);
        if (cell < 0 || tray == nullptr || each.inTheWay || each.to == each.from) {
            continue;
        }
        TileLook look;
        look.by = m_by;
        look.hand = InHand::Lands;
        look.hasCursor = hasFocus() && cell == m_cursor;
        if (const StandingPlace* from = m_room.placeOf(each.tray)) {
            look.from = tr("%1 · %2").arg(shelfName(from->spot)).arg(from->spot.number);
        }
        painter.setPen(Qt::NoPen);
        painter.setBrush(ui::palette().card);
        painter.drawRoundedRect(at(cell)->area, scaled(8), scaled(8));
        paintTile(painter, at(cell)->area, *tray, m_now, look);
    }
}

} // namespace plumule::ui
