#pragma once

#include "core/review/facts/season.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// The numbers of the season, one row a medium.
class SeasonModel : public RowsModel<MediumSeason>
{
    Q_DECLARE_TR_FUNCTIONS(SeasonModel)

public:
    enum Column
    {
        MediumName,
        Trays,
        Mean,
        Spread,
        Interval,
        PerSeed,
        Days,
        ResidueMean,
        CostPerTray,
        CostPerGram,
        PaysBack,
        Columns
    };

    explicit SeasonModel(QObject* parent = nullptr);

    void show(const SeasonReview& review);

private:
    [[nodiscard]] static std::vector<RowColumn<MediumSeason>> columnsWith(int yieldDecimals);
};

} // namespace plumule::ui
