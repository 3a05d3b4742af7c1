#include "ui/widget/plain_table.h"

#include "core/exchange/csv.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QTableView>

namespace plumule::ui {
namespace {

constexpr int kRowHeight = 36;

} // namespace

QTableView* plainTable(QAbstractItemModel* model, const char* name, const QString& accessibleName)
{
    auto* table = new QTableView;
    table->setObjectName(name);
    table->setAccessibleName(accessibleName);
    table->setModel(model);
    table->setShowGrid(false);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setTabKeyNavigation(false);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(scaled(kRowHeight));
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->horizontalHeader()->setHighlightSections(false);
    return table;
}

void fitHeight(QTableView& table)
{
    table.setFixedHeight(table.horizontalHeader()->sizeHint().height() +
                         scaled(kRowHeight) * table.model()->rowCount() + scaled(14));
}

std::string tableCsv(const QAbstractItemModel& model)
{
    std::vector<std::string> fields;
    for (int column = 0; column < model.columnCount(); ++column) {
        fields.push_back(
            model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toStdString());
    }
    std::string text = csvLine(fields);
    for (int row = 0; row < model.rowCount(); ++row) {
        fields.clear();
        for (int column = 0; column < model.columnCount(); ++column) {
            fields.push_back(model.index(row, column).data().toString().toStdString());
        }
        text += csvLine(fields);
    }
    return text;
}

} // namespace plumule::ui
