#include "ui/trial/trial_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "ui/medium/marker.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

namespace {

QLineEdit* lineNamed(const char* name)
{
    auto* field = new QLineEdit;
    field->setObjectName(QString::fromLatin1(name));
    return field;
}

} // namespace

TrialDialog::TrialDialog(Journal& journal, Services services, const Trial& trial, QWidget* parent)
    : RecordDialog(journal, services, "trialDialog", tr("Change the trial"), parent)
    , m_trial(trial)
{
    wish({scaled(520), 0});
    buildFields();
    addRemove("trialRemove", tr("Remove a trial"), trial.name,
              [this] { return this->journal().trials().remove(m_trial.id); });
    addSave("trialSave", tr("Save"));
    fill();
}

void TrialDialog::buildFields()
{
    auto* form = fieldForm();
    m_code = lineNamed("trialCode");
    m_name = lineNamed("trialName");
    m_question = lineNamed("trialQuestion");
    m_margin = new NumberField;
    m_margin->setObjectName("trialMargin");
    m_control = new QComboBox;
    m_control->setObjectName("trialControl");
    m_note = lineNamed("trialNote");
    form->addRow(tr("Code"), m_code);
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Question"), m_question);
    form->addRow(tr("Difference that matters"), m_margin);
    form->addRow(tr("Control"), m_control);
    form->addRow(tr("Note"), m_note);
    body()->addLayout(form);
}

void TrialDialog::fill()
{
    if (const auto layout = journal().room().layout()) {
        m_units = layout->room.units;
    }
    m_code->setText(QString::fromStdString(m_trial.code));
    m_name->setText(QString::fromStdString(m_trial.name));
    m_question->setText(QString::fromStdString(m_trial.question));
    m_note->setText(QString::fromStdString(m_trial.note));
    showMass(*m_margin, m_trial.margin, m_units);
    m_control->addItem(tr("none"));
    for (const Medium& each : journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
        addChoice(*m_control, QString::fromStdString(each.name), each.id, markerIcon(each.marker));
    }
    choose(*m_control, m_trial.control);
}

std::optional<QString> TrialDialog::save()
{
    const auto margin = massIn(*m_margin, m_units);
    m_margin->markWrong(!margin);
    if (!margin) {
        refuse(sentence(margin.error()));
        return std::nullopt;
    }
    m_trial.code = m_code->text().trimmed().toStdString();
    m_trial.name = m_name->text().trimmed().toStdString();
    m_trial.question = m_question->text().trimmed().toStdString();
    m_trial.note = m_note->text().trimmed().toStdString();
    m_trial.margin = *margin;
    m_trial.control = chosen<MediumId>(*m_control);
    const auto saved = journal().trials().save(m_trial);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Saved trial %1.").arg(QString::fromStdString(saved->code));
}

} // namespace plumule::ui

#include "moc_trial_dialog.cpp"
