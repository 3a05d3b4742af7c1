#include "ui/review/pair_model.h"

#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

namespace plumule::ui {
namespace {

const QString kNoNumber = QStringLiteral("–");

void addPairRows(std::vector<PairRow>& rows, const SeasonComparison& comparison)
{
    for (const MediaPair& pair : comparison.pairs) {
        QString name =
            QStringLiteral("%1 %2 %3")
                .arg(QString::fromStdString(comparison.means[pair.a].medium.name), QChar(0x2212),
                     QString::fromStdString(comparison.means[pair.b].medium.name));
        if (!comparison.variety.empty()) {
            name = QStringLiteral("%1: %2").arg(QString::fromStdString(comparison.variety), name);
        }
        rows.push_back({name, pair});
    }
}

} // namespace

PairModel::PairModel(QObject* parent)
    : RowsModel(columnsIn(QString(), 1), parent)
{}

void PairModel::show(const SeasonComparison& comparison)
{
    std::vector<PairRow> rows;
    if (comparison.byVariety.empty()) {
        addPairRows(rows, comparison);
    }
    for (const SeasonComparison& each : comparison.byVariety) {
        addPairRows(rows, each);
    }
    RowsModel::show(columnsIn(responseUnit(comparison), std::max(1, responseDecimals(comparison))),
                    std::move(rows));
}

std::vector<RowColumn<PairRow>> PairModel::columnsIn(const QString& unit, int decimals)
{
    std::vector<RowColumn<PairRow>> columns(Columns);
    columns[Pair] = {tr("Pair"), [](const PairRow& row) { return row.name; }};
    columns[Difference] = {tr("Difference, %1").arg(unit),
                           [decimals](const PairRow& row) {
                               const auto& value = row.pair.difference;
                               return value ? numberText(*value, decimals) : kNoNumber;
                           },
                           Qt::AlignRight};
    columns[Interval] = {tr("95% interval"),
                         [decimals](const PairRow& row) {
                             const MediaPair& pair = row.pair;
                             return pair.lower && pair.upper
                                        ? tr("%1 to %2")
                                              .arg(numberText(*pair.lower, decimals),
                                                   numberText(*pair.upper, decimals))
                                        : kNoNumber;
                         },
                         Qt::AlignRight};
    columns[AdjustedP] = {
        tr("adjusted p (Tukey)"),
        [](const PairRow& row) { return row.pair.p ? pText(*row.pair.p) : kNoNumber; },
        Qt::AlignRight};
    columns[Trays] = {tr("trays"),
                      [](const PairRow& row) {
                          return QStringLiteral("%1, %2").arg(row.pair.nA).arg(row.pair.nB);
                      },
                      Qt::AlignRight};
    columns[PlainWords] = {tr("In plain words"),
                           [](const PairRow& row) { return pairWords(row.pair); }};
    return columns;
}

} // namespace plumule::ui
