#pragma once

#include "core/review/facts/season.h"

#include <QAbstractTableModel>

namespace plumule::ui {

// The numbers of the season, one row a medium.
class SeasonModel : public QAbstractTableModel
{
    Q_OBJECT

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

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] QString textOf(const MediumSeason& season, int column) const;

    std::vector<MediumSeason> m_media;
    QString m_currency;
    int m_decimals = 1; // of yields
};

} // namespace plumule::ui
