#pragma once

#include <QIcon>
#include <QListWidget>

#include <vector>

namespace plumule::ui {

// A list of things to tick, each with the id that it stands for.
class CheckList : public QListWidget
{
    Q_OBJECT

public:
    explicit CheckList(const char* name, QWidget* parent = nullptr);

    void addCheck(const QString& name, qint64 id, bool isChecked = false, const QIcon& icon = {});
    // Ticks the first ones, as many as that, and none beyond.
    void checkFirst(int count);

    // In the order of the list.
    template <class IdType>
    [[nodiscard]] std::vector<IdType> checked() const
    {
        std::vector<IdType> ids;
        for (int i = 0; i < count(); ++i) {
            if (item(i)->checkState() == Qt::Checked) {
                ids.push_back(IdType{item(i)->data(Qt::UserRole).toLongLong()});
            }
        }
        return ids;
    }
};

} // namespace plumule::ui
