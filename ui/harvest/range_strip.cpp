#include "ui/harvest/range_strip.h"

#include "ui/harvest/weigh_text.h"
#include "ui/medium/marker.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

constexpr int kMostLines = 6; // across the scale

double inUnit(Mass mass, MassUnit unit)
{
    return unit == MassUnit::Gram ? inGrams(mass) : inOunces(mass);
}

// The least of 1, 2 and 5 times a power of ten that parts the span into few enough lines.
double stepFor(double span)
{
    const double rough = span / kMostLines;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= rough) {
            return times * power;
        }
    }
    return 10 * power;
}

} // namespace

RangeStrip::RangeStrip(QWidget* parent)
    : QWidget(parent)
{
    setObjectName("rangeStrip");
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize RangeStrip::sizeHint() const
{
    return {scaled(360), scaled(172)};
}

QSize RangeStrip::minimumSizeHint() const
{
    return {scaled(220), scaled(172)};
}

void RangeStrip::show(const ExpectedRange& range, MassUnit unit)
{
    m_range = range;
    m_unit = unit;
    setSpan();
    describe();
    update();
}

void RangeStrip::setOnScale(std::optional<Mass> net)
{
    m_onScale = net;
    describe();
    update();
}

// What is drawn, for who hears it.
void RangeStrip::describe()
{
    QStringList words;
    if (m_range.isKnown()) {
        words << tr("expected %1").arg(rangeText(m_range, m_unit));
    }
    words << tr("%n weight(s) before", nullptr, static_cast<int>(m_range.past.size()));
    if (m_onScale) {
        words << tr("on the scale %1").arg(scaleTextWithUnit(*m_onScale, m_unit));
    }
    setAccessibleName(tr("Where the range comes from"));
    setAccessibleDescription(words.join(", "));
}

void RangeStrip::setSpan()
{
    std::vector<double> ends;
    for (const PastWeight& each : m_range.past) {
        if (m_range.from != RangeSource::RoomBySeed) {
            ends.push_back(inUnit(each.net, m_unit));
        }
    }
    if (m_range.isKnown()) {
        ends.push_back(inUnit(*m_range.low, m_unit));
        ends.push_back(inUnit(*m_range.high, m_unit));
    }
    if (ends.empty()) {
        return;
    }
    const auto [low, high] = std::minmax_element(ends.begin(), ends.end());
    m_step = stepFor(std::max(*high - *low, *high * 0.1));
    m_low = std::max(0.0, std::floor(*low / m_step - 0.5) * m_step);
    m_high = std::ceil(*high / m_step + 0.5) * m_step;
}

QRectF RangeStrip::field() const
{
    return QRectF(rect()).adjusted(scaled(16), scaled(26), -scaled(16), -scaled(28));
}

double RangeStrip::xOf(Mass net) const
{
    const QRectF area = field();
    return area.left() + (inUnit(net, m_unit) - m_low) / (m_high - m_low) * area.width();
}

// Marks that would touch are heaped, from the foot up. By seed, the trays of other varieties
// weighed what says nothing here.
std::vector<RangeStrip::Mark> RangeStrip::marks() const
{
    std::vector<Mark> heaped;
    if (m_range.from == RangeSource::RoomBySeed) {
        return heaped;
    }
    std::vector<const PastWeight*> byWeight;
    for (const PastWeight& each : m_range.past) {
        byWeight.push_back(&each);
    }
    std::sort(byWeight.begin(), byWeight.end(),
              [](const PastWeight* a, const PastWeight* b) { return a->net < b->net; });
    const double side = scaled(12);
    const int rows = std::max(1, static_cast<int>(field().height() / (side + 2)) - 1);
    std::vector<double> ends(static_cast<std::size_t>(rows), -1e9);
    for (const PastWeight* each : byWeight) {
        const double x = xOf(each->net);
        std::size_t row = 0;
        while (row + 1 < ends.size() && x - ends[row] < side) {
            ++row;
        }
        ends[row] = x;
        heaped.push_back(
            {{x, field().bottom() - side - static_cast<double>(row) * (side + 2)}, each});
    }
    return heaped;
}

void RangeStrip::paintScale(QPainter& painter) const
{
    const QRectF area = field();
    painter.setFont(uiFont(0.85));
    for (double at = m_low; at <= m_high + m_step / 2; at += m_step) {
        const double x = area.left() + (at - m_low) / (m_high - m_low) * area.width();
        painter.setPen(ui::palette().rule);
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
        painter.setPen(ui::palette().mutedInk);
        const QString text = numberText(at, m_step < 1 ? 1 : 0);
        painter.drawText(QRectF(x - scaled(40), area.bottom() + scaled(4), scaled(80), scaled(20)),
                         Qt::AlignHCenter | Qt::AlignTop, text);
    }
}

void RangeStrip::paintBand(QPainter& painter) const
{
    if (!m_range.isKnown()) {
        return;
    }
    const QRectF area = field();
    QColor shade = ui::palette().accent;
    shade.setAlphaF(0.14F);
    painter.fillRect(
        QRectF(QPointF(xOf(*m_range.low), area.top()), QPointF(xOf(*m_range.high), area.bottom())),
        shade);
    painter.setPen(ui::palette().ink);
    painter.setFont(uiFont(0.9, QFont::Medium));
    const QString bounds = rangeText(m_range, m_unit);
    painter.drawText(
        QRectF(0, 0, width(), area.top() - scaled(4)), Qt::AlignHCenter | Qt::AlignBottom,
        m_range.from == RangeSource::Library ? bounds : tr("19 in 20: %1").arg(bounds));
}

// Beyond the scale it stands at the edge, with its figure.
void RangeStrip::paintOnScale(QPainter& painter) const
{
    if (!m_onScale) {
        return;
    }
    const QRectF area = field();
    const bool isDoubtful = !m_range.holds(*m_onScale);
    const double x = std::clamp(xOf(*m_onScale), area.left(), area.right());
    painter.setPen(
        QPen(isDoubtful ? ui::palette().warning : ui::palette().ink, scaled(2), Qt::DashLine));
    painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    painter.setPen(isDoubtful ? ui::palette().warning : ui::palette().ink);
    painter.setFont(uiFont(0.9, QFont::DemiBold));
    const bool isRight = x > area.center().x();
    const QRectF words(isRight ? x - scaled(126) : x + scaled(6), area.top() + scaled(2),
                       scaled(120), scaled(20));
    painter.drawText(words, (isRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignTop,
                     scaleText(*m_onScale, m_unit));
}

void RangeStrip::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintScale(painter);
    paintBand(painter);
    for (const Mark& mark : marks()) {
        painter.save();
        painter.translate(mark.at);
        painter.fillPath(markerShape(mark.weight->marker, scaled(12)),
                         markerColour(mark.weight->marker));
        painter.restore();
    }
    paintOnScale(painter);
}

bool RangeStrip::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        for (const Mark& mark : marks()) {
            if (QLineF(mark.at, help->pos()).length() < scaled(9)) {
                QToolTip::showText(help->globalPos(),
                                   plainHint(tr("%1: %2, %3")
                                                 .arg(QString::fromStdString(mark.weight->code),
                                                      scaleTextWithUnit(mark.weight->net, m_unit),
                                                      longDateText(mark.weight->on))),
                                   this);
                return true;
            }
        }
        QToolTip::hideText();
        return true;
    }
    return QWidget::event(event);
}

} // namespace plumule::ui

#include "moc_range_strip.cpp"
