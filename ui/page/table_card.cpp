#include "ui/page/table_card.h"

#include "core/base/whole_file.h"
#include "ui/page/saving.h"
#include "ui/widget/plain_table.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {

TableCard::TableCard(const Services& services, const QString& heading, QAbstractItemModel* model,
                     const char* name, QWidget* parent)
    : Card(heading, "card", parent)
    , m_services(services)
{
    wrapHeading();
    m_table = plainTable(model, name, heading);
    auto* keep = button(tr("Save…"), "quiet");
    keep->setObjectName(QString::fromLatin1(name) + "Save");
    keep->setAccessibleName(tr("Save this table"));
    headingRow()->addWidget(keep);
    body()->addWidget(m_table);
    connect(keep, &QPushButton::clicked, this, &TableCard::save);
}

void TableCard::fit()
{
    fitHeight(*m_table);
}

void TableCard::save()
{
    saveAs(this, m_services, tr("Save this table"), m_table->objectName() + ".csv",
           tr("Tables (*.csv)"), [this](const QString& path) {
               return writeWhole(path.toStdString(), tableCsv(*m_table->model()));
           });
}

} // namespace plumule::ui

#include "moc_table_card.cpp"
