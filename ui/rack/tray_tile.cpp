#include "ui/rack/tray_tile.h"

#include "ui/medium/marker.h"
#include "ui/tray/stage_strip.h"
#include "ui/widget/theme.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kRoomyTile = 92;

class TileTr
{
    Q_DECLARE_TR_FUNCTIONS(Racks)
};

QColor withAlpha(QColor colour, float alpha)
{
    colour.setAlphaF(alpha);
    return colour;
}

// A drop, a roof and a flag, each within a square of that side about the origin.
QPainterPath signShape(TraySign sign, double side)
{
    const double half = side / 2;
    QPainterPath shape;
    switch (sign) {
    case TraySign::Thirsty:
        shape.moveTo(0, -half);
        shape.cubicTo(half * 0.5, -half * 0.35, half * 0.85, 0, half * 0.85, half * 0.3);
        shape.cubicTo(half * 0.85, half * 0.75, half * 0.45, half, 0, half);
        shape.cubicTo(-half * 0.45, half, -half * 0.85, half * 0.75, -half * 0.85, half * 0.3);
        shape.cubicTo(-half * 0.85, 0, -half * 0.5, -half * 0.35, 0, -half);
        break;
    case TraySign::Ready:
        shape.addPolygon(QPolygonF({{0, -half},
                                    {half, -half * 0.25},
                                    {half, half},
                                    {-half, half},
                                    {-half, -half * 0.25}}));
        break;
    case TraySign::Due:
        shape.addPolygon(QPolygonF(
            {{-half, -half}, {half, -half}, {half, half}, {0, half * 0.5}, {-half, half}}));
        break;
    }
    shape.closeSubpath();
    return shape;
}

QColor signColour(TraySign sign)
{
    const Palette& colours = ui::palette();
    switch (sign) {
    case TraySign::Thirsty:
        return colours.ground == Ground::Dark ? colours.soak : colours.soak.darker(165);
    case TraySign::Ready:
        return colours.accent;
    case TraySign::Due:
        return colours.badge;
    }
    return {};
}

QString signLetter(TraySign sign)
{
    switch (sign) {
    case TraySign::Thirsty:
        return TileTr::tr("T");
    case TraySign::Ready:
        return TileTr::tr("R");
    case TraySign::Due:
        return TileTr::tr("D");
    }
    return {};
}

QColor groundOf(const StandingTray& tray, Date today, const TileLook& look)
{
    const Palette& colours = ui::palette();
    if (look.hand == InHand::Lands || look.hand == InHand::Chosen) {
        return colours.selection;
    }
    switch (look.by) {
    case ShownBy::Stage:
        return colours.card;
    case ShownBy::Medium:
        return withAlpha(markerColour(tray.medium.marker), 0.22F);
    case ShownBy::Days:
        return bandColour(bandOf(tray, today));
    }
    return colours.card;
}

