#include "ui/tray/start_dialog.h"

#include "ui/widget/date_field.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QVBoxLayout>

namespace plumule::ui {

StartDialog::StartDialog(Ask& ask, const QString& what, Moment present, QWidget* parent)
    : FormDialog(ask, "startDialog", tr("When did %1 really begin?").arg(what), parent)
    , m_day(new DateField("startDay"))
    , m_time(new TimeField("startTime"))
{
    m_day->setAccessibleName(tr("Day"));
    m_day->setDate(present.date);
    m_time->setAccessibleName(tr("Time"));
    m_time->setMinute(present.minute);
    auto* fields = new QHBoxLayout;
    fields->addWidget(m_day, 2);
    fields->addWidget(m_time, 1);
    body()->addLayout(fields);
    addCancel();
    connect(addButton(tr("Save"), "startSave", "primary"), &QPushButton::clicked, this,
            &StartDialog::save);
}

void StartDialog::save()
{
    const bool hasDay = m_day->requireDate();
    if (!hasDay || !m_time->requireTime()) {
        refuse(hasDay ? howToWriteATime() : howToWriteADay());
        return;
    }
    Q_EMIT chosen(*m_day->date(), *m_time->minute());
    accept();
}

} // namespace plumule::ui

#include "moc_start_dialog.cpp"
