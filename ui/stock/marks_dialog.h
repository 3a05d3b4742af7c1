#pragma once

#include "core/stock/stock.h"
#include "ui/page/record_dialog.h"

class QCheckBox;
class QComboBox;

namespace plumule::ui {

class NumberField;

// From when on one thing is said to run low; and what a cut or a washing takes of it, where trays
// don't tell that by themselves.
class MarksDialog : public RecordDialog
{
    Q_OBJECT

public:
    MarksDialog(Journal& journal, Services services, const Stock& stock, QWidget* parent = nullptr);

private:
    // A variety's seed, or a thing that is kept.
    struct Thing
    {
        std::optional<SeedLow> seed;
        StockItem item = {};
    };

    std::optional<QString> save() override;
    void buildFields();
    void fillThings(const Stock& stock);
    void showThing();
    [[nodiscard]] const Thing& thing() const;
    [[nodiscard]] std::optional<QString> saveSeed(std::optional<int> days);
    [[nodiscard]] std::optional<QString> saveItem(std::optional<int> days);
    // None where the field can't be read.
    [[nodiscard]] std::optional<std::optional<StockAmount>> typed(const NumberField& field) const;

    UnitSystem m_units = UnitSystem::Metric;
    std::vector<Thing> m_things;
    QComboBox* m_list = nullptr;
    NumberField* m_days = nullptr;
    NumberField* m_amount = nullptr;
    NumberField* m_share = nullptr;
    QLabel* m_shareName = nullptr;
    QCheckBox* m_gone = nullptr;
};

} // namespace plumule::ui
