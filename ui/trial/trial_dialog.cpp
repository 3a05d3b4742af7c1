#include "ui/trial/trial_dialog.h"

#include "ui/medium/marker.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

TrialDialog::TrialDialog(Journal& journal, Services services, const Trial& trial, QWidget* parent)
    : QDialog(parent)
    , m_journal(journal)
    , m_services(services)
    , m_trial(trial)
{
    setObjectName("trialDialog");
    setWindowTitle(tr("Change the trial"));
    setMinimumWidth(scaled(520));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(20));
    column->addWidget(label(tr("Change the trial"), "title"));
    auto* form = fieldForm();
    const auto line = [](const char* name) {
        auto* field = new QLineEdit;
        field->setObjectName(name);
        return field;
    };
    m_code = line("trialCode");
    m_name = line("trialName");
    m_question = line("trialQuestion");
    m_margin = new NumberField;
    m_margin->setObjectName("trialMargin");
    m_control = new QComboBox;
    m_control->setObjectName("trialControl");
    m_note = line("trialNote");
    form->addRow(tr("Code"), m_code);
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Question"), m_question);
    form->addRow(tr("Difference that matters"), m_margin);
    form->addRow(tr("Control"), m_control);
    form->addRow(tr("Note"), m_note);
    column->addLayout(form);
    m_refusal = label(QString(), "warning");
    m_refusal->setWordWrap(true);
    m_refusal->setObjectName("trialRefusal");
    column->addWidget(m_refusal);
    auto* row = new QHBoxLayout;
    auto* removing = button(tr("Remove"), "danger");
    removing->setObjectName("trialRemove");
    auto* leave = button(tr("Cancel"));
    auto* saving = button(tr("Save"), "primary");
    saving->setObjectName("trialSave");
    saving->setDefault(true);
    row->addWidget(removing);
    row->addStretch(1);
    row->addWidget(leave);
    row->addWidget(saving);
    column->addLayout(row);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    connect(saving, &QPushButton::clicked, this, &TrialDialog::save);
    connect(removing, &QPushButton::clicked, this, &TrialDialog::remove);
    fill();
}

void TrialDialog::fill()
{
    if (const auto layout = m_journal.room().layout()) {
        m_units = layout->room.units;
    }
    m_code->setText(QString::fromStdString(m_trial.code));
    m_name->setText(QString::fromStdString(m_trial.name));
    m_question->setText(QString::fromStdString(m_trial.question));
    m_note->setText(QString::fromStdString(m_trial.note));
    showMass(*m_margin, m_trial.margin, m_units);
    m_control->addItem(tr("none"));
    for (const Medium& each : m_journal.media().all(true).value_or(std::vector<Medium>())) {
        addChoice(*m_control, QString::fromStdString(each.name), each.id, markerIcon(each.marker));
    }
    choose(*m_control, m_trial.control);
}

void TrialDialog::save()
{
    const auto margin = massIn(*m_margin, m_units);
    m_margin->markWrong(!margin);
    if (!margin) {
        m_refusal->setText(sentence(margin.error()));
        return;
    }
    m_trial.code = m_code->text().trimmed().toStdString();
    m_trial.name = m_name->text().trimmed().toStdString();
    m_trial.question = m_question->text().trimmed().toStdString();
    m_trial.note = m_note->text().trimmed().toStdString();
    m_trial.margin = *margin;
    m_trial.control = chosen<MediumId>(*m_control);
    const auto saved = m_journal.trials().save(m_trial);
    if (!saved) {
        m_refusal->setText(sentence(saved.error()));
        return;
    }
    m_services.messages.tell(tr("Saved trial %1.").arg(QString::fromStdString(saved->code)));
    accept();
}

void TrialDialog::remove()
{
    m_services.ask.confirm(this, tr("Remove a trial"), tr("Remove %1?").arg(m_name->text()),
                           tr("Remove"), [this] {
                               const auto removed = m_journal.trials().remove(m_trial.id);
                               if (!removed) {
                                   m_refusal->setText(sentence(removed.error()));
                                   return;
                               }
                               accept();
                           });
}

} // namespace plumule::ui

#include "moc_trial_dialog.cpp"
