#include "ui/trial/trial_part.h"

#include "ui/medium/marker.h"
#include "ui/shared/amount_field.h"
#include "ui/shared/master_detail.h"
#include "ui/shared/theme.h"

#include <QComboBox>
#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

TrialPart::TrialPart(Journal& journal, Services services, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_records = new MasterDetail(tr("New trial"));
    column->addWidget(m_records);
    m_code = new QLineEdit;
    m_code->setObjectName("trialCode");
    m_code->setPlaceholderText(tr("the next free one"));
    m_name = new QLineEdit;
    m_name->setObjectName("trialName");
    m_question = new QLineEdit;
    m_question->setObjectName("trialQuestion");
    m_margin = new NumberField;
    m_margin->setObjectName("trialMargin");
    m_margin->setPlaceholderText(tr("a tray"));
    m_control = new QComboBox;
    m_control->setObjectName("trialControl");
    m_note = new QLineEdit;
    m_note->setObjectName("trialNote");
    QFormLayout* form = m_records->form();
    form->addRow(tr("Code"), m_code);
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Question"), m_question);
    form->addRow(tr("Difference that matters"), m_margin);
    form->addRow(tr("Control"), m_control);
    form->addRow(tr("Note"), m_note);
    connect(m_records, &MasterDetail::chosenByHand, this, &TrialPart::show);
    connect(m_records, &MasterDetail::saveAsked, this, &TrialPart::save);
    connect(m_records, &MasterDetail::removeAsked, this, &TrialPart::remove);
}

QString TrialPart::name() const
{
    return tr("Trials");
}

bool TrialPart::concerns(Concept about) const
{
    return about == Concept::Trial || about == Concept::Medium || about == Concept::Room;
}

void TrialPart::reload()
{
    const QVariant kept = m_control->currentData();
    m_control->clear();
    m_control->addItem(tr("none"), qlonglong{0});
    for (const Medium& each : journal().media().all(true).value_or(std::vector<Medium>())) {
        m_control->addItem(markerIcon(each.marker), QString::fromStdString(each.name),
                           static_cast<qlonglong>(each.id.value));
    }
    m_control->setCurrentIndex(std::max(0, m_control->findData(kept)));
    std::vector<MasterDetail::Item> items;
    for (const Trial& each : journal().trials().all().value_or(std::vector<Trial>())) {
        items.push_back({each.id.value, QString::fromStdString(each.code + "  " + each.name), {}});
    }
    m_records->setItems(items);
    show(m_records->chosen());
}

void TrialPart::show(qint64 id)
{
    Trial trial;
    for (const Trial& each : journal().trials().all().value_or(std::vector<Trial>())) {
        if (each.id.value == id) {
            trial = each;
        }
    }
    // What is being typed stays, unless the record itself or the units of its margin changed.
    const UnitSystem unitsNow = room().units;
    if (m_shown == trial && m_shownIn == unitsNow) {
        return;
    }
    m_shown = trial;
    m_shownIn = unitsNow;
    m_code->setText(QString::fromStdString(trial.code));
    m_name->setText(QString::fromStdString(trial.name));
    m_question->setText(QString::fromStdString(trial.question));
    showMass(*m_margin, trial.margin, unitsNow);
    m_control->setCurrentIndex(std::max(
        0, m_control->findData(static_cast<qlonglong>(trial.control.value_or(MediumId()).value))));
    m_note->setText(QString::fromStdString(trial.note));
}

void TrialPart::save()
{
    const auto margin = massIn(*m_margin, m_shownIn);
    m_margin->markWrong(!margin);
    if (!margin) {
        services().messages.refuse(sentence(margin.error()));
        return;
    }
    Trial trial = m_shown.value_or(Trial());
    trial.id = TrialId{m_records->chosen()};
    trial.code = m_code->text().trimmed().toStdString();
    trial.name = m_name->text().trimmed().toStdString();
    trial.question = m_question->text().trimmed().toStdString();
    trial.margin = *margin;
    const qint64 control = m_control->currentData().toLongLong();
    trial.control = control == 0 ? std::nullopt : std::optional(MediumId{control});
    trial.note = m_note->text().trimmed().toStdString();
    if (!trial.startedOn) {
        trial.startedOn = journal().clock().today();
    }
    const auto saved = journal().trials().save(trial);
    if (settle(saved, tr("Saved trial %1.").arg(m_name->text()))) {
        m_records->choose(saved->id.value);
    }
}

void TrialPart::remove()
{
    services().ask.confirm(this, tr("Remove a trial"), tr("Remove %1?").arg(m_name->text()),
                           tr("Remove"), [this] {
                               if (settle(journal().trials().remove(TrialId{m_records->chosen()}),
                                          tr("Removed the trial."))) {
                                   m_records->choose(0);
                               }
                           });
}

} // namespace plumule::ui
