#include "ui/order/chance_bar.h"

#include "core/order/order_plan.h"
#include "ui/order/order_text.h"
#include "ui/widget/theme.h"

#include <QPainter>

namespace plumule::ui {
namespace {

constexpr double kWhole = 100;
constexpr int kBarWidth = 64;
constexpr int kBarHeight = 8;
constexpr int kFigures = 36;

} // namespace

void ChanceBar::paint(QPainter* painter, const QStyleOptionViewItem& option,
                      const QModelIndex& index) const
{
    QStyleOptionViewItem empty = option;
    initStyleOption(&empty, index);
    const QString figures = empty.text;
    empty.text.clear();
    const QWidget* widget = option.widget;
    widget->style()->drawControl(QStyle::CE_ItemViewItem, &empty, painter, widget);
    const double share = figures.toDouble() / kWhole;
    const int bar =
        m_isFigureAlone ? 0 : std::min(scaled(kBarWidth), option.rect.width() - scaled(kFigures));
    const int top = option.rect.center().y() - scaled(kBarHeight) / 2;
    const int right = option.rect.right() - scaled(6);
    painter->save();
    painter->setFont(uiFont());
    painter->setPen(palette().ink);
    const QRect words(option.rect.left(), option.rect.top(),
                      option.rect.width() - std::max(0, bar) - scaled(14), option.rect.height());
    painter->drawText(words, Qt::AlignRight | Qt::AlignVCenter, figures);
    if (bar > 0) {
        const QRect whole(right - bar, top, bar, scaled(kBarHeight));
        painter->fillRect(whole, palette().rule);
        QRect part = whole;
        part.setWidth(qRound(bar * share));
        painter->fillRect(part, figures.toInt() < inHundred(kChanceWanted) ? palette().warning
                                                                           : palette().accent);
        const int wanted = whole.left() + qRound(bar * kChanceWanted);
        painter->fillRect(QRect(wanted, top - scaled(3), scaled(2), scaled(kBarHeight + 6)),
                          palette().ink);
    }
    painter->restore();
}

QSize ChanceBar::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setWidth(scaled(m_isFigureAlone ? kFigures : kBarWidth + kFigures));
    return size;
}

} // namespace plumule::ui

#include "moc_chance_bar.cpp"
