#include "ui/rack/free_chart.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"

#include <QHelpEvent>
#include <QLocale>
#include <QPainter>
#include <QToolTip>

namespace plumule::ui {
namespace {

constexpr int kMonday = 1;

QColor freeColour()
{
    return ui::palette().accentSoft;
}

} // namespace

FreeChart::FreeChart(QWidget* parent)
    : QWidget(parent)
{
    setObjectName("freePlaces");
    setAccessibleName(tr("Places free each evening, four weeks"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize FreeChart::sizeHint() const
{
    return {scaled(560), scaled(136)};
}

QSize FreeChart::minimumSizeHint() const
{
    return {scaled(160), scaled(136)};
}

QString FreeChart::wordsOf(const FreeEvening& evening)
{
    const QString day = QLocale::c().dayName(toQDate(evening.on).dayOfWeek(), QLocale::ShortFormat);
    QString words = tr("%1 %2: %3 free").arg(day, shortDayText(evening.on)).arg(evening.free);
    if (evening.planned > 0) {
        words += tr(", %1 taken by planned sowings").arg(evening.planned);
    }
    if (evening.missing > 0) {
        words += tr(", %1 lacking").arg(evening.missing);
    }
    return words;
}

void FreeChart::show(const std::vector<FreeEvening>& evenings, int places)
{
    m_evenings = evenings;
    m_places = places;
    QStringList words;
    for (const FreeEvening& evening : m_evenings) {
        words << wordsOf(evening);
    }
    setAccessibleDescription(words.join(QStringLiteral("; ")));
    update();
}

QRectF FreeChart::plot() const
{
    const double left = QFontMetricsF(uiFont(0.82)).horizontalAdvance(QStringLiteral("000"));
    return QRectF(rect()).adjusted(left + scaled(4), scaled(8), 0, -scaled(40));
}

QRectF FreeChart::slot(std::size_t evening) const
{
    const QRectF area = plot();
    const double wide = area.width() / static_cast<double>(m_evenings.size());
    return {area.left() + wide * static_cast<double>(evening), area.top(), wide, area.height()};
}

bool FreeChart::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) {
        return QWidget::event(event);
    }
    const auto* help = static_cast<QHelpEvent*>(event);
    for (std::size_t i = 0; i < m_evenings.size(); ++i) {
        if (slot(i).contains(QPointF(help->pos().x(), slot(i).center().y()))) {
            QToolTip::showText(help->globalPos(), wordsOf(m_evenings[i]), this);
        }
    }
    return true;
}

void FreeChart::paintEvent(QPaintEvent*)
{
    if (m_evenings.empty() || m_places == 0) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintScale(painter);
    for (std::size_t i = 0; i < m_evenings.size(); ++i) {
        paintBar(painter, i);
        paintDay(painter, i);
    }
}

void FreeChart::paintScale(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const QRectF area = plot();
    painter.setFont(uiFont(0.82));
    for (const int at : {0, m_places / 2, m_places}) {
        const double y = area.bottom() - area.height() * at / m_places;
        painter.fillRect(QRectF(area.left(), y, area.width(), 1), colours.rule);
        painter.setPen(colours.mutedInk);
        painter.drawText(QRectF(0, y - scaled(10), area.left() - scaled(6), scaled(20)),
                         Qt::AlignRight | Qt::AlignVCenter, QString::number(at));
    }
}

void FreeChart::paintBar(QPainter& painter, std::size_t evening) const
{
    const Palette& colours = ui::palette();
    const FreeEvening& shown = m_evenings[evening];
    const QRectF room = slot(evening);
    const double gap = qMin(room.width() * 0.16, scaled(5) * 1.0);
    const double each = room.height() / m_places;
    const QRectF free(room.left() + gap, room.bottom() - shown.free * each, room.width() - 2 * gap,
                      shown.free * each);
    painter.fillRect(free, freeColour());
    if (shown.planned > 0) {
        const QRectF planned(free.left(), free.top() - shown.planned * each, free.width(),
                             shown.planned * each);
        painter.setPen(QPen(freeColour(), 1));
        painter.setBrush(QBrush(freeColour(), Qt::BDiagPattern));
        painter.drawRect(planned.adjusted(0.5, 0.5, -0.5, -0.5));
    }
    painter.setFont(uiFont(0.82, QFont::DemiBold));
    const QString number = QString::number(shown.free);
    const double high = QFontMetricsF(painter.font()).height();
    if (QFontMetricsF(painter.font()).horizontalAdvance(number) > room.width()) {
        return;
    }
    // Within its bar, or where that is too low above its foot.
    const double top = free.height() > high ? free.top() + 1 : room.bottom() - high - 1;
    painter.setPen(shown.missing > 0 ? colours.warning : colours.ink);
    painter.drawText(QRectF(room.left(), top, room.width(), high), Qt::AlignCenter, number);
}

// Numbers of days as far apart as they have room; Mondays with a stroke and their month.
void FreeChart::paintDay(QPainter& painter, std::size_t evening) const
{
    const Palette& colours = ui::palette();
    const QRectF room = slot(evening);
    const QDate day = toQDate(m_evenings[evening].on);
    const bool isMonday = day.dayOfWeek() == kMonday;
    const double line = scaled(18);
    painter.setFont(uiFont(0.8, evening == 0 ? QFont::DemiBold : QFont::Normal));
    painter.setPen(evening == 0 ? colours.ink : colours.mutedInk);
    const double wide = QFontMetricsF(painter.font()).horizontalAdvance(QStringLiteral("000"));
    if (room.width() >= wide || isMonday) {
        const QRectF cell(room.center().x() - wide, room.bottom() + scaled(2), 2 * wide, line);
        painter.drawText(cell, Qt::AlignCenter, QString::number(day.day()));
    }
    if (isMonday) {
        painter.fillRect(QRectF(room.left(), room.top(), 1, room.height() + 2 * line),
                         colours.fieldEdge);
        painter.drawText(
            QRectF(room.left() + scaled(4), room.bottom() + line, room.width() * 7, line),
            Qt::AlignLeft | Qt::AlignVCenter,
            tr("Mon %1").arg(shortDayText(m_evenings[evening].on)));
    }
}

} // namespace plumule::ui

#include "moc_free_chart.cpp"
