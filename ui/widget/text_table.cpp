#include "ui/widget/text_table.h"

#include "ui/widget/theme.h"

namespace plumule::ui {

TextTable::TextTable(QObject* parent)
    : QAbstractTableModel(parent)
{}

void TextTable::show(const QStringList& header, std::vector<TextRow> rows, int rightFrom,
                     int leftFrom)
{
    beginResetModel();
    m_header = header;
    m_rows = std::move(rows);
    m_rightFrom = rightFrom;
    m_leftFrom = leftFrom;
    endResetModel();
}

int TextTable::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int TextTable::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_header.size());
}

bool TextTable::isRight(int column) const
{
    return column >= m_rightFrom && column < m_leftFrom;
}

QVariant TextTable::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const TextRow& row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return row.cells.value(index.column());
    case Qt::DecorationRole:
        return index.column() == 0 && !row.icon.isNull() ? QVariant(row.icon) : QVariant();
    case Qt::TextAlignmentRole:
        return QVariant(Qt::Alignment((isRight(index.column()) ? Qt::AlignRight : Qt::AlignLeft) |
                                      Qt::AlignVCenter));
    case Qt::ForegroundRole:
        return row.isWarned ? QVariant(ui::palette().warning) : QVariant();
    default:
        return {};
    }
}

QVariant TextTable::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::DisplayRole) {
        return m_header.value(section);
    }
    if (role == Qt::TextAlignmentRole) {
        return QVariant(
            Qt::Alignment((isRight(section) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter));
    }
    return {};
}

} // namespace plumule::ui

#include "moc_text_table.cpp"
