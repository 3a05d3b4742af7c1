#pragma once

#include <QPushButton>

#include <functional>
#include <vector>

class QMenu;

namespace plumule::ui {

// A button that opens a list of things to tick; none ticked means all.
class ChoiceMenu : public QPushButton
{
    Q_OBJECT

public:
    struct Item
    {
        qint64 id = 0;
        QString name;
    };

    // `all` is what it says while nothing is ticked ("All varieties"), `counted` when many are
    // ("5 varieties").
    ChoiceMenu(const QString& all, std::function<QString(int)> counted, QWidget* parent = nullptr);

    // Keeps what is ticked. Emits nothing.
    void setItems(const std::vector<Item>& items);
    void choose(const std::vector<qint64>& ids);
    [[nodiscard]] const std::vector<qint64>& chosen() const { return m_chosen; }
    template <class IdType>
    void chooseIds(const std::vector<IdType>& ids)
    {
        std::vector<qint64> numbers;
        numbers.reserve(ids.size());
        for (const IdType id : ids) {
            numbers.push_back(id.value);
        }
        choose(numbers);
    }
    template <class IdType>
    [[nodiscard]] std::vector<IdType> chosenIds() const
    {
        std::vector<IdType> ids;
        for (const qint64 id : m_chosen) {
            ids.push_back(IdType{id});
        }
        return ids;
    }

Q_SIGNALS:
    void chosenByHand();

private:
    void showChoice();

    QString m_all;
    std::function<QString(int)> m_counted;
    QMenu* m_menu = nullptr;
    std::vector<qint64> m_chosen;
};

} // namespace plumule::ui
