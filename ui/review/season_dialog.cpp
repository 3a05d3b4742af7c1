#include "ui/review/season_dialog.h"

#include "core/journal/review/season_entries.h"
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
    : RecordDialog(journal, services, "seasonDialog",
                   season.name.empty() ? tr("A new season") : tr("Change the season"), parent)
    , m_season(season)
{
    wish({scaled(560), 0});
    buildFields();
    if (m_season.id.isStored()) {
        addRemove("seasonRemove", tr("Remove a season"), season.name,
                  [this] { return this->journal().seasons().remove(m_season.id); });
    }
    addSave("seasonSave", tr("Save"));
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
    m_planned->setPlaceholderText(tr("not planned"));
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
                 "choose what counts. Without a plan it is looked at after every sowing."),
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

std::optional<QString> SeasonDialog::save()
{
    if (!m_startsOn->requireDate()) {
        refuse(howToWriteADay());
        return std::nullopt;
    }
    bool isNumber = true;
    const QString planned = m_planned->text().trimmed();
    const int trials = planned.isEmpty() ? 0 : planned.toInt(&isNumber);
    markWrong(*m_planned, !isNumber);
    if (!isNumber) {
        refuse(tr("Please write the trials planned as a whole number, or leave the field empty."));
        m_planned->setFocus();
        return std::nullopt;
    }
    m_season.name = m_name->text().trimmed().toStdString();
    m_season.startsOn = *m_startsOn->date();
    m_season.plannedTrials = planned.isEmpty() ? std::nullopt : std::optional(trials);
    m_season.mainMetric = chosenOf<Response>(*m_metric);
    const auto saved = journal().seasons().save(m_season);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Saved the season %1.").arg(QString::fromStdString(saved->name));
}

} // namespace plumule::ui

#include "moc_season_dialog.cpp"
