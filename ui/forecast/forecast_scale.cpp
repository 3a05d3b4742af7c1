#include "ui/forecast/forecast_scale.h"

#include "ui/forecast/forecast_text.h"
#include "ui/medium/marker.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

constexpr int kFewestDays = 12;
constexpr int kMostDays = 42;
constexpr int kMostLines = 7;
constexpr double kSmall = 0.85; // of the body's type
constexpr int kPadding = 8;

double lineHigh()
{
    return QFontMetricsF(uiFont(kSmall)).height();
}

QRectF within(const QRectF& cell)
{
    const double pad = scaled(kPadding);
    return cell.adjusted(pad, 0, -pad, 0);
}

// A step of 1, 2 or 5 that gives a few lines.
double niceStep(double span)
{
    const double rough = span / kMostLines;
    const double power = std::pow(10, std::floor(std::log10(rough)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= rough) {
            return times * power;
        }
    }
    return 10 * power;
}

void drawBar(QPainter& painter, QPointF from, QPointF to, const QColor& colour, bool isHollow)
{
    QPen pen(colour, scaled(isHollow ? 2 : 4), isHollow ? Qt::DashLine : Qt::SolidLine,
             isHollow ? Qt::FlatCap : Qt::RoundCap);
    painter.setPen(pen);
    painter.drawLine(from, to);
}

void drawShape(QPainter& painter, QPointF at, const QPainterPath& shape, const QColor& colour,
               bool isHollow)
{
    painter.save();
    painter.translate(at);
    if (isHollow) {
        painter.setPen(QPen(colour, scaled(2)));
        painter.setBrush(palette().card);
        painter.drawPath(shape);
    } else {
        painter.fillPath(shape, colour);
    }
    painter.restore();
}

bool isFromLibrary(const ForecastBasis& basis)
{
    return basis.from == ForecastSource::Library;
}

} // namespace

ForecastScale::ForecastScale(const std::vector<GrowingRow>& rows, Date today, const UnitText& units)
    : m_today(today)
    , m_first(today)
    , m_units(units)
{
    Date last = today + (kFewestDays - 1);
    double low = std::numeric_limits<double>::max();
    double high = 0;
    for (const GrowingRow& row : rows) {
        if (row.forecast.day) {
            last = std::max({last, row.forecast.day->high, row.forecast.day->asPlanned});
        }
        low = std::min(low, shownMass(row.forecast.yield.low, units));
        high = std::max(high, shownMass(row.forecast.yield.high, units));
    }
    m_days = std::min(last - m_first + 1, kMostDays);
    if (high > 0) {
        m_step = niceStep(high - low > 0 ? high - low : high);
        m_low = std::floor(low / m_step) * m_step;
        m_high = std::ceil(high / m_step) * m_step;
    }
}

double ForecastScale::dayWide(const QRectF& cell) const
{
    return within(cell).width() / m_days;
}

double ForecastScale::placeOf(Date day, const QRectF& cell) const
{
    const int number = std::clamp(day - m_first, 0, m_days - 1);
    return within(cell).left() + (number + 0.5) * dayWide(cell);
}

double ForecastScale::placeOf(double mass, const QRectF& cell) const
{
    const QRectF inner = within(cell);
    return inner.left() + (mass - m_low) / (m_high - m_low) * inner.width();
}

std::vector<double> ForecastScale::masses() const
{
    std::vector<double> lines;
    for (double mass = m_low; mass < m_high + m_step / 2; mass += m_step) {
        lines.push_back(mass);
    }
    return lines;
}

ScaleDelegate::ScaleDelegate(const RowsModel<GrowingRow>& model,
                             const std::unique_ptr<ForecastScale>& scale, QObject* parent)
    : QStyledItemDelegate(parent)
    , m_model(model)
    , m_scale(scale)
{}

void ScaleDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const
{
    const bool isScale = index.column() == DayColumn || index.column() == YieldColumn;
    if (!isScale || !m_scale) {
        QStyledItemDelegate::paint(painter, option, index);
        return;
    }
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setClipRect(option.rect);
    if (option.state & QStyle::State_Selected) {
        painter->fillRect(option.rect, palette().selection);
    }
    const GrowingRow& row = m_model.row(index.row());
    if (index.column() == DayColumn) {
        paintDay(*painter, option.rect, row);
    } else {
        paintYield(*painter, option.rect, row);
    }
    painter->restore();
}

void ScaleDelegate::paintDay(QPainter& painter, const QRectF& cell, const GrowingRow& row) const
{
    painter.setPen(QPen(palette().rule, 1));
    const double half = m_scale->dayWide(cell) / 2;
    for (int day = 0; day < m_scale->days(); ++day) {
        const double x = m_scale->placeOf(m_scale->firstDay() + day, cell) - half;
        painter.drawLine(QPointF(x, cell.top()), QPointF(x, cell.bottom() + 1));
    }
    if (!row.forecast.day) {
        return;
    }
    const DayForecast& day = *row.forecast.day;
    const double y = cell.center().y();
    const bool isHollow = isFromLibrary(day.basis);
    const double inset = std::min(half, double(scaled(6)));
    drawBar(painter, {m_scale->placeOf(day.low, cell) - half + inset, y},
            {m_scale->placeOf(day.high, cell) + half - inset, y}, palette().accentSoft, isHollow);
    if (day.asPlanned != day.middle) {
        const double x = m_scale->placeOf(day.asPlanned, cell);
        painter.setPen(QPen(palette().ink, scaled(2)));
        painter.drawLine(QPointF(x, y - scaled(7)), QPointF(x, y + scaled(7)));
    }
    QPainterPath dot;
    dot.addEllipse(QPointF(0, 0), scaled(4), scaled(4));
    drawShape(painter, {m_scale->placeOf(day.middle, cell), y}, dot, palette().accent, isHollow);
}

