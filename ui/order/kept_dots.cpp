#include "ui/order/kept_dots.h"

#include "ui/widget/theme.h"

#include <QPainter>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kDot = 9;
constexpr int kStep = 13;

} // namespace

KeptDots::KeptDots(QWidget* parent)
    : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void KeptDots::show(std::vector<bool> kept)
{
    m_kept = std::move(kept);
    setVisible(!m_kept.empty());
    update();
}

QSize KeptDots::sizeHint() const
{
    return {scaled(kStep) * 8, scaled(kStep + 4)};
}

void KeptDots::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    // The newest, as many as there is room for.
    const auto fits = static_cast<std::size_t>(std::max(1, width() / scaled(kStep)));
    const std::size_t first = m_kept.size() > fits ? m_kept.size() - fits : 0;
    for (std::size_t i = first; i < m_kept.size(); ++i) {
        const QRectF dot(1 + static_cast<double>(i - first) * scaled(kStep), scaled(3),
                         scaled(kDot), scaled(kDot));
        const QColor colour = m_kept[i] ? ui::palette().accent : ui::palette().warning;
        painter.setPen(QPen(colour, scaled(2) * 0.8));
        painter.setBrush(m_kept[i] ? QBrush(colour) : QBrush(ui::palette().card));
        painter.drawEllipse(dot);
    }
}

} // namespace plumule::ui

#include "moc_kept_dots.cpp"
