#pragma once

#include "ui/page/record_part.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace plumule::ui {

class DateField;
class NumberField;

// Seed lots: one purchase of one variety's seed, with what is left of it.
class SeedPart : public RecordPart
{
    Q_OBJECT

public:
    SeedPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    void buildForm();
    void buildCounting();
    void show(qint64 id) override;
    void forget() override { m_shown.reset(); }
    bool save() override;
    void remove() override;
    void count();
    [[nodiscard]] std::vector<SeedLotStock> lots() const;

    QComboBox* m_variety = nullptr;
    QLineEdit* m_number = nullptr;
    QLineEdit* m_supplier = nullptr;
    DateField* m_boughtOn = nullptr;
    NumberField* m_bought = nullptr;
    NumberField* m_price = nullptr;
    NumberField* m_germination = nullptr;
    QLineEdit* m_note = nullptr;
    QCheckBox* m_usedUp = nullptr;
    QLabel* m_left = nullptr;
    NumberField* m_found = nullptr;
    QLineEdit* m_reason = nullptr;
    std::optional<SeedLot> m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric; // the units the fields are shown in
};

} // namespace plumule::ui
