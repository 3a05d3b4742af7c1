#include "ui/tray/stage_strip.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"

#include <QPainter>
#include <QPainterPath>

namespace plumule::ui {

QColor stageColour(Stage stage)
{
    const Palette& colours = ui::palette();
    switch (stage) {
    case Stage::Soak:
        return colours.soak;
    case Stage::UnderWeight:
        return colours.underWeight;
    case Stage::Blackout:
        return colours.blackout;
    case Stage::Light:
        return colours.light;
    }
    return colours.accent;
}

StageStrip::StageStrip(QWidget* parent)
    : QWidget(parent)
{
    setObjectName("stageStrip");
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize StageStrip::sizeHint() const
{
    return {scaled(400), scaled(104)};
}

void StageStrip::show(const StagePlan& plan, Moment sown, std::optional<Moment> ended, Moment now)
{
    m_plan = plan;
    m_sown = sown;
    m_ended = ended;
    m_now = now;
    QStringList words;
    for (const StageSpan& span : plan.spans) {
        words << tr("%1: planned %2, %3 %4")
                     .arg(nameOf(span.stage), shortDayText(span.planned.date),
                          span.hasStarted ? tr("began") : tr("due"), shortDayText(span.start.date));
    }
    setAccessibleName(tr("Stages"));
    setAccessibleDescription(words.join("; "));
    setToolTip(words.join('\n'));
    update();
}

Moment StageStrip::first() const
{
    return m_plan.spans.empty()
               ? m_sown
               : std::min(m_plan.spans.front().planned, m_plan.spans.front().start);
}

Moment StageStrip::last() const
{
    Moment latest = std::max(m_plan.harvest, m_plan.harvestPlanned);
    return m_ended ? std::max(latest, *m_ended) : latest;
}

double StageStrip::placeOf(Moment moment, const QRectF& area) const
{
    const double whole = std::max<double>(1.0, double(last() - first()));
    return area.left() + area.width() * double(moment - first()) / whole;
}

void StageStrip::paintEvent(QPaintEvent*)
{
    if (m_plan.spans.empty()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(uiFont(0.88));
    const double names = scaled(74);
    const QRectF area(names, scaled(4), width() - names - scaled(4), height() - scaled(8));
    const double barHeight = scaled(22);
    const QRectF planBar(area.left(), area.top() + scaled(4), area.width(), barHeight);
    const QRectF realBar(area.left(), planBar.bottom() + scaled(10), area.width(), barHeight);
    painter.setPen(ui::palette().mutedInk);
    painter.drawText(QRectF(0, planBar.top(), names, barHeight), Qt::AlignVCenter, tr("planned"));
    painter.setPen(ui::palette().ink);
    painter.drawText(QRectF(0, realBar.top(), names, barHeight), Qt::AlignVCenter, tr("actual"));
    paintBar(painter, planBar, true);
    paintBar(painter, realBar, false);
    paintDays(painter, QRectF(area.left(), realBar.bottom() + scaled(4), area.width(), scaled(24)));
}

void StageStrip::paintBar(QPainter& painter, const QRectF& bar, bool isPlan) const
{
    QPainterPath round;
    round.addRoundedRect(bar, scaled(5), scaled(5));
    painter.save();
    painter.setClipPath(round);
    painter.fillRect(bar, ui::palette().cardEdge);
    for (std::size_t i = 0; i < m_plan.spans.size(); ++i) {
        const StageSpan& span = m_plan.spans[i];
        const bool isLast = i + 1 == m_plan.spans.size();
        const Moment start = isPlan ? span.planned : span.start;
        const Moment end =
            isPlan ? (isLast ? m_plan.harvestPlanned : m_plan.spans[i + 1].planned) : span.end;
        const Moment shownEnd = !isPlan && m_ended ? std::min(end, *m_ended) : end;
        if (shownEnd <= start) {
            continue;
        }
        const double from = placeOf(start, bar);
        const double to = placeOf(shownEnd, bar);
        QColor colour = stageColour(span.stage);
        colour.setAlphaF(isPlan ? 0.45F : 1.0F);
        const double done =
            isPlan ? to : std::clamp(placeOf(m_ended.value_or(m_now), bar), from, to);
        painter.fillRect(QRectF(from, bar.top(), done - from, bar.height()), colour);
        colour.setAlphaF(0.35F);
        painter.fillRect(QRectF(done, bar.top(), to - done, bar.height()), colour);
        const QString name = nameOf(span.stage);
        if (QFontMetricsF(painter.font()).horizontalAdvance(name) < to - from - scaled(6)) {
            const bool isInk = isPlan || done < (from + to) / 2;
            painter.setPen(isInk ? ui::palette().ink : QColor(Qt::white));
            painter.drawText(QRectF(from, bar.top(), to - from, bar.height()), Qt::AlignCenter,
                             name);
        }
    }
    painter.restore();
}

void StageStrip::paintDays(QPainter& painter, const QRectF& area) const
{
    painter.setPen(ui::palette().mutedInk);
    const int days = last().date - first().date;
    // Numbers of two digits keep a digit's width between them.
    const double wide = QFontMetricsF(painter.font()).horizontalAdvance(QStringLiteral("000"));
    const int fitting = std::max(1, static_cast<int>(area.width() / wide));
    const int step = std::max({1, days / 10, (days + fitting - 1) / fitting});
    for (int day = 0; day <= days; day += step) {
        const Date on = first().date + day;
        const double x = placeOf({on, 0}, area);
        if (x < area.left() - 1) {
            continue;
        }
        painter.drawText(QRectF(x - scaled(20), area.top(), scaled(40), area.height()),
                         Qt::AlignHCenter | Qt::AlignTop,
                         QString::number(dayCount(m_sown.date, on)));
    }
    if (!m_ended && m_now > first() && m_now < last()) {
        const double x = placeOf(m_now, area);
        painter.setPen(QPen(ui::palette().ink, scaled(2)));
        painter.drawLine(QPointF(x, scaled(4)), QPointF(x, area.top()));
    }
}

} // namespace plumule::ui

#include "moc_stage_strip.cpp"
