#include "ui/tray/tray_list_model.h"

#include "ui/medium/marker.h"

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
    : RowsModel(columnsIn(UnitText(), Date()), parent)
{}

void TrayListModel::show(TrayListing listing, UnitText units, Date today)
{
    // Whoever hears of the reset may not fetch before it is through.
    m_hasMore = false;
    const bool hasMore = listing.hasMore;
    RowsModel::show(columnsIn(units, today), std::move(listing.rows));
    m_hasMore = hasMore;
}

bool TrayListModel::canFetchMore(const QModelIndex& parent) const
{
    return !parent.isValid() && m_hasMore && m_readOn && rowCount() > 0;
}

void TrayListModel::fetchMore(const QModelIndex& parent)
{
    if (!canFetchMore(parent)) {
        return;
    }
    const Tray& last = row(rowCount() - 1).record.tray;
    auto more = m_readOn({last.sownOn, last.code});
    m_hasMore = false;
    if (more) {
        const bool hasMore = more->hasMore;
        append(std::move(more->rows));
        m_hasMore = hasMore;
    }
}

// What the tray is, and where it stands.
void TrayListModel::addNames(std::vector<RowColumn<TrayListRow>>& columns)
{
    using Row = TrayListRow;
    columns[Code] = {tr("Tray"),
                     [](const Row& row) { return QString::fromStdString(row.record.tray.code); }};
    columns[Code].isStrong = true;
    columns[VarietyName] = {
        tr("Variety"), [](const Row& row) { return QString::fromStdString(row.record.variety); }};
    columns[MediumName] = {tr("Medium"), [](const Row& row) {
                               return QString::fromStdString(row.record.medium.name);
                           }};
    columns[MediumName].icon = [](const Row& row) { return markerIcon(row.record.medium.marker); };
    columns[Place] = {tr("Place"),
                      [](const Row& row) { return row.spot ? nameOf(row.spot) : kNothing; }};
    columns[TrialCode] = {tr("Trial"), [](const Row& row) {
                              return QString::fromStdString(row.record.trialCode.value_or(""));
                          }};
}

std::vector<RowColumn<TrayListRow>> TrayListModel::columnsIn(UnitText units, Date today)
{
    using Row = TrayListRow;
    std::vector<RowColumn<Row>> columns(Columns);
    addNames(columns);
    columns[StageNow] = {tr("Stage"),
                         [](const Row& row) { return doingText(row.record.tray, row.plan); }};
    columns[Day] = {tr("Day"),
                    [today](const Row& row) {
                        const Tray& tray = row.record.tray;
                        return QString::number(dayCount(tray.sownOn, tray.endedOn.value_or(today)));
                    },
                    Qt::AlignRight};
    columns[Harvest] = {tr("Harvest"), [](const Row& row) {
                            const auto& endedOn = row.record.tray.endedOn;
                            return endedOn ? longDateText(*endedOn)
                                           : tr("due %1").arg(shortDayText(row.plan.harvest.date));
                        }};
    columns[Yield] = {
        tr("Yield"),
        [units](const Row& row) { return row.yield ? units.mass(*row.yield) : kNothing; },
        Qt::AlignRight};
    for (RowColumn<Row>& column : columns) {
        column.ink = [](const Row& row) {
            return row.record.tray.state == TrayState::Growing ? QColor() : ui::palette().mutedInk;
        };
    }
    return columns;
}

} // namespace plumule::ui