void ScaleDelegate::paintYield(QPainter& painter, const QRectF& cell, const GrowingRow& row) const
{
    painter.setPen(QPen(palette().rule, 1));
    for (const double mass : m_scale->masses()) {
        const double x = m_scale->placeOf(mass, cell);
        painter.drawLine(QPointF(x, cell.top()), QPointF(x, cell.bottom() + 1));
    }
    const YieldForecast& yield = row.forecast.yield;
    const auto at = [&](Mass mass) {
        return QPointF(m_scale->placeOf(shownMass(mass, m_scale->units()), cell),
                       cell.center().y());
    };
    const bool isHollow = isFromLibrary(yield.basis);
    QColor faint = markerColour(row.marker);
    faint.setAlphaF(0.6F);
    drawBar(painter, at(yield.low), at(yield.high), faint, isHollow);
    drawShape(painter, at(yield.middle), markerShape(row.marker, scaled(11)),
              markerColour(row.marker), isHollow);
}

ScaleHeader::ScaleHeader(const std::unique_ptr<ForecastScale>& scale, QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent)
    , m_scale(scale)
{
    setSectionsClickable(false);
    setHighlightSections(false);
}

QSize ScaleHeader::sizeHint() const
{
    return {QHeaderView::sizeHint().width(), int(3 * lineHigh()) + scaled(kPadding)};
}

void ScaleHeader::paintSection(QPainter* painter, const QRect& cell, int section) const
{
    painter->save();
    painter->fillRect(cell, ui::palette().card);
    painter->setFont(uiFont(kSmall));
    painter->setPen(ui::palette().mutedInk);
    const QRectF inner = within(cell);
    const bool isScale = section == DayColumn || section == YieldColumn;
    const auto side =
        Qt::Alignment(model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole).toInt());
    QRectF line(inner.left(), cell.top(), inner.width(), lineHigh());
    line.translate(0, isScale ? 0 : lineHigh());
    const QFontMetricsF metrics(painter->font());
    QString words = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
    if (metrics.horizontalAdvance(words) > line.width()) {
        words = words.section(',', 0, 0); // what it is of, without how it is drawn
    }
    painter->drawText(line, int(side & Qt::AlignHorizontal_Mask) | Qt::AlignVCenter,
                      metrics.elidedText(words, Qt::ElideRight, line.width()));
    if (m_scale && section == DayColumn) {
        paintDays(*painter, cell);
    } else if (m_scale && section == YieldColumn) {
        paintMasses(*painter, cell);
    }
    painter->restore();
}

void ScaleHeader::paintDays(QPainter& painter, const QRectF& cell) const
{
    const double wide = m_scale->dayWide(cell);
    const double needed =
        QFontMetricsF(uiFont(kSmall, QFont::DemiBold)).horizontalAdvance("28") + scaled(4);
    const int every = std::max(1, int(std::ceil(needed / wide)));
    const double top = cell.top() + lineHigh();
    for (int number = 0; number < m_scale->days(); number += every) {
        const Date day = m_scale->firstDay() + number;
        const QDate shown = toQDate(day);
        const bool isToday = day == m_scale->today();
        painter.setFont(uiFont(kSmall, isToday ? QFont::Bold : QFont::Normal));
        painter.setPen(isToday ? ui::palette().ink : ui::palette().mutedInk);
        const double x = m_scale->placeOf(day, cell);
        const auto write = [&](double y, const QString& text) {
            painter.drawText(QRectF(x - 100, y, 200, lineHigh()), Qt::AlignCenter, text);
        };
        write(top, QString::number(shown.day()));
        if (isToday || shown.day() <= every) {
            write(top + lineHigh(), QLocale(QLocale::English).toString(shown, "MMM"));
        }
    }
}

void ScaleHeader::paintMasses(QPainter& painter, const QRectF& cell) const
{
    const double top = cell.top() + lineHigh();
    double freeFrom = cell.left();
    for (const double mass : m_scale->masses()) {
        const QString text = numberText(mass, mass == std::round(mass) ? 0 : 1);
        const double x = m_scale->placeOf(mass, cell);
        const double half = QFontMetricsF(painter.font()).horizontalAdvance(text) / 2;
        if (x - half >= freeFrom && x + half <= cell.right()) {
            painter.drawText(QRectF(x - 100, top, 200, lineHigh()), Qt::AlignCenter, text);
            freeFrom = x + half + scaled(4);
        }
    }
}

} // namespace plumule::ui

#include "moc_forecast_scale.cpp"
