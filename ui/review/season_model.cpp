#include "ui/review/season_model.h"

#include "ui/medium/marker.h"
#include "ui/text/text.h"
#include "ui/widget/theme.h"

#include <algorithm>
#include <functional>

namespace plumule::ui {
namespace {

const QString kNone = QStringLiteral("–");

QString number(const std::optional<double>& value, int decimals)
{
    return value ? numberText(*value, decimals) : kNone;
}

// The mean over the trays that have the value; none where none has.
std::optional<double> meanOf(const std::vector<SeasonTray>& trays,
                             const std::function<std::optional<double>(const SeasonTray&)>& read)
{
    double sum = 0;
    int count = 0;
    for (const SeasonTray& tray : trays) {
        if (const auto value = read(tray)) {
            sum += *value;
            ++count;
        }
    }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

} // namespace

SeasonModel::SeasonModel(QObject* parent)
    : QAbstractTableModel(parent)
{}

void SeasonModel::show(const SeasonReview& review)
{
    beginResetModel();
    m_media = review.media;
    m_currency = QString::fromStdString(review.currency);
    // Light trays are told apart in thousandths, heavy ones in tenths.
    double heaviest = 0;
    for (const MediumSeason& season : m_media) {
        heaviest = std::max(heaviest, season.yield.mean);
    }
    m_decimals = heaviest >= 100 ? 1 : heaviest >= 10 ? 2 : 3;
    endResetModel();
}

int SeasonModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_media.size());
}

int SeasonModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : int(Columns);
}

QString SeasonModel::textOf(const MediumSeason& season, int column) const
{
    const MeanInterval& yield = season.yield;
    switch (column) {
    case MediumName:
        return QString::fromStdString(season.medium.name);
    case Trays:
        return QString::number(yield.n);
    case Mean:
        return yield.n > 0 ? numberText(yield.mean, m_decimals) : kNone;
    case Spread:
        return number(yield.sd, m_decimals);
    case Interval:
        return yield.lower && yield.upper ? tr("%1 to %2")
                                                .arg(numberText(*yield.lower, m_decimals),
                                                     numberText(*yield.upper, m_decimals))
                                          : tr("none from one tray");
    case PerSeed:
        return number(
            meanOf(season.trays, [](const SeasonTray& tray) { return tray.gramsPerSeedGram; }), 1);
    case Days:
        return number(
            meanOf(season.trays,
                   [](const SeasonTray& tray) { return std::optional<double>(tray.days); }),
            1);
    case ResidueMean:
        return number(
            meanOf(season.trays, [](const SeasonTray& tray) { return tray.residueGrams; }), 0);
    case CostPerTray:
        return number(meanOf(season.trays, [](const SeasonTray& tray) { return tray.cost; }), 2);
    case CostPerGram:
        return number(season.costPerGram, 4);
    case PaysBack:
        return season.paysBackAt ? tr("use %1").arg(*season.paysBackAt) : kNone;
    default:
        return {};
    }
}

QVariant SeasonModel::data(const QModelIndex& index, int role) const
{
    const MediumSeason& season = m_media[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return textOf(season, index.column());
    case Qt::DecorationRole:
        return index.column() == MediumName ? QVariant(markerIcon(season.medium.marker))
                                            : QVariant();
    case Qt::TextAlignmentRole:
        return index.column() == MediumName ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                                            : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::FontRole:
        return index.column() == Mean ? QVariant(uiFont(1.0, QFont::DemiBold)) : QVariant();
    default:
        return {};
    }
}

QVariant SeasonModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return section == MediumName ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                                     : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const QStringList heads{tr("Medium"),      tr("Trays"),           tr("Mean, g"),
                            tr("Spread, g"),   tr("95% interval, g"), tr("g per g seed"),
                            tr("Days"),        tr("Residue, g"),      tr("Cost a tray"),
                            tr("Cost a gram"), tr("Pays back at")};
    return heads.value(section);
}

} // namespace plumule::ui

#include "moc_season_model.cpp"
