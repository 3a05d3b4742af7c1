#pragma once

#include "core/watering/watering.h"
#include "ui/page/page.h"

#include <array>

class QLineEdit;

namespace plumule::ui {

class FormPanel;
class NumberField;

// How the three kinds of water are made: what is added, how much, and the bands to set. Each is
// saved by its own button.
class RecipeForm : public QWidget
{
    Q_OBJECT

public:
    RecipeForm(Journal& journal, Services services, QWidget* parent = nullptr);

    // Reads again; what was typed and not saved is left where its recipe did not change.
    void reload();
    // Whether a recipe was changed and not saved.
    [[nodiscard]] bool isChanged() const;
    // Saves each that was changed; false, and said why, where one is refused.
    bool saveChanged();

private:
    struct Fields
    {
        WaterRecipe shown;
        QLineEdit* concentrate = nullptr;
        NumberField* dose = nullptr; // mL/L or fl oz/gal
        NumberField* phLow = nullptr;
        NumberField* phHigh = nullptr;
        NumberField* ecLow = nullptr;
        NumberField* ecHigh = nullptr;
        QPushButton* save = nullptr;
        FormPanel* panel = nullptr;
        bool isFilled = false;

        [[nodiscard]] std::vector<NumberField*> numbers() const
        {
            return {dose, phLow, phHigh, ecLow, ecHigh};
        }
    };

    void build();
    [[nodiscard]] QWidget* buildRecipe(WaterKind water, Fields& fields);
    void buildFields(WaterKind water, Fields& fields);
    void fill(Fields& fields, const WaterRecipe& recipe);
    // False, and said why, where it is refused.
    bool save(Fields& fields);
    // None, with what is wrong marked.
    [[nodiscard]] std::optional<WaterRecipe> typed(const Fields& fields) const;
    [[nodiscard]] QString doseUnit() const;

    Journal& m_journal;
    Services m_services;
    UnitSystem m_units = UnitSystem::Metric;
    std::array<Fields, 3> m_recipes; // plain, pH-set, nutrient
};

} // namespace plumule::ui
