#pragma once

#include "ui/page/setup_part.h"

class QComboBox;
class QLineEdit;
class QTimeEdit;
class QVBoxLayout;

namespace plumule::ui {

class NumberField;

// The room, its round times and units, and its racks, shelves and places.
class RoomPart : public SetupPart
{
    Q_OBJECT

public:
    RoomPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    QWidget* buildRoom();
    QWidget* buildRacks();
    QWidget* rackCard(const RoomLayout& layout, const Rack& rack);
    QWidget* shelfRow(const RoomLayout& layout, const Shelf& shelf);
    void showRoom(const Room& room);
    void saveRoom();
    void addRack();
    void later(std::function<void()> act);

    QLineEdit* m_name = nullptr;
    QComboBox* m_units = nullptr;
    QLineEdit* m_currency = nullptr;
    QTimeEdit* m_morning = nullptr;
    QTimeEdit* m_evening = nullptr;
    NumberField* m_length = nullptr;
    NumberField* m_width = nullptr;
    QVBoxLayout* m_racks = nullptr;
    std::optional<RoomLayout> m_shown;
};

} // namespace plumule::ui
