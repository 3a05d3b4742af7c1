#include "ui/stock/bar_delegate.h"

#include "ui/widget/theme.h"

#include <QPainter>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kBarWide = 64;
constexpr int kBarHigh = 7;
constexpr int kMargin = 8;

} // namespace

BarDelegate::BarDelegate(BarOf barOf, QObject* parent)
    : QStyledItemDelegate(parent)
    , m_barOf(std::move(barOf))
{}

void BarDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const
{
    QStyleOptionViewItem words = option;
    words.rect.setWidth(option.rect.width() - scaled(kBarWide + kMargin));
    QStyledItemDelegate::paint(painter, words, index);
    const auto bar = m_barOf(index.row());
    QRectF ground(option.rect.right() - scaled(kBarWide + kMargin) + 1, option.rect.top(),
                  scaled(kBarWide + kMargin), option.rect.height());
    if ((option.state & QStyle::State_Selected) != 0) {
        painter->fillRect(ground, ui::palette().selection);
    }
    if (!bar) {
        return;
    }
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(Qt::NoPen);
    const double high = scaled(kBarHigh);
    const QRectF whole(ground.left(), ground.center().y() - high / 2, scaled(kBarWide), high);
    painter->setBrush(ui::palette().rule);
    painter->drawRoundedRect(whole, 2, 2);
    QRectF filled = whole;
    filled.setWidth(whole.width() * std::clamp(bar->share, 0.0, 1.0));
    painter->setBrush(bar->isWarned ? ui::palette().badge : ui::palette().accent);
    painter->drawRoundedRect(filled, 2, 2);
    painter->restore();
}

QSize BarDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.rwidth() += scaled(kBarWide + kMargin);
    return size;
}

} // namespace plumule::ui

#include "moc_bar_delegate.cpp"
