#pragma once

#include "core/tray/tray_list_row.h"
#include "ui/text/text.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// The trays of the list, as the journal gave them.
class TrayListModel : public RowsModel<TrayListRow>
{
    Q_DECLARE_TR_FUNCTIONS(TrayListModel)

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

private:
    static void addNames(std::vector<RowColumn<TrayListRow>>& columns);
    [[nodiscard]] static std::vector<RowColumn<TrayListRow>> columnsIn(UnitText units, Date today);
};

// "in light", "harvested", "discarded": what a tray is doing.
[[nodiscard]] QString doingText(const Tray& tray, const StagePlan& plan);

} // namespace plumule::ui
