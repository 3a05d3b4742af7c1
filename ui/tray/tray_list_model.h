#pragma once

#include "core/journal/tray/tray_entries.h"
#include "ui/text/text.h"

#include <QAbstractTableModel>

namespace plumule::ui {

// The trays of the list, as the journal gave them.
class TrayListModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column
    {
        Code,
        VarietyName,
        MediumName,
        Place,
        StageNow,
        Day,
        Harvest,
        Yield,
        TrialCode,
        Columns
    };

    explicit TrayListModel(QObject* parent = nullptr);

    void show(std::vector<TrayListRow> rows, UnitText units, Date today);
    [[nodiscard]] const TrayListRow& row(int index) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] QString textOf(const TrayListRow& row, int column) const;

    std::vector<TrayListRow> m_rows;
    UnitText m_units;
    Date m_today;
};

// "in light", "harvested", "discarded": what a tray is doing.
[[nodiscard]] QString doingText(const Tray& tray, const StagePlan& plan);

} // namespace plumule::ui
