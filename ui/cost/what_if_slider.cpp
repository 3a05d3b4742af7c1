#include "ui/cost/what_if_slider.h"

#include "ui/widget/theme.h"

#include <QPainter>
#include <QStyleOptionSlider>

namespace plumule::ui {
namespace {

constexpr int kLeast = -50;
constexpr int kMost = 100;
constexpr int kStep = 5;

} // namespace

WhatIfSlider::WhatIfSlider(QWidget* parent)
    : QSlider(Qt::Horizontal, parent)
{
    setRange(kLeast, kMost);
    setSingleStep(kStep);
    setPageStep(2 * kStep);
    setValue(0);
    setFocusPolicy(Qt::StrongFocus);
}

QSize WhatIfSlider::sizeHint() const
{
    return {scaled(150), scaled(30)};
}

void WhatIfSlider::paintEvent(QPaintEvent*)
{
    QStyleOptionSlider option;
    initStyleOption(&option);
    const QRectF handle =
        style()->subControlRect(QStyle::CC_Slider, &option, QStyle::SC_SliderHandle, this);
    const double half = handle.width() / 2;
    const double span = width() - handle.width();
    const double middle = height() / 2.0;
    const auto placeOf = [&](int value) {
        return half + span * (value - minimum()) / (maximum() - minimum());
    };
    const QPointF today(placeOf(0), middle);
    const QPointF now(handle.center().x(), middle);
    const Palette& colours = ui::palette();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colours.fieldEdge, scaled(4), Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(half, middle), QPointF(width() - half, middle));
    painter.setPen(QPen(colours.accent, scaled(4), Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(today, now);
    painter.setPen(QPen(colours.ink, scaled(2), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(today - QPointF(0, scaled(9)), today + QPointF(0, scaled(9)));
    painter.setPen(QPen(hasFocus() ? colours.ink : colours.accent, scaled(2)));
    painter.setBrush(value() == 0 ? colours.card : colours.accent);
    painter.drawEllipse(now, scaled(8), scaled(8));
}

} // namespace plumule::ui

#include "moc_what_if_slider.cpp"
