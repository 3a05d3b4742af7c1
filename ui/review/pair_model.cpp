#include "ui/review/pair_model.h"

#include "ui/medium/marker.h"
#include "ui/review/verdict_sentence.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

namespace plumule::ui {
namespace {

const QString kNoNumber = QStringLiteral("–");

QString shortFed(const AspectOfMedium& medium)
{
    if (medium.levels.size() > 1) {
        return PairModel::tr("both");
    }
    return medium.levels.empty()                      ? kNoNumber
           : medium.levels.front().name == "nutrient" ? PairModel::tr("with")
                                                      : PairModel::tr("without");
}

// Whether the two were fed nutrient, where it is on record.
QString fedWords(const MediaPair& pair, const SeasonComparison& comparison)
{
    for (const Finding& finding : comparison.fairness) {
        if (finding.aspect != Aspect::Feeding || finding.media.size() <= std::max(pair.a, pair.b)) {
            continue;
        }
        const QString a = shortFed(finding.media[pair.a]);
        const QString b = shortFed(finding.media[pair.b]);
        return a == b ? PairModel::tr("alike") : QStringLiteral("%1, %2").arg(a, b);
    }
    return kNoNumber;
}

void addPairRows(std::vector<PairRow>& rows, const SeasonComparison& comparison,
                 const std::vector<MediaPair>& pairs, const QString& variety)
{
    // The clearest and widest first.
    for (const MediaPair* each : pairsByWeight(pairs)) {
        const MediaPair& pair = *each;
        const QString name = pairName(pair, comparison);
        rows.push_back({comparison.means[pair.a].medium.marker,
                        variety.isEmpty() ? name : QStringLiteral("%1: %2").arg(variety, name),
                        fedWords(pair, comparison), pairWords(pair, comparison), pair});
    }
}

void addGroupRows(std::vector<PairRow>& rows, const SeasonComparison& comparison)
{
    for (const MediaPair& pair : comparison.groupPairs) {
        rows.push_back(
            {-1, groupPairName(pair, comparison), kNoNumber, pairWords(pair, comparison), pair});
    }
}

} // namespace

PairModel::PairModel(QObject* parent)
    : RowsModel(columnsIn(QString(), 1), parent)
{}

void PairModel::show(const SeasonComparison& comparison)
{
    std::vector<PairRow> rows;
    addGroupRows(rows, comparison);
    addPairRows(rows, comparison, comparison.pairs, QString());
    if (comparison.gate && comparison.gate->isOpen && !comparison.variety) {
        for (const VarietyPart& part : comparison.byVariety) {
            addPairRows(rows, comparison, part.pairs, QString::fromStdString(part.variety));
        }
    }
    RowsModel::show(columnsIn(responseUnit(comparison), responseDecimals(comparison)),
                    std::move(rows));
}

std::vector<RowColumn<PairRow>> PairModel::columnsIn(const QString& unit, int decimals)
{
    const auto number = [](std::optional<double> value, int digits) {
        return value ? numberText(*value, digits) : kNoNumber;
    };
    std::vector<RowColumn<PairRow>> columns(Columns);
    columns[Pair] = {tr("Pair"), [](const PairRow& row) { return row.name; }};
    columns[Pair].icon = [](const PairRow& row) {
        return row.marker < 0 ? QIcon() : markerIcon(row.marker);
    };
    columns[Fed] = {tr("fed nutrient"), [](const PairRow& row) { return row.fed; }};
    columns[Trials] = {tr("sowings"),
                       [](const PairRow& row) {
                           return row.pair.trialsShared > 0 ? QString::number(row.pair.trialsShared)
                                                            : kNoNumber;
                       },
                       Qt::AlignRight};
    columns[Percent] = {tr("difference, %"),
                        [number](const PairRow& row) { return number(row.pair.percent, 1); },
                        Qt::AlignRight};
    columns[Percent].isStrong = true;
    columns[Interval] = {tr("interval, %"),
                         [](const PairRow& row) {
                             const MediaPair& pair = row.pair;
                             return pair.lowerPercent && pair.upperPercent
                                        ? tr("%1 to %2")
                                              .arg(numberText(*pair.lowerPercent, 1),
                                                   numberText(*pair.upperPercent, 1))
                                        : kNoNumber;
                         },
                         Qt::AlignRight};
    columns[Difference] = {
        tr("here, %1").arg(unit),
        [number, decimals](const PairRow& row) { return number(row.pair.difference, decimals); },
        Qt::AlignRight};
    columns[PlainWords] = {tr("In words"), [](const PairRow& row) { return row.words; }};
    return columns;
}

} // namespace plumule::ui
