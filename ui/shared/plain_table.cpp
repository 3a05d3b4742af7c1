#include "ui/shared/plain_table.h"

#include "ui/shared/theme.h"

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

} // namespace plumule::ui
