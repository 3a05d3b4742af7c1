#pragma once

#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QAbstractItemModel;
class QTableView;

namespace plumule::ui {

// A table on a card under its heading, as high as its rows, with a button that saves it as CSV.
class TableCard : public Card
{
    Q_OBJECT

public:
    // `name` is the table's object name. The model is not owned.
    TableCard(const Services& services, const QString& heading, QAbstractItemModel* model,
              const char* name, QWidget* parent = nullptr);

    [[nodiscard]] QTableView* table() const { return m_table; }
    // To be called once the model has its rows.
    void fit();

private:
    void save();

    Services m_services;
    QTableView* m_table = nullptr;
};

} // namespace plumule::ui
