#include "ui/tray/place_dialog.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QListWidget>
#include <QVBoxLayout>

namespace plumule::ui {

PlaceDialog::PlaceDialog(const std::vector<Spot>& spots, QWidget* parent)
    : QDialog(parent)
{
    setObjectName("placeDialog");
    setWindowTitle(tr("Move to another place"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(20));
    column->addWidget(label(tr("Free places, in walking order"), "heading"));
    auto* list = new QListWidget;
    list->setObjectName("placeList");
    for (const Spot& spot : spots) {
        auto* item = new QListWidgetItem(nameOf(std::optional(spot)), list);
        item->setData(Qt::UserRole, static_cast<qlonglong>(spot.place.value));
    }
    auto* nowhere = new QListWidgetItem(tr("off the racks"), list);
    nowhere->setData(Qt::UserRole, qlonglong{0});
    list->setCurrentRow(0);
    column->addWidget(list);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    auto* leave = button(tr("Cancel"));
    auto* move = button(tr("Move"), "primary");
    move->setObjectName("placeMove");
    move->setDefault(true);
    row->addWidget(leave);
    row->addWidget(move);
    column->addLayout(row);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    const auto take = [this, list] {
        if (const auto* item = list->currentItem()) {
            Q_EMIT chosen(item->data(Qt::UserRole).toLongLong());
            accept();
        }
    };
    connect(move, &QPushButton::clicked, this, take);
    connect(list, &QListWidget::itemActivated, this, take);
}

} // namespace plumule::ui

#include "moc_place_dialog.cpp"
