#pragma once

#include "core/trial/trial.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

class QComboBox;
class QLineEdit;

namespace plumule::ui {

class NumberField;

// Changes what a trial asks: code, name, question, margin, control, note. Its trays stay.
class TrialDialog : public FormDialog
{
    Q_OBJECT

public:
    TrialDialog(Journal& journal, Services services, const Trial& trial, QWidget* parent = nullptr);

private:
    void buildFields();
    void fill();
    void save();
    void remove();

    Journal& m_journal;
    Services m_services;
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
