#pragma once

#include "core/review/comparison/comparison.h"

#include <QAbstractTableModel>

namespace plumule::ui {

// The differences between media, pair by pair; by variety where the answer is.
class PairModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column
    {
        Pair,
        Difference,
        Interval,
        AdjustedP,
        Trays,
        PlainWords,
        Columns
    };

    explicit PairModel(QObject* parent = nullptr);

    void show(const SeasonComparison& comparison);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    struct Row
    {
        QString name;
        MediaPair pair;
    };

    void addRows(const SeasonComparison& comparison);
    [[nodiscard]] QString textOf(const Row& row, int column) const;

    std::vector<Row> m_rows;
    QString m_unit;
    int m_decimals = 1;
};

} // namespace plumule::ui
