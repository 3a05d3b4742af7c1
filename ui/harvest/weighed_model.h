#pragma once

#include "core/harvest/harvest.h"
#include "ui/text/text.h"

#include <QAbstractTableModel>

namespace plumule::ui {

// What was weighed today, newest first.
class WeighedModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column
    {
        Tray,
        MediumName,
        Net,
        PerSeed,
        Time,
        Correct,
        Columns
    };

    explicit WeighedModel(QObject* parent = nullptr);

    void show(std::vector<WeighedRow> rows, UnitText units);
    [[nodiscard]] const WeighedRow& row(int index) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] QString textOf(const WeighedRow& row, int column) const;

    std::vector<WeighedRow> m_rows;
    UnitText m_units;
};

} // namespace plumule::ui
