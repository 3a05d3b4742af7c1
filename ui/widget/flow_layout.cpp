#include "ui/widget/flow_layout.h"

#include "ui/widget/theme.h"

#include <QWidget>

#include <algorithm>
#include <utility>
#include <vector>

namespace plumule::ui {

FlowLayout::FlowLayout(QWidget* parent)
    : QLayout(parent)
{
    setContentsMargins(0, 0, 0, 0);
    setSpacing(scaled(8));
}

FlowLayout::~FlowLayout()
{
    qDeleteAll(m_items);
}

void FlowLayout::addItem(QLayoutItem* item)
{
    m_items.append(item);
}

int FlowLayout::count() const
{
    return static_cast<int>(m_items.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const
{
    return m_items.value(index);
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    return index >= 0 && index < m_items.size() ? m_items.takeAt(index) : nullptr;
}

Qt::Orientations FlowLayout::expandingDirections() const
{
    return {};
}

bool FlowLayout::hasHeightForWidth() const
{
    return true;
}

int FlowLayout::heightForWidth(int width) const
{
    return arrange(QRect(0, 0, width, 0), true);
}

QSize FlowLayout::sizeHint() const
{
    QSize size(0, 0);
    for (const QLayoutItem* item : m_items) {
        if (item->isEmpty()) {
            continue;
        }
        const QSize each = item->sizeHint();
        size.rwidth() += each.width() + (size.width() > 0 ? spacing() : 0);
        size.setHeight(std::max(size.height(), each.height()));
    }
    return size;
}

QSize FlowLayout::minimumSize() const
{
    QSize size(0, 0);
    for (const QLayoutItem* item : m_items) {
        if (!item->isEmpty()) {
            size = size.expandedTo(item->minimumSize());
        }
    }
    return size;
}

void FlowLayout::setGeometry(const QRect& area)
{
    QLayout::setGeometry(area);
    arrange(area, false);
}

// Each item in the middle of its row's height, so that words stand beside what they name.
int FlowLayout::arrange(const QRect& area, bool isMeasuring) const
{
    std::vector<std::pair<QLayoutItem*, QRect>> row;
    int x = area.x();
    int y = area.y();
    int rowHeight = 0;
    const auto placeRow = [&] {
        for (auto& [item, where] : row) {
            where.moveTop(y + (rowHeight - where.height()) / 2);
            item->setGeometry(where);
        }
        row.clear();
    };
    for (QLayoutItem* item : m_items) {
        if (item->isEmpty()) {
            continue;
        }
        QSize size = item->sizeHint();
        if (x > area.x() && x + size.width() > area.right() + 1) {
            placeRow();
            x = area.x();
            y += rowHeight + spacing();
            rowHeight = 0;
        }
        size.setWidth(std::min(size.width(), std::max(area.width(), item->minimumSize().width())));
        if (item->hasHeightForWidth()) {
            size.setHeight(item->heightForWidth(size.width()));
        }
        if (!isMeasuring) {
            row.emplace_back(item, QRect(QPoint(x, y), size));
        }
        x += size.width() + spacing();
        rowHeight = std::max(rowHeight, size.height());
    }
    placeRow();
    return y + rowHeight - area.y();
}

} // namespace plumule::ui

#include "moc_flow_layout.cpp"
