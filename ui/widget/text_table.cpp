#include "ui/widget/text_table.h"

namespace plumule::ui {

TextTable::TextTable(QObject* parent)
    : RowsModel({}, parent)
{}

void TextTable::show(const QStringList& header, std::vector<TextRow> rows, int rightFrom,
                     int leftFrom)
{
    std::vector<RowColumn<TextRow>> columns;
    for (int i = 0; i < header.size(); ++i) {
        RowColumn<TextRow> column{header[i],
                                  [i](const TextRow& row) { return row.cells.value(i); }};
        column.side = i >= rightFrom && i < leftFrom ? Qt::AlignRight : Qt::AlignLeft;
        column.ink = [](const TextRow& row) {
            return row.isWarned ? ui::palette().warning : QColor();
        };
        column.isRowStrong = [](const TextRow& row) { return row.isStrong; };
        if (i == 0) {
            column.icon = [](const TextRow& row) { return row.icon; };
        }
        columns.push_back(std::move(column));
    }
    RowsModel::show(std::move(columns), std::move(rows));
}

} // namespace plumule::ui
