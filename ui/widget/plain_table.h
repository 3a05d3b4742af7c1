#pragma once

#include <QString>

#include <string>

class QAbstractItemModel;
class QTableView;

namespace plumule::ui {

// A table without a grid or row numbers, its rows of one height.
[[nodiscard]] QTableView* plainTable(QAbstractItemModel* model, const char* name,
                                     const QString& accessibleName);

// Makes it as high as its rows, so that the page scrolls and not the table.
void fitHeight(QTableView& table);

// What the table shows, as RFC 4180 has it, UTF-8.
[[nodiscard]] std::string tableCsv(const QAbstractItemModel& model);

} // namespace plumule::ui
