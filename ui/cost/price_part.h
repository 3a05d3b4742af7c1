#pragma once

#include "ui/page/setup_part.h"

class QComboBox;
class QDateEdit;
class QFormLayout;
class QLabel;

namespace plumule::ui {

class MasterDetail;
class NumberField;

// Dated prices, and the minutes that each kind of work takes.
class PricePart : public SetupPart
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
    void show(qint64 id);
    void showUnit();
    void showLabour();
    void save();
    void remove();
    void saveLabour(LabourKind kind, NumberField& field);
    [[nodiscard]] std::vector<Price> prices() const;

    MasterDetail* m_records = nullptr;
    QComboBox* m_item = nullptr;
    QComboBox* m_medium = nullptr;
    QDateEdit* m_from = nullptr;
    NumberField* m_amount = nullptr;
    QLabel* m_unit = nullptr;
    QFormLayout* m_labour = nullptr;
    std::vector<LabourTask> m_shownLabour;
    std::optional<Price> m_shown;
    std::vector<Medium> m_media;
};

} // namespace plumule::ui
