#pragma once

#include <QStyledItemDelegate>

namespace plumule::ui {

// Draws a chance, a number of 100 in the cell, as figures and a bar with a stroke where 9 in 10
// stands; in the colour of warnings below it.
class ChanceBar : public QStyledItemDelegate
{
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;

    // Without the bar, where room is short.
    void setFigureAlone(bool isAlone) { m_isFigureAlone = isAlone; }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    bool m_isFigureAlone = false;
};

} // namespace plumule::ui