void paintGround(QPainter& painter, const QRectF& area, const QColor& ground, const TileLook& look)
{
    const Palette& colours = ui::palette();
    const bool isInHand = look.hand != InHand::No;
    const QColor edge = look.isInTheWay              ? colours.warning
                        : isInHand || look.hasCursor ? colours.accent
                                                     : colours.fieldEdge;
    const bool isStrong = isInHand || look.isInTheWay || look.hasCursor;
    QPen pen(edge, isStrong ? scaled(2) : 1);
    if (look.hand == InHand::Leaves) {
        pen.setDashPattern({4, 3});
    }
    const QRectF inside = area.adjusted(1, 1, -1, -1);
    painter.setPen(pen);
    painter.setBrush(ground);
    painter.drawRoundedRect(inside, scaled(7), scaled(7));
    if (look.hasCursor && isInHand) {
        painter.setPen(QPen(colours.ink, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(inside.adjusted(3, 3, -3, -3), scaled(5), scaled(5));
    }
}

// One line, shortened where it is too long.
void drawLine(QPainter& painter, const QRectF& line, const QString& words)
{
    const QFontMetricsF metrics(painter.font());
    painter.drawText(line, Qt::AlignVCenter | Qt::AlignLeft,
                     metrics.elidedText(words, Qt::ElideRight, line.width()));
}

QString secondLine(const StandingTray& tray, const TileLook& look)
{
    if (look.hand == InHand::Lands) {
        return look.from.isEmpty() ? TileTr::tr("from off the racks")
                                   : TileTr::tr("from %1").arg(look.from);
    }
    return QString::fromStdString(look.by == ShownBy::Medium ? tray.medium.name : tray.variety);
}

QString thirdLine(const StandingTray& tray, Date today, const TileLook& look)
{
    if (look.hand == InHand::Lands) {
        return TileTr::tr("lands here");
    }
    return daysText(tray, today);
}

void paintCode(QPainter& painter, const QRectF& line, const StandingTray& tray)
{
    const double mark = scaled(12);
    painter.save();
    painter.translate(line.right() - mark / 2, line.center().y());
    painter.fillPath(markerShape(tray.medium.marker, mark), markerColour(tray.medium.marker));
    painter.restore();
    painter.setPen(ui::palette().ink);
    painter.setFont(uiFont(1.0, QFont::DemiBold));
    drawLine(painter, line.adjusted(0, 0, -mark - scaled(4), 0), QString::fromStdString(tray.code));
}

// With what is asked of it at the right.
void paintDays(QPainter& painter, const QRectF& line, const StandingTray& tray, Date today,
               const TileLook& look)
{
    const auto signs = signsOf(tray);
    const double side = scaled(16);
    const double step = side + scaled(3);
    painter.setPen(ui::palette().ink);
    painter.setFont(uiFont(0.9, look.hand == InHand::Lands ? QFont::DemiBold : QFont::Normal));
    const QRectF room = line.adjusted(0, 0, -static_cast<double>(signs.size()) * step, 0);
    QString words = thirdLine(tray, today, look);
    if (QFontMetricsF(painter.font()).horizontalAdvance(words) > room.width()) {
        words = shortDaysText(tray, today);
    }
    drawLine(painter, room, words);
    QPointF centre(line.right() - side / 2, line.center().y());
    for (auto sign = signs.rbegin(); sign != signs.rend(); ++sign) {
        paintSign(painter, centre, side, *sign);
        centre.rx() -= step;
    }
}

} // namespace

std::vector<TraySign> signsOf(const StandingTray& tray)
{
    std::vector<TraySign> signs;
    if (tray.isThirsty) {
        signs.push_back(TraySign::Thirsty);
    }
    if (tray.isReady) {
        signs.push_back(TraySign::Ready);
    }
    if (tray.isDue) {
        signs.push_back(TraySign::Due);
    }
    return signs;
}

void paintSign(QPainter& painter, QPointF centre, double side, TraySign sign)
{
    const Palette& colours = ui::palette();
    painter.save();
    painter.translate(centre);
    painter.fillPath(signShape(sign, side), signColour(sign));
    QFont font = uiFont(0.72, QFont::Bold);
    painter.setFont(font);
    painter.setPen(colours.ground == Ground::Dark ? colours.badgeInk : QColor(Qt::white));
    const double down = sign == TraySign::Due ? -side * 0.08 : side * 0.12;
    painter.drawText(QRectF(-side, -side + down, 2 * side, 2 * side), Qt::AlignCenter,
                     signLetter(sign));
    painter.restore();
}

QColor bandColour(CutBand band)
{
    const Palette& colours = ui::palette();
    switch (band) {
    case CutBand::Now:
        return withAlpha(colours.badge, 0.38F);
    case CutBand::Soon:
        return withAlpha(colours.light, 0.55F);
    case CutBand::ThisWeek:
        return withAlpha(colours.light, 0.30F);
    case CutBand::Later:
        return withAlpha(colours.light, 0.11F);
    case CutBand::Unknown:
        return colours.card;
    }
    return colours.card;
}

void paintStrip(QPainter& painter, const QRectF& area, const StandingTray& tray, Moment now)
{
    if (tray.plan.spans.empty()) {
        return;
    }
    const Moment first = tray.plan.spans.front().start;
    const Moment last = std::max(tray.plan.harvest, first + 1);
    const auto at = [&](Moment moment) {
        const double share =
            static_cast<double>(moment - first) / static_cast<double>(last - first);
        return area.left() + area.width() * std::clamp(share, 0.0, 1.0);
    };
    QPainterPath round;
    round.addRoundedRect(area, area.height() / 3, area.height() / 3);
    painter.save();
    painter.setClipPath(round, Qt::IntersectClip);
    for (const StageSpan& span : tray.plan.spans) {
        const double from = at(span.start);
        const double to = at(span.end);
        const double done = std::clamp(at(now), from, std::max(from, to));
        const QColor colour = stageColour(span.stage);
        painter.fillRect(QRectF(from, area.top(), done - from, area.height()), colour);
        painter.fillRect(QRectF(done, area.top(), to - done, area.height()),
                         withAlpha(colour, 0.26F));
    }
    painter.restore();
    const double wide = std::max(2.0, scaled(2) * 1.0);
    const double x = std::clamp(at(now), area.left() + wide / 2, area.right() - wide / 2);
    painter.fillRect(QRectF(x - wide / 2, area.top() - scaled(3), wide, area.height() + scaled(6)),
                     ui::palette().ink);
}

void paintTile(QPainter& painter, const QRectF& area, const StandingTray& tray, Moment now,
               const TileLook& look)
{
    paintGround(painter, area, groundOf(tray, now.date, look), look);
    painter.save();
    painter.setOpacity(look.hand == InHand::Leaves ? 0.55 : 1.0);
    const double pad = scaled(area.width() < scaled(kRoomyTile) ? 6 : 9);
    const QRectF inside = area.adjusted(pad, scaled(7), -pad, -scaled(9));
    QRectF line(inside.topLeft(), QSizeF(inside.width(), scaled(20)));
    paintCode(painter, line, tray);
    line.translate(0, line.height());
    const bool isMuted = look.by == ShownBy::Stage && look.hand == InHand::No;
    painter.setPen(isMuted ? ui::palette().mutedInk : ui::palette().ink);
    painter.setFont(uiFont(0.88));
    drawLine(painter, line, secondLine(tray, look));
    line.translate(0, line.height());
    paintDays(painter, line, tray, now.date, look);
    const double strip = scaled(7);
    paintStrip(painter, QRectF(inside.left(), inside.bottom() - strip, inside.width(), strip), tray,
               now);
    painter.restore();
}

void paintFreePlace(QPainter& painter, const QRectF& area, const StandingPlace& place,
                    const TileLook& look)
{
    const Palette& colours = ui::palette();
    const bool isStrong = look.hasCursor;
    QPen pen(isStrong ? colours.accent : colours.fieldEdge, isStrong ? scaled(2) : 1);
    pen.setDashPattern({4, 3});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), scaled(7), scaled(7));
    painter.setPen(colours.mutedInk);
    painter.setFont(uiFont(0.88));
    QString words = TileTr::tr("free");
    if (place.heldFor) {
        words += '\n' + TileTr::tr("%1, %2").arg(QString::fromStdString(*place.heldFor),
                                                 shortDayText(place.heldFrom));
    }
    painter.drawText(area, Qt::AlignCenter, words);
}

} // namespace plumule::ui
