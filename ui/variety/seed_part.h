#pragma once

#include "ui/page/setup_part.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;

namespace plumule::ui {

class MasterDetail;
class NumberField;

// Seed lots: one purchase of one variety's seed, with what is left of it.
class SeedPart : public SetupPart
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
    void show(qint64 id);
    void save();
    void remove();
    void count();
    [[nodiscard]] std::vector<SeedLotStock> lots() const;

    MasterDetail* m_records = nullptr;
    QComboBox* m_variety = nullptr;
    QLineEdit* m_number = nullptr;
    QLineEdit* m_supplier = nullptr;
    QDateEdit* m_boughtOn = nullptr;
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
