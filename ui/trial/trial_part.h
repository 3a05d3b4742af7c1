#pragma once

#include "ui/shared/setup_part.h"

class QComboBox;
class QLineEdit;

namespace plumule::ui {

class MasterDetail;
class NumberField;

// Trials: a question, the margin that would change what is done, and the control.
class TrialPart : public SetupPart
{
    Q_OBJECT

public:
    TrialPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    void show(qint64 id);
    void save();
    void remove();

    MasterDetail* m_records = nullptr;
    QLineEdit* m_code = nullptr;
    QLineEdit* m_name = nullptr;
    QLineEdit* m_question = nullptr;
    NumberField* m_margin = nullptr;
    QComboBox* m_control = nullptr;
    QLineEdit* m_note = nullptr;
    std::optional<Trial> m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric;
};

} // namespace plumule::ui
