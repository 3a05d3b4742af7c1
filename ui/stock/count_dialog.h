#pragma once

#include "core/stock/stock.h"
#include "core/variety/variety.h"
#include "ui/page/record_dialog.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;

namespace plumule::ui {

class DateField;
class NumberField;

// The shelf was counted, or something was bought: which thing, how much, on which day. A new seed
// lot and a new thing to keep are written down here too.
class CountDialog : public RecordDialog
{
    Q_OBJECT

public:
    CountDialog(Journal& journal, Services services, StockEvent what, const Stock& stock,
                QWidget* parent = nullptr);

    void chooseItem(const StockItem& item);
    void chooseLot(SeedLotId lot);

private:
    // What a row of the list stands for.
    struct Thing
    {
        enum class Of
        {
            Lot,
            Item,
            NewLot,
            NewItem
        };
        Of of = Of::Item;
        SeedLotStock lot = {};
        StockItem item = {};
        std::optional<StockAmount> left = {};
    };

    std::optional<QString> save() override;
    void fillThings(const Stock& stock);
    void buildFields();
    void buildNewLot();
    void buildNewItem();
    void showThing();
    void addThing(const QString& name, Thing thing, const QIcon& icon = {});
    [[nodiscard]] const Thing& thing() const;
    [[nodiscard]] StockItem typedItem() const;
    [[nodiscard]] StockUnit unit() const;
    [[nodiscard]] std::optional<QString> saveLotCount();
    [[nodiscard]] std::optional<QString> saveNewLot();
    [[nodiscard]] std::optional<QString> saveItem();
    // The amount in the field; none, and said why, where it can't be.
    [[nodiscard]] std::optional<StockAmount> typedAmount();
    // Asks once about a count that is far from what should be left; true where it is to be kept.
    [[nodiscard]] bool isMeant(double counted, double expected, const QString& expectedWords);

    StockEvent m_what;
    std::optional<double> m_doubted; // the count that was asked about
    UnitSystem m_units = UnitSystem::Metric;
    std::vector<Thing> m_things;
    QComboBox* m_list = nullptr;
    QLabel* m_left = nullptr;
    DateField* m_day = nullptr;
    NumberField* m_amount = nullptr;
    QLineEdit* m_note = nullptr;
    QWidget* m_newLot = nullptr;
    QComboBox* m_variety = nullptr;
    QLineEdit* m_number = nullptr;
    QLineEdit* m_supplier = nullptr;
    NumberField* m_price = nullptr;
    NumberField* m_germination = nullptr;
    QWidget* m_newItem = nullptr;
    QLineEdit* m_name = nullptr;
    QComboBox* m_kind = nullptr;
    QComboBox* m_unit = nullptr;
};

} // namespace plumule::ui
