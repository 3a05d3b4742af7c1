#pragma once

#include "core/review/comparison/comparison.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// One pair, and how it is called.
struct PairRow
{
    QString name;
    MediaPair pair;
};

// The differences between media, pair by pair; by variety where the answer is.
class PairModel : public RowsModel<PairRow>
{
    Q_DECLARE_TR_FUNCTIONS(PairModel)

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

private:
    [[nodiscard]] static std::vector<RowColumn<PairRow>> columnsIn(const QString& unit,
                                                                   int decimals);
};

} // namespace plumule::ui
