#include "ui/harvest/weighed_model.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

namespace plumule::ui {

WeighedModel::WeighedModel(QObject* parent)
    : QAbstractTableModel(parent)
{}

void WeighedModel::show(std::vector<WeighedRow> rows, UnitText units)
{
    beginResetModel();
    m_rows = std::move(rows);
    m_units = units;
    endResetModel();
}

const WeighedRow& WeighedModel::row(int index) const
{
    return m_rows[static_cast<std::size_t>(index)];
}

int WeighedModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int WeighedModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : int(Columns);
}

QString WeighedModel::textOf(const WeighedRow& row, int column) const
{
    switch (column) {
    case Tray:
        return QString::fromStdString(row.code) +
               (row.harvest.isLast ? QString() : tr(" (cut %1)").arg(row.harvest.cut));
    case MediumName:
        return QString::fromStdString(row.medium.name);
    case Net:
        return m_units.mass(row.harvest.net);
    case PerSeed:
        return row.seed && row.seed->count() > 0 ? numberText(row.harvest.net / *row.seed, 1)
                                                 : QStringLiteral("–");
    case Time:
        return clockText(row.harvest.minute);
    case Correct:
        return tr("Correct");
    default:
        return {};
    }
}

QVariant WeighedModel::data(const QModelIndex& index, int role) const
{
    const WeighedRow& shown = row(index.row());
    switch (role) {
    case Qt::DisplayRole:
        return textOf(shown, index.column());
    case Qt::DecorationRole:
        return index.column() == MediumName ? QVariant(markerIcon(shown.medium.marker))
                                            : QVariant();
    case Qt::TextAlignmentRole:
        return index.column() == Net || index.column() == PerSeed
                   ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                   : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::FontRole:
        return index.column() == Tray ? QVariant(uiFont(1.0, QFont::DemiBold)) : QVariant();
    case Qt::ForegroundRole:
        return index.column() == Correct ? QVariant(ui::palette().accent) : QVariant();
    default:
        return {};
    }
}

QVariant WeighedModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return section == Net || section == PerSeed ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                                    : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const QStringList heads{tr("Tray"),         tr("Medium"), tr("Net"),
                            tr("g per g seed"), tr("Time"),   QString()};
    return heads.value(section);
}

} // namespace plumule::ui

#include "moc_weighed_model.cpp"
