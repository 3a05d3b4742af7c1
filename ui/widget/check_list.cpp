#include "ui/widget/check_list.h"

#include "ui/widget/theme.h"

namespace plumule::ui {

CheckList::CheckList(const char* name, QWidget* parent)
    : QListWidget(parent)
{
    setObjectName(QString::fromLatin1(name));
    setSpacing(scaled(3)); // boxes are higher than a line of large type
}

void CheckList::addCheck(const QString& name, qint64 id, bool isChecked, const QIcon& icon)
{
    auto* made = new QListWidgetItem(icon, name);
    made->setData(Qt::UserRole, id);
    made->setFlags(made->flags() | Qt::ItemIsUserCheckable);
    made->setCheckState(isChecked ? Qt::Checked : Qt::Unchecked);
    addItem(made);
}

void CheckList::checkFirst(int count)
{
    for (int i = 0; i < this->count(); ++i) {
        item(i)->setCheckState(i < count ? Qt::Checked : Qt::Unchecked);
    }
}

} // namespace plumule::ui

#include "moc_check_list.cpp"
