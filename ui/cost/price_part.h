#pragma once

#include "ui/page/record_part.h"
#include "ui/text/price_units.h"

class QComboBox;
class QFormLayout;

namespace plumule::ui {

class DateField;
class NumberField;

// Dated prices, and the minutes that each kind of work takes.
class PricePart : public RecordPart
{
    Q_OBJECT

public:
    PricePart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    void buildForm();
    void buildLabour();
    void show(qint64 id) override;
    void forget() override { m_shown.reset(); }
    void fillUnits();
    void chooseUnit(PriceMeasure measure);
    void turnAmount();
    [[nodiscard]] const PriceUnit& unit() const;
    void showLabour();
    bool save() override;
    void remove() override;
    void saveLabour(LabourKind kind, NumberField& field);
    [[nodiscard]] std::vector<Price> prices() const;

    QComboBox* m_item = nullptr;
    QComboBox* m_medium = nullptr;
    DateField* m_from = nullptr;
    NumberField* m_amount = nullptr;
    QComboBox* m_unit = nullptr;
    QFormLayout* m_labour = nullptr;
    std::vector<PriceUnit> m_units;              // as m_unit lists them
    PriceMeasure m_measure = PriceMeasure::Unit; // that the amount is shown for
    std::vector<LabourTask> m_shownLabour;
    std::optional<Price> m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric;
    std::vector<Medium> m_media;
};

} // namespace plumule::ui
