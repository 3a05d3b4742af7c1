#pragma once

#include "core/review/comparison/comparison.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// One pair, how it is called, and what is said of it.
struct PairRow
{
    int marker = -1; // of the one with more; none for groups
    QString name;
    QString fed; // "with, without"; "alike"
    QString words;
    MediaPair pair;
};

// The differences between media, pair by pair, in percent and in the response's unit; of groups of
// media where they were asked for, and by variety where the answer is.
class PairModel : public RowsModel<PairRow>
{
    Q_DECLARE_TR_FUNCTIONS(PairModel)

public:
    enum Column
    {
        Pair,
        Fed,
        Trials,
        Percent,
        Interval,
        Difference,
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
