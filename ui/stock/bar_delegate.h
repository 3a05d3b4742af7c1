#pragma once

#include <QStyledItemDelegate>

#include <functional>
#include <optional>

namespace plumule::ui {

// How full a bar is, of what is wanted or planned.
struct Bar
{
    double share = 0; // above 1: full
    bool isWarned = false;
};

// Draws a bar beside the words of a cell. The number stands in words too, so that nothing is told
// by the bar alone.
class BarDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    using BarOf = std::function<std::optional<Bar>(int row)>;

    explicit BarDelegate(BarOf barOf, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;

private:
    BarOf m_barOf;
};

} // namespace plumule::ui
