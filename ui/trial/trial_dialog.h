#pragma once

#include "core/trial/trial.h"
#include "ui/page/record_dialog.h"

class QComboBox;
class QLineEdit;

namespace plumule::ui {

class NumberField;

// Changes what a trial asks: code, name, question, margin, control, note. Its trays stay.
class TrialDialog : public RecordDialog
{
    Q_OBJECT

public:
    TrialDialog(Journal& journal, Services services, const Trial& trial, QWidget* parent = nullptr);

private:
    void buildFields();
    void fill();
    [[nodiscard]] std::optional<QString> save() override;

    Trial m_trial;
    UnitSystem m_units = UnitSystem::Metric;
    QLineEdit* m_code = nullptr;
    QLineEdit* m_name = nullptr;
    QLineEdit* m_question = nullptr;
    NumberField* m_margin = nullptr;
    QComboBox* m_control = nullptr;
    QLineEdit* m_note = nullptr;
};

} // namespace plumule::ui
