#pragma once

#include "core/cost/cost.h"
#include "ui/page/record_part.h"

#include <optional>
#include <vector>

class QFormLayout;

namespace plumule::ui {

class NumberField;
class PriceFields;

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
    void buildLabour();
    void show(qint64 id) override;
    void forget() override { m_shown.reset(); }
    void showLabour();
    bool save() override;
    void remove() override;
    void saveLabour(LabourKind kind, NumberField& field);
    [[nodiscard]] std::vector<Price> prices() const;

    PriceFields* m_fields = nullptr;
    QFormLayout* m_labour = nullptr;
    std::vector<LabourTask> m_shownLabour;
    std::optional<Price> m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric;
};

} // namespace plumule::ui
