#include "ui/cost/work_time_dialog.h"

#include "core/journal/cost/work_time_entries.h"
#include "ui/cost/work_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

WorkTimeDialog::WorkTimeDialog(Journal& journal, Services services, const WorkTime& work,
                               QWidget* parent)
    : RecordDialog(journal, services, "workTimeDialog", tr("How long did it take?"), parent)
    , m_work(work)
{
    wish({scaled(480), scaled(420)});
    if (work.id.isStored() && work.isRunning()) {
        askOfTimer();
    }
    buildFields();
    if (work.id.isStored()) {
        addRemove("workTimeRemove",
                  work.isRunning() ? tr("Throw the timer away") : tr("Remove a time"),
                  tr("this time of %1").arg(nameOf(work.task)).toStdString(),
                  [this] { return this->journal().workTimes().remove(m_work.id); });
    }
    addSave("saveWorkTime", tr("Save"));
    panel()->settle();
}

void WorkTimeDialog::askOfTimer()
{
    auto* words =
        label(tr("The timer of %1 has run since %2. Cancel leaves it running.")
                  .arg(nameOf(m_work.task), begunText(m_work, journal().clock().today())));
    words->setObjectName("workTimeWords");
    words->setWordWrap(true);
    body()->addWidget(words);
}

void WorkTimeDialog::buildFields()
{
    m_task = new QComboBox;
    m_task->setObjectName("workTask");
    for (const LabourKind task : kLabourKinds) {
        addChoice(*m_task, nameOf(task), task);
    }
    choose(*m_task, m_work.task);
    m_on = new DateField("workOn");
    m_on->setDate(m_work.on);
    m_at = new TimeField("workAt");
    m_at->setMinute(m_work.minute);
    m_minutes = new NumberField(tr("min"));
    m_minutes->setObjectName("workMinutes");
    m_minutes->setRange(0, 14'400);
    m_times = new NumberField;
    m_times->setObjectName("workTimes");
    m_times->setRange(1, 10'000);
    fillAmounts();
    auto* form = fieldForm();
    form->addRow(tr("Work"), m_task);
    form->addRow(tr("On"), m_on);
    form->addRow(tr("From"), m_at);
    form->addRow(tr("It took"), m_minutes);
    form->addRow(tr("How often: trays or pieces"), m_times);
    body()->addLayout(form);
    body()->addStretch(1);
}

// Of a timer what it says so far, unless it was forgotten: then nothing is guessed.
void WorkTimeDialog::fillAmounts()
{
    const auto counted = m_work.isRunning() && m_work.id.isStored()
                             ? journal().workTimes().timesOf(m_work)
                             : Result<std::optional<int>>(m_work.times);
    if (m_work.seconds) {
        m_minutes->setNumber(*m_work.seconds / 60.0, 2);
    } else if (m_work.id.isStored()) {
        const WorkMoment now = workMomentOf(journal().clock());
        if (!isForgotten(m_work, now)) {
            m_minutes->setNumber(secondsUntil(m_work, now) / 60.0, 2);
        }
    }
    if (counted && counted->value_or(0) > 0) {
        m_times->setNumber(**counted, 0);
    }
}

std::optional<QString> WorkTimeDialog::save()
{
    const auto minutes = m_minutes->number();
    const auto times = m_times->number();
    m_minutes->markWrong(!minutes || !*minutes);
    m_times->markWrong(!times || !*times);
    if (!m_on->requireDate() || !m_at->requireTime()) {
        refuse(m_on->date() ? howToWriteATime() : howToWriteADay());
        return std::nullopt;
    }
    if (!minutes || !*minutes || !times || !*times) {
        refuse(tr("Please give the minutes, and for how many trays or pieces."));
        return std::nullopt;
    }
    WorkTime work = m_work;
    work.task = chosenOf<LabourKind>(*m_task);
    work.on = *m_on->date();
    work.minute = *m_at->minute();
    work.seconds = qRound(**minutes * 60);
    work.times = qRound(**times);
    const auto saved = journal().workTimes().save(work);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Wrote down the time of %1.").arg(nameOf(work.task));
}

} // namespace plumule::ui

#include "moc_work_time_dialog.cpp"
