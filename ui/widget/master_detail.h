#pragma once

#include <QIcon>
#include <QWidget>

#include <functional>
#include <vector>

class QBoxLayout;
class QFormLayout;
class QListWidget;
class QPushButton;
class QVBoxLayout;

namespace plumule::ui {

class FormPanel;

// A list of records beside the form of the chosen one, or above it, with New, Save and
// Remove. Enter in the form saves. It keeps the selection; what the fields hold is its owner's.
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
    using Go = std::function<void()>;

    // `newName` is what the New button says ("New variety").
    explicit MasterDetail(const QString& newName, QWidget* parent = nullptr);

    // Fills the list; the chosen record stays chosen, else the first is. Emits nothing.
    void setItems(const std::vector<Item>& items);
    // Chooses without emitting; 0 is a new record.
    void choose(qint64 id);
    // 0 while a new record is being written.
    [[nodiscard]] qint64 chosen() const { return m_chosen; }
    // Asked before a changed form makes way for another record; it calls `go` where it may.
    void setGuard(std::function<void(Go go)> mayLeave) { m_mayLeave = std::move(mayLeave); }

    [[nodiscard]] QFormLayout* form() const { return m_form; }
    // To be settled once the fields are filled.
    [[nodiscard]] FormPanel* panel() const { return m_panel; }
    // Within the panel, for more of the record than fields.
    [[nodiscard]] QVBoxLayout* record() const { return m_record; }
    // Below the panel, for acts of their own.
    [[nodiscard]] QVBoxLayout* below() const { return m_below; }

Q_SIGNALS:
    void chosenByHand(qint64 id); // 0: a new record is begun
    void saveAsked();
    void removeAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void layOut();
    QWidget* buildList(const QString& newName);
    QWidget* buildForm();
    QWidget* buildButtons();
    void takeChoice(qint64 id);
    void begin(qint64 id);
    void showChosen();

    QBoxLayout* m_sides = nullptr;
    QListWidget* m_list = nullptr;
    FormPanel* m_panel = nullptr;
    QFormLayout* m_form = nullptr;
    QVBoxLayout* m_record = nullptr;
    QVBoxLayout* m_below = nullptr;
    QPushButton* m_remove = nullptr;
    std::function<void(Go go)> m_mayLeave;
    qint64 m_chosen = 0;
    bool m_isNew = false; // New was pressed, and nothing chosen or saved since
};

} // namespace plumule::ui
