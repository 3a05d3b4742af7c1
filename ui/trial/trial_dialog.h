#pragma once

#include "core/trial/trial.h"
#include "ui/page/page.h"

#include <QDialog>

class QComboBox;
class QLineEdit;

namespace plumule::ui {

class NumberField;

// Changes what a trial asks: code, name, question, margin, control, note. Its trays stay.
class TrialDialog : public QDialog
{
    Q_OBJECT

public:
    TrialDialog(Journal& journal, Services services, const Trial& trial, QWidget* parent = nullptr);

private:
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
    QLabel* m_refusal = nullptr;
};

} // namespace plumule::ui
