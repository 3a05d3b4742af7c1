#include "ui/review/pair_model.h"

#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

namespace plumule::ui {
namespace {

const QString kNoNumber = QStringLiteral("–");

} // namespace

PairModel::PairModel(QObject* parent)
    : QAbstractTableModel(parent)
{}

void PairModel::show(const SeasonComparison& comparison)
{
    beginResetModel();
    m_rows.clear();
    m_unit = responseUnit(comparison);
    m_decimals = std::max(1, responseDecimals(comparison));
    if (comparison.byVariety.empty()) {
        addRows(comparison);
    }
    for (const SeasonComparison& each : comparison.byVariety) {
        addRows(each);
    }
    endResetModel();
}

void PairModel::addRows(const SeasonComparison& comparison)
{
    for (const MediaPair& pair : comparison.pairs) {
        QString name =
            QStringLiteral("%1 %2 %3")
                .arg(QString::fromStdString(comparison.means[pair.a].medium.name), QChar(0x2212),
                     QString::fromStdString(comparison.means[pair.b].medium.name));
        if (!comparison.variety.empty()) {
            name = QStringLiteral("%1: %2").arg(QString::fromStdString(comparison.variety), name);
        }
        m_rows.push_back({name, pair});
    }
}

int PairModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int PairModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : int(Columns);
}

QString PairModel::textOf(const Row& row, int column) const
{
    const MediaPair& pair = row.pair;
    switch (column) {
    case Pair:
        return row.name;
    case Difference:
        return pair.difference ? numberText(*pair.difference, m_decimals) : kNoNumber;
    case Interval:
        return pair.lower && pair.upper ? tr("%1 to %2")
                                              .arg(numberText(*pair.lower, m_decimals),
                                                   numberText(*pair.upper, m_decimals))
                                        : kNoNumber;
    case AdjustedP:
        return pair.p ? pText(*pair.p) : kNoNumber;
    case Trays:
        return QStringLiteral("%1, %2").arg(pair.nA).arg(pair.nB);
    case PlainWords:
        return pairWords(pair);
    default:
        return {};
    }
}

QVariant PairModel::data(const QModelIndex& index, int role) const
{
    const bool isText = index.column() == Pair || index.column() == PlainWords;
    switch (role) {
    case Qt::DisplayRole:
        return textOf(m_rows[static_cast<std::size_t>(index.row())], index.column());
    case Qt::TextAlignmentRole:
        return isText ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                      : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    default:
        return {};
    }
}

QVariant PairModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return section == Pair || section == PlainWords
                   ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                   : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const QStringList heads{tr("Pair"),         tr("Difference, %1").arg(m_unit),
                            tr("95% interval"), tr("adjusted p (Tukey)"),
                            tr("trays"),        tr("In plain words")};
    return heads.value(section);
}

} // namespace plumule::ui

#include "moc_pair_model.cpp"
