#pragma once

#include <QString>

class QAbstractItemModel;
class QTableView;

namespace plumule::ui {

// A table without a grid or row numbers, its rows of one height.
[[nodiscard]] QTableView* plainTable(QAbstractItemModel* model, const char* name,
                                     const QString& accessibleName);

// Makes it as high as its rows, so that the page scrolls and not the table.
void fitHeight(QTableView& table);

} // namespace plumule::ui
