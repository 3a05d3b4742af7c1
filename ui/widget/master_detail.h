#pragma once

#include <QIcon>
#include <QWidget>

#include <vector>

class QFormLayout;
class QListWidget;
class QPushButton;
class QVBoxLayout;

namespace plumule::ui {

// A list of records at the left, the form of the chosen one at the right, with New, Save and
// Remove. It keeps the selection; what the fields hold is its owner's.
class MasterDetail : public QWidget
{
    Q_OBJECT

public:
    struct Item
    {
        qint64 id = 0;
        QString name;
        QIcon icon;
    };

    // `newName` is what the New button says ("New variety").
    explicit MasterDetail(const QString& newName, QWidget* parent = nullptr);

    // Fills the list; the chosen record stays chosen, else the first is. Emits nothing.
    void setItems(const std::vector<Item>& items);
    // Chooses without emitting; 0 is a new record.
    void choose(qint64 id);
    // 0 while a new record is being written.
    [[nodiscard]] qint64 chosen() const { return m_chosen; }
    void setRemovable(bool isRemovable);

    [[nodiscard]] QFormLayout* form() const { return m_form; }
    // Below the form, for more than fields.
    [[nodiscard]] QVBoxLayout* below() const { return m_below; }

Q_SIGNALS:
    void chosenByHand(qint64 id); // 0: a new record is begun
    void saveAsked();
    void removeAsked();

private:
    QListWidget* m_list = nullptr;
    QFormLayout* m_form = nullptr;
    QVBoxLayout* m_below = nullptr;
    QPushButton* m_remove = nullptr;
    qint64 m_chosen = 0;
    bool m_isNew = false; // New was pressed, and nothing chosen or saved since
};

} // namespace plumule::ui
