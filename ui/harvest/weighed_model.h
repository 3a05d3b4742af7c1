#pragma once

#include "core/harvest/harvest.h"
#include "ui/text/text.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// What was weighed today, newest first.
class WeighedModel : public RowsModel<WeighedRow>
{
    Q_DECLARE_TR_FUNCTIONS(WeighedModel)

public:
    enum Column
    {
        Tray,
        MediumName,
        Net,
        PerSeed,
        Time,
        Cut, // which it was, and whether it is cut again
        Correct,
        Columns
    };

    explicit WeighedModel(QObject* parent = nullptr);

    void show(std::vector<WeighedRow> rows, UnitText units);

private:
    [[nodiscard]] static std::vector<RowColumn<WeighedRow>> columnsIn(UnitText units);
};

} // namespace plumule::ui
