#include "ui/week/repeat_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/week/week_entries.h"
#include "core/tray/sowing_rules.h"
#include "core/week/repeat_rules.h"
#include "ui/medium/marker.h"
#include "ui/page/undoing.h"
#include "ui/text/form_reason.h"
#include "ui/week/week_text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kWeekdays = 7;
constexpr int kUsualDays = 7;

} // namespace

RepeatDialog::RepeatDialog(Journal& journal, Services services, const Repeat& repeat,
                           QWidget* parent)
    : RecordDialog(journal, services, "repeatDialog",
                   repeat.id.isStored() ? tr("Change the repeating sowing")
                                        : tr("A repeating sowing"),
                   parent)
    , m_repeat(repeat)
    , m_services(services)
{
    wish({scaled(720), 0});
    makeFields();
    buildFields();
    if (m_repeat.id.isStored()) {
        addEnd();
    }
    addSave("repeatSave", tr("Save"));
    fillChoices();
    fill();
    connect(m_rhythm, &QComboBox::currentIndexChanged, this, &RepeatDialog::showRhythm);
    showRhythm();
}

void RepeatDialog::makeFields()
{
    m_variety = new QComboBox;
    m_variety->setObjectName("repeatVariety");
    m_medium = new QComboBox;
    m_medium->setObjectName("repeatMedium");
    for (QComboBox* box : {m_variety, m_medium}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(12);
    }
    m_trays = new QSpinBox;
    m_trays->setObjectName("repeatTrays");
    m_trays->setRange(1, kMostTraysAtOnce);
    m_rhythm = new QComboBox;
    m_rhythm->setObjectName("repeatRhythm");
    addChoice(*m_rhythm, tr("on weekdays"), Rhythm::Weekdays);
    addChoice(*m_rhythm, tr("every so many days"), Rhythm::EveryDays);
    m_days = new QSpinBox;
    m_days->setObjectName("repeatDays");
    m_days->setRange(1, kMostDaysBetween);
    m_days->setAccessibleName(tr("Days from one sowing to the next"));
    m_from = new DateField("repeatFrom");
    m_until = new DateField("repeatUntil");
    m_until->setPlaceholderText(tr("goes on"));
}

void RepeatDialog::buildFields()
{
    auto* form = fieldForm();
    form->addRow(tr("Variety"), m_variety);
    form->addRow(tr("Medium"), m_medium);
    form->addRow(tr("Trays"), m_trays);
    form->addRow(tr("Sown"), m_rhythm);
    form->addRow(tr("Weekdays"), buildWeekdays());
    form->addRow(tr("Days between"), m_days);
    form->addRow(tr("From"), m_from);
    form->addRow(tr("Until"), m_until);
    body()->addLayout(form);
    auto* words = label(tr("The days are those of sowing; a soak is proposed before them. Each is "
                           "proposed on the week's page and moved where too few places are free. "
                           "Nothing is sown by itself."),
                        "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
}

QWidget* RepeatDialog::buildWeekdays()
{
    m_weekdays = new QWidget;
    auto* row = new FlowLayout(m_weekdays);
    for (int weekday = 0; weekday < kWeekdays; ++weekday) {
        auto* one = button(weekdayName(weekday), "toggle");
        one->setObjectName(QStringLiteral("weekday%1").arg(weekday + 1));
        one->setCheckable(true);
        row->addWidget(one);
        m_weekday.push_back(one);
    }
    return m_weekdays;
}

void RepeatDialog::addEnd()
{
    const auto endNow = [this] {
        if (const Done ended = journal().week().end(m_repeat.id); !ended) {
            refuse(sentence(ended.error()));
            return;
        }
        tellLast(journal(), m_services);
        accept();
    };
    connect(addLeftButton(tr("End it"), "repeatEnd", "danger"), &QPushButton::clicked, this,
            [this, endNow] {
                m_services.ask.confirm(this, tr("End a repeating sowing"),
                                       tr("Propose it no more from now on? What was sown stays."),
                                       tr("End it"), endNow);
            });
}

void RepeatDialog::fillChoices()
{
    // One that is retired stays in its own repeating sowing's list.
    for (const Variety& each :
         journal().varieties().all(Listed::All).value_or(std::vector<Variety>())) {
        if (!each.isRetired || each.id == m_repeat.variety) {
            addChoice(*m_variety, QString::fromStdString(each.name), each.id);
        }
    }
    for (const Medium& each : journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
        if (!each.isRetired || each.id == m_repeat.medium) {
            addChoice(*m_medium, QString::fromStdString(each.name), each.id,
                      markerIcon(each.marker));
        }
    }
}

void RepeatDialog::fill()
{
    choose(*m_variety, m_repeat.variety);
    choose(*m_medium, m_repeat.medium);
    m_trays->setValue(m_repeat.trays);
    choose(*m_rhythm, m_repeat.everyDays ? Rhythm::EveryDays : Rhythm::Weekdays);
    for (int weekday = 0; weekday < kWeekdays; ++weekday) {
        m_weekday[static_cast<std::size_t>(weekday)]->setChecked(
            (m_repeat.weekdays.value_or(0) & weekdayBit(weekday)) != 0);
    }
    m_days->setValue(m_repeat.everyDays.value_or(kUsualDays));
    m_from->setDate(m_repeat.from);
    m_until->setDate(m_repeat.until);
}

void RepeatDialog::showRhythm()
{
    const bool isByWeekday = chosenOf<Rhythm>(*m_rhythm) == Rhythm::Weekdays;
    m_weekdays->setEnabled(isByWeekday);
    m_days->setEnabled(!isByWeekday);
}

std::optional<QString> RepeatDialog::save()
{
    if (!m_from->requireDate() || m_until->isUnreadable()) {
        refuse(howToWriteADay());
        return std::nullopt;
    }
    Repeat wanted;
    wanted.id = m_repeat.id;
    const auto variety = chosen<VarietyId>(*m_variety);
    const auto medium = chosen<MediumId>(*m_medium);
    if (!variety || !medium) {
        refuse(sentence(fail(ErrorKind::Missing,
                             variety ? FormReason::MediumMissing : FormReason::VarietyMissing)
                            .value()));
        return std::nullopt;
    }
    wanted.variety = *variety;
    wanted.medium = *medium;
    wanted.trays = m_trays->value();
    if (chosenOf<Rhythm>(*m_rhythm) == Rhythm::EveryDays) {
        wanted.everyDays = m_days->value();
    } else {
        int days = 0;
        for (int weekday = 0; weekday < kWeekdays; ++weekday) {
            const bool isOn = m_weekday[static_cast<std::size_t>(weekday)]->isChecked();
            days += isOn ? weekdayBit(weekday) : 0;
        }
        wanted.weekdays = days;
    }
    wanted.from = *m_from->date();
    wanted.until = m_until->date();
    const auto saved = journal().week().save(wanted);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Saved: %1 of %2, %3.")
        .arg(tr("%n tray(s)", nullptr, saved->trays), m_variety->currentText(), rhythmText(*saved));
}

} // namespace plumule::ui

#include "moc_repeat_dialog.cpp"
