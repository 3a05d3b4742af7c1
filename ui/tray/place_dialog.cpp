#include "ui/tray/place_dialog.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QListWidget>
#include <QVBoxLayout>

namespace plumule::ui {

PlaceDialog::PlaceDialog(Ask& ask, const std::vector<Spot>& spots, QWidget* parent)
    : FormDialog(ask, "placeDialog", tr("Move to another place"), parent)
{
    wish({scaled(420), scaled(420)});
    leaveFreely();
    body()->addWidget(label(tr("Free places, in walking order"), "muted"));
    auto* list = new QListWidget;
    list->setObjectName("placeList");
    for (const Spot& spot : spots) {
        auto* item = new QListWidgetItem(nameOf(std::optional(spot)), list);
        item->setData(Qt::UserRole, static_cast<qlonglong>(spot.place.value));
    }
    auto* nowhere = new QListWidgetItem(tr("off the racks"), list);
    nowhere->setData(Qt::UserRole, qlonglong{0});
    list->ensurePolished(); // rows are measured now, with the room the style gives them
    list->setCurrentRow(0);
    list->setAccessibleName(tr("Free places, in walking order"));
    body()->addWidget(list, 1);
    addCancel();
    auto* move = addButton(tr("Move"), "placeMove", "primary");
    const auto take = [this, list] {
        if (const auto* item = list->currentItem()) {
            Q_EMIT chosen(item->data(Qt::UserRole).toLongLong());
            accept();
        }
    };
    connect(move, &QPushButton::clicked, this, take);
    connect(list, &QListWidget::itemDoubleClicked, this, take);
}

} // namespace plumule::ui

#include "moc_place_dialog.cpp"
