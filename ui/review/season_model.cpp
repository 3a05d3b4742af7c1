#include "ui/review/season_model.h"

#include "ui/medium/marker.h"
#include "ui/text/text.h"

#include <algorithm>

namespace plumule::ui {
namespace {

const QString kNone = QStringLiteral("–");

using TrayNumber = std::function<std::optional<double>(const SeasonTray&)>;

QString number(const std::optional<double>& value, int decimals)
{
    return value ? numberText(*value, decimals) : kNone;
}

// The mean over the trays that have the value; none where none has.
std::optional<double> meanOf(const std::vector<SeasonTray>& trays, const TrayNumber& read)
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

RowColumn<MediumSeason> numberColumn(const QString& heading,
                                     std::function<QString(const MediumSeason&)> text)
{
    return {heading, std::move(text), Qt::AlignRight};
}

RowColumn<MediumSeason> meanColumn(const QString& heading, int decimals, TrayNumber read)
{
    return numberColumn(heading, [decimals, read = std::move(read)](const MediumSeason& season) {
        return number(meanOf(season.trays, read), decimals);
    });
}

QString yieldIntervalText(const MeanInterval& yield, int decimals)
{
    return yield.lower && yield.upper
               ? SeasonModel::tr("%1 to %2")
                     .arg(numberText(*yield.lower, decimals), numberText(*yield.upper, decimals))
               : SeasonModel::tr("none from one tray");
}

// Light trays are told apart in thousandths, heavy ones in tenths.
int yieldDecimalsOf(const std::vector<MediumSeason>& media)
{
    double heaviest = 0;
    for (const MediumSeason& season : media) {
        heaviest = std::max(heaviest, season.yield.mean);
    }
    return heaviest >= 100 ? 1 : heaviest >= 10 ? 2 : 3;
}

} // namespace

SeasonModel::SeasonModel(QObject* parent)
    : RowsModel(columnsWith(1), parent)
{}

void SeasonModel::show(const SeasonReview& review)
{
    RowsModel::show(columnsWith(yieldDecimalsOf(review.media)), review.media);
}

std::vector<RowColumn<MediumSeason>> SeasonModel::columnsWith(int decimals)
{
    std::vector<RowColumn<MediumSeason>> columns(Columns);
    columns[MediumName] = {tr("Medium"), [](const MediumSeason& season) {
                               return QString::fromStdString(season.medium.name);
                           }};
    columns[MediumName].icon = [](const MediumSeason& season) {
        return markerIcon(season.medium.marker);
    };
    columns[Trays] = numberColumn(
        tr("Trays"), [](const MediumSeason& season) { return QString::number(season.yield.n); });
    columns[Mean] = numberColumn(tr("Mean, g"), [decimals](const MediumSeason& season) {
        return season.yield.n > 0 ? numberText(season.yield.mean, decimals) : kNone;
    });
    columns[Mean].isStrong = true;
    columns[Spread] = numberColumn(tr("Spread, g"), [decimals](const MediumSeason& season) {
        return number(season.yield.sd, decimals);
    });
    columns[Interval] = numberColumn(tr("95% interval, g"), [decimals](const MediumSeason& season) {
        return yieldIntervalText(season.yield, decimals);
    });
    columns[PerSeed] = meanColumn(tr("g per g seed"), 1,
                                  [](const SeasonTray& tray) { return tray.gramsPerSeedGram; });
    columns[Days] = meanColumn(
        tr("Days"), 1, [](const SeasonTray& tray) { return std::optional<double>(tray.days); });
    columns[ResidueMean] =
        meanColumn(tr("Residue, g"), 0, [](const SeasonTray& tray) { return tray.residueGrams; });
    columns[CostPerTray] =
        meanColumn(tr("Cost a tray"), 2, [](const SeasonTray& tray) { return tray.cost; });
    columns[CostPerGram] = numberColumn(tr("Cost a gram"), [](const MediumSeason& season) {
        return number(season.costPerGram, 4);
    });
    columns[PaysBack] = numberColumn(tr("Pays back at"), [](const MediumSeason& season) {
        return season.paysBackAt ? tr("use %1").arg(*season.paysBackAt) : kNone;
    });
    return columns;
}

} // namespace plumule::ui
