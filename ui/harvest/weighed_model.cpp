#include "ui/harvest/weighed_model.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

namespace plumule::ui {
namespace {

QString perSeedText(const WeighedRow& row)
{
    return row.seed && row.seed->count() > 0 ? numberText(row.harvest.net / *row.seed, 1)
                                             : QStringLiteral("–");
}

QString cutText(const Harvest& harvest)
{
    if (!harvest.isLast) {
        return WeighedModel::tr("cut %1, again later").arg(harvest.cut);
    }
    return harvest.cut > 1 ? WeighedModel::tr("cut %1").arg(harvest.cut) : QString();
}

} // namespace

WeighedModel::WeighedModel(QObject* parent)
    : RowsModel(columnsIn(UnitText()), parent)
{}

void WeighedModel::show(std::vector<WeighedRow> rows, UnitText units)
{
    RowsModel::show(columnsIn(units), std::move(rows));
}

std::vector<RowColumn<WeighedRow>> WeighedModel::columnsIn(UnitText units)
{
    std::vector<RowColumn<WeighedRow>> columns(Columns);
    columns[Tray] = {tr("Tray"),
                     [](const WeighedRow& row) { return QString::fromStdString(row.code); }};
    columns[Tray].isStrong = true;
    columns[MediumName] = {tr("Medium"), [](const WeighedRow& row) {
                               return QString::fromStdString(row.medium.name);
                           }};
    columns[MediumName].icon = [](const WeighedRow& row) { return markerIcon(row.medium.marker); };
    columns[Net] = {tr("Net"),
                    [units](const WeighedRow& row) { return units.mass(row.harvest.net); },
                    Qt::AlignRight};
    const bool isMetric = units.units() == UnitSystem::Metric;
    columns[PerSeed] = {isMetric ? tr("g per g seed") : tr("oz per oz seed"), perSeedText,
                        Qt::AlignRight};
    columns[Time] = {tr("Time"),
                     [](const WeighedRow& row) { return clockText(row.harvest.minute); }};
    columns[Cut] = {tr("Cut"), [](const WeighedRow& row) { return cutText(row.harvest); }};
    columns[Cut].ink = [](const WeighedRow&) { return ui::palette().mutedInk; };
    columns[Correct] = {QString(), [](const WeighedRow&) { return tr("Correct"); }};
    columns[Correct].ink = [](const WeighedRow&) { return ui::palette().accent; };
    return columns;
}

} // namespace plumule::ui
