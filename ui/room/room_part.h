#pragma once

#include "ui/page/setup_part.h"

class QComboBox;
class QLineEdit;
class QSpinBox;
class QVBoxLayout;

namespace plumule::ui {

class FormPanel;
class NumberField;
class TimeField;

// The room, its round times and units, and its racks, shelves and places. One Save saves all that
// is typed; what adds, renames or removes acts at once.
class RoomPart : public SetupPart
{
    Q_OBJECT

public:
    // What of it is shown, and saved: beside the racks all else stays as it is.
    enum class Fields
    {
        All,
        Racks
    };

    RoomPart(Journal& journal, Services services, Fields fields = Fields::All,
             QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    [[nodiscard]] bool hasUnsaved() const override;
    bool saveTyped() override;

private:
    struct ShelfFields
    {
        Shelf shelf;
        QSpinBox* places = nullptr;
        NumberField* watts = nullptr;
        NumberField* hours = nullptr;
    };

    QWidget* buildRoom();
    QWidget* buildRacks();
    QWidget* buildCaution();
    QWidget* buildSave(Fields fields);
    QWidget* rackCard(const RoomLayout& layout, const Rack& rack);
    QWidget* shelfRow(const RoomLayout& layout, const Shelf& shelf);
    ShelfFields shelfFields(const RoomLayout& layout, const Shelf& shelf);
    void showRoom(const Room& room);
    void showRacks(const RoomLayout& before, const RoomLayout& layout);
    static void fill(ShelfFields& fields, const RoomLayout& layout);
    void proposeCurrency();
    // As typed; none, and said why, where a field can't be read.
    [[nodiscard]] std::optional<Room> typedRoom();
    [[nodiscard]] std::optional<std::vector<ShelfDraft>> typedShelves();
    void addRack();
    void askShelf(const Rack& rack);
    void renameRack(const Rack& rack);
    void removeRack(const Rack& rack);
    void removeShelf(const Shelf& shelf);

    FormPanel* m_panel = nullptr;
    QLineEdit* m_name = nullptr;
    QComboBox* m_units = nullptr;
    QLineEdit* m_currency = nullptr;
    TimeField* m_morning = nullptr;
    TimeField* m_evening = nullptr;
    NumberField* m_length = nullptr;
    NumberField* m_width = nullptr;
    QVBoxLayout* m_racks = nullptr;
    std::vector<ShelfFields> m_shelves;
    std::optional<RoomLayout> m_shown;
};

} // namespace plumule::ui
