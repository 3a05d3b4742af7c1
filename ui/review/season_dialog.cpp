#include "ui/review/season_dialog.h"

#include "core/review/season/season_rules.h"
#include "ui/review/metric_text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

SeasonDialog::SeasonDialog(Journal& journal, Services services, const Season& season,
                           QWidget* parent)
    : FormDialog(services.ask, "seasonDialog",
                 season.name.empty() ? tr("A new season") : tr("Change the season"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_season(season)
{
    wish({scaled(560), 0});
    buildFields();
    if (m_season.id.isStored()) {
        connect(addLeftButton(tr("Remove"), "seasonRemove", "danger"), &QPushButton::clicked, this,
                &SeasonDialog::remove);
    }
    addCancel();
    connect(addButton(tr("Save"), "seasonSave", "primary"), &QPushButton::clicked, this,
            &SeasonDialog::save);
    fill();
}

void SeasonDialog::buildFields()
{
    auto* form = fieldForm();
    m_name = new QLineEdit;
    m_name->setObjectName("seasonName");
    m_startsOn = new DateField("seasonStart");
    m_planned = new QLineEdit;
    m_planned->setObjectName("seasonPlanned");
    m_planned->setPlaceholderText(tr("empty: looked at after every sowing"));
    m_metric = new QComboBox;
    m_metric->setObjectName("seasonMetric");
    for (const Response response : kResponses) {
        addChoice(*m_metric, metricName(response), response);
    }
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Sowings from"), m_startsOn);
    form->addRow(tr("Trials planned"), m_planned);
    form->addRow(tr("What is asked first"), m_metric);
    body()->addLayout(form);
    auto* words =
        label(tr("A season is one series of sowings with one answer. First day, plan and "
                 "main metric are chosen before its first harvest: what was seen must not "
                 "choose what counts."),
              "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
}

void SeasonDialog::fill()
{
    m_name->setText(QString::fromStdString(m_season.name));
    m_startsOn->setDate(m_season.startsOn);
    if (m_season.plannedTrials) {
        m_planned->setText(QString::number(*m_season.plannedTrials));
    }
    choose(*m_metric, m_season.mainMetric);
}

void SeasonDialog::save()
{
    if (!m_startsOn->requireDate()) {
        return;
    }
    bool isNumber = true;
    const QString planned = m_planned->text().trimmed();
    const int trials = planned.isEmpty() ? 0 : planned.toInt(&isNumber);
    markWrong(*m_planned, !isNumber);
    if (!isNumber) {
        return;
    }
    m_season.name = m_name->text().trimmed().toStdString();
    m_season.startsOn = *m_startsOn->date();
    m_season.plannedTrials = planned.isEmpty() ? std::nullopt : std::optional(trials);
    m_season.mainMetric = chosenOf<Response>(*m_metric);
    const auto saved = m_journal.seasons().save(m_season);
    if (!saved) {
        refuse(sentence(saved.error()));
        return;
    }
    m_services.messages.tell(tr("Saved the season %1.").arg(QString::fromStdString(saved->name)));
    accept();
}

void SeasonDialog::remove()
{
    m_services.ask.confirm(this, tr("Remove a season"), tr("Remove %1?").arg(m_name->text()),
                           tr("Remove"), [this] {
                               const auto removed = m_journal.seasons().remove(m_season.id);
                               if (!removed) {
                                   refuse(sentence(removed.error()));
                                   return;
                               }
                               accept();
                           });
}

} // namespace plumule::ui

#include "moc_season_dialog.cpp"
