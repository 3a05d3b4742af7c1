#include "ui/tray/tray_list_model.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

const QString kNothing = QStringLiteral("–");

} // namespace

QString doingText(const Tray& tray, const StagePlan& plan)
{
    if (tray.state != TrayState::Growing) {
        return nameOf(tray.state);
    }
    if (!plan.current) {
        return QCoreApplication::translate("Names", "not begun");
    }
    return nameOf(plan.spans[*plan.current].stage);
}

TrayListModel::TrayListModel(QObject* parent)
    : QAbstractTableModel(parent)
{}

void TrayListModel::show(std::vector<TrayListRow> rows, UnitText units, Date today)
{
    beginResetModel();
    m_rows = std::move(rows);
    m_units = units;
    m_today = today;
    endResetModel();
}

const TrayListRow& TrayListModel::row(int index) const
{
    return m_rows[static_cast<std::size_t>(index)];
}

int TrayListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int TrayListModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : int(Columns);
}

QString TrayListModel::textOf(const TrayListRow& row, int column) const
{
    const Tray& tray = row.record.tray;
    switch (column) {
    case Code:
        return QString::fromStdString(tray.code);
    case VarietyName:
        return QString::fromStdString(row.record.variety);
    case MediumName:
        return QString::fromStdString(row.record.medium.name);
    case Place:
        return row.spot ? nameOf(row.spot) : kNothing;
    case StageNow:
        return doingText(tray, row.plan);
    case Day:
        return QString::number(dayCount(tray.sownOn, tray.endedOn.value_or(m_today)));
    case Harvest:
        return tray.endedOn ? longDateText(*tray.endedOn)
                            : tr("due %1").arg(shortDayText(row.plan.harvest.date));
    case Yield:
        return row.yield ? m_units.mass(*row.yield) : kNothing;
    case TrialCode:
        return QString::fromStdString(row.record.trialCode.value_or(""));
    default:
        return {};
    }
}

QVariant TrayListModel::data(const QModelIndex& index, int role) const
{
    const TrayListRow& shown = row(index.row());
    const bool isNumber = index.column() == Day || index.column() == Yield;
    switch (role) {
    case Qt::DisplayRole:
        return textOf(shown, index.column());
    case Qt::DecorationRole:
        return index.column() == MediumName ? QVariant(markerIcon(shown.record.medium.marker))
                                            : QVariant();
    case Qt::TextAlignmentRole:
        return isNumber ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                        : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::FontRole:
        return index.column() == Code ? QVariant(uiFont(1.0, QFont::DemiBold)) : QVariant();
    case Qt::ForegroundRole:
        return shown.record.tray.state == TrayState::Growing ? QVariant()
                                                             : QVariant(ui::palette().mutedInk);
    default:
        return {};
    }
}

QVariant TrayListModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return section == Day || section == Yield ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                                  : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const QStringList heads{tr("Tray"), tr("Variety"), tr("Medium"), tr("Place"), tr("Stage"),
                            tr("Day"),  tr("Harvest"), tr("Yield"),  tr("Trial")};
    return heads.value(section);
}

} // namespace plumule::ui

#include "moc_tray_list_model.cpp"
