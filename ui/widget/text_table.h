#pragma once

#include "ui/widget/rows_model.h"

#include <QStringList>

namespace plumule::ui {

// One row of a TextTable. Warned rows are shown in the colour of warnings.
struct TextRow
{
    QStringList cells;
    QIcon icon; // before the first cell
    bool isWarned = false;
    bool isStrong = false;
};

// A small table of words and numbers that are worded already.
class TextTable : public RowsModel<TextRow>
{
public:
    explicit TextTable(QObject* parent = nullptr);

    // `rightFrom`: the first column that holds numbers; it and those after it, up to `leftFrom`,
    // stand at the right.
    void show(const QStringList& header, std::vector<TextRow> rows, int rightFrom = 1,
              int leftFrom = 1000);
};

} // namespace plumule::ui
