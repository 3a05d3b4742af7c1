#pragma once

#include "ui/widget/theme.h"

#include <QAbstractTableModel>
#include <QIcon>

#include <functional>
#include <iterator>
#include <vector>

namespace plumule::ui {

// One column of a table of rows: its heading, and how a row is shown in it.
template <class Row>
struct RowColumn
{
    QString heading = {};
    std::function<QString(const Row&)> text = {};
    Qt::AlignmentFlag side = Qt::AlignLeft; // of the cells and the heading
    bool isStrong = false;
    std::function<QIcon(const Row&)> icon = {};
    std::function<QColor(const Row&)> ink = {}; // an invalid colour: the table's own
    std::function<bool(const Row&)> isRowStrong = {};
};

// Rows of values shown through columns. They are replaced at once, or go on at the end; nothing is
// worked out before a cell is drawn.
template <class Row>
class RowsModel : public QAbstractTableModel
{
public:
    explicit RowsModel(std::vector<RowColumn<Row>> columns = {}, QObject* parent = nullptr)
        : QAbstractTableModel(parent)
        , m_columns(std::move(columns))
    {}

    void show(std::vector<RowColumn<Row>> columns, std::vector<Row> rows)
    {
        beginResetModel();
        m_columns = std::move(columns);
        m_rows = std::move(rows);
        endResetModel();
    }

    void append(std::vector<Row> rows)
    {
        if (rows.empty()) {
            return;
        }
        const int first = rowCount();
        beginInsertRows({}, first, first + static_cast<int>(rows.size()) - 1);
        m_rows.insert(m_rows.end(), std::make_move_iterator(rows.begin()),
                      std::make_move_iterator(rows.end()));
        endInsertRows();
    }

    [[nodiscard]] const Row& row(int index) const
    {
        return m_rows[static_cast<std::size_t>(index)];
    }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override
    {
        return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
    }

    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override
    {
        return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
    }

    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override
    {
        if (!index.isValid()) {
            return {};
        }
        const RowColumn<Row>& column = m_columns[static_cast<std::size_t>(index.column())];
        const Row& shown = row(index.row());
        switch (role) {
        case Qt::DisplayRole:
            return column.text(shown);
        case Qt::DecorationRole: {
            const QIcon icon = column.icon ? column.icon(shown) : QIcon();
            return icon.isNull() ? QVariant() : QVariant(icon);
        }
        case Qt::TextAlignmentRole:
            return sideOf(column);
        case Qt::FontRole:
            return column.isStrong || (column.isRowStrong && column.isRowStrong(shown))
                       ? QVariant(uiFont(1.0, QFont::DemiBold))
                       : QVariant();
        case Qt::ForegroundRole: {
            const QColor ink = column.ink ? column.ink(shown) : QColor();
            return ink.isValid() ? QVariant(ink) : QVariant();
        }
        default:
            return {};
        }
    }

    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override
    {
        if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) {
            return {};
        }
        const RowColumn<Row>& column = m_columns[static_cast<std::size_t>(section)];
        switch (role) {
        case Qt::DisplayRole:
            return column.heading;
        case Qt::TextAlignmentRole:
            return sideOf(column);
        default:
            return {};
        }
    }

private:
    static QVariant sideOf(const RowColumn<Row>& column)
    {
        return QVariant(Qt::Alignment(column.side | Qt::AlignVCenter));
    }

    std::vector<RowColumn<Row>> m_columns;
    std::vector<Row> m_rows;
};

} // namespace plumule::ui
