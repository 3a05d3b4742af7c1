#include "ui/trial/plan_form.h"

#include "core/base/text_reason.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "ui/medium/marker.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"

#include <QCheckBox>
#include <QMenu>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

void setWords(QLabel& words, const QString& text)
{
    words.setText(text);
    words.setVisible(!text.isEmpty());
}

} // namespace

void PlanForm::wireSignals()
{
    for (QLineEdit* field :
         {m_name, m_question, m_person, static_cast<QLineEdit*>(m_seed),
          static_cast<QLineEdit*>(m_margin), static_cast<QLineEdit*>(m_spread)}) {
        connect(field, &QLineEdit::textEdited, this, &PlanForm::changed);
    }
    for (QComboBox* box : {m_control, m_feeding, m_lot}) {
        connect(box, &QComboBox::activated, this, &PlanForm::changed);
    }
    connect(m_variety, &QComboBox::activated, this, [this] {
        fillLots();
        showProtocol(true);
        Q_EMIT changed();
    });
    connect(m_design, &QComboBox::activated, this, [this] {
        showDesign();
        Q_EMIT changed();
    });
    connect(m_blocks, &QSpinBox::valueChanged, this, [this](int blocks) {
        const QSignalBlocker quiet(m_each);
        const int rounds = std::max(1, (m_each->value() + blocks / 2) / blocks);
        m_each->setSingleStep(blocks);
        m_each->setValue(rounds * blocks);
        Q_EMIT changed();
    });
    connect(m_each, &QSpinBox::valueChanged, this, &PlanForm::changed);
    connect(m_day, &DateField::dateGiven, this, &PlanForm::changed);
    connect(m_time, &TimeField::timeGiven, this, &PlanForm::changed);
    connect(m_soak, &QCheckBox::clicked, this, &PlanForm::changed);
    connect(m_mediaMenu, &QMenu::triggered, this, [this](const QAction* choice) {
        chooseMedium(MediumId{choice->data().toLongLong()}, choice->isChecked());
    });
}

void PlanForm::fillChoices()
{
    if (const auto layout = m_journal.room().layout()) {
        m_units = layout->room.units;
    }
    refill(*m_variety, [this] {
        for (const Variety& each : m_journal.varieties().all().value_or(std::vector<Variety>())) {
            addChoice(*m_variety, QString::fromStdString(each.name), each.id);
        }
    });
    m_mediaMenu->clear();
    for (const Medium& each : m_journal.media().all().value_or(std::vector<Medium>())) {
        QAction* choice = m_mediaMenu->addAction(plainEntry(QString::fromStdString(each.name)));
        choice->setCheckable(true);
        choice->setData(static_cast<qlonglong>(each.id.value));
    }
    fillLots();
    showMedia();
}

void PlanForm::fillLots()
{
    const bool isKept = refill(*m_lot, [this] { addLots(); });
    if (!isKept) {
        m_lot->setCurrentIndex(std::min(1, m_lot->count() - 1));
    }
}

void PlanForm::addLots()
{
    m_lot->addItem(tr("not written down"));
    const auto variety = chosen<VarietyId>(*m_variety);
    if (!variety) {
        return;
    }
    const UnitText text(m_units);
    for (const SeedLotStock& stock :
         m_journal.varieties().lots(*variety).value_or(std::vector<SeedLotStock>())) {
        if (stock.lot.isUsedUp) {
            continue;
        }
        const QString number = QString::fromStdString(stock.lot.lotNumber);
        addChoice(*m_lot,
                  stock.left ? tr("%1, %2 left").arg(number, text.mass(*stock.left, 0)) : number,
                  stock.lot.id);
    }
}

// A soak is offered where the variety's protocol has one.
void PlanForm::showProtocol(bool setsSeed)
{
    const auto protocol = m_journal.varieties().protocol(chosenOf<VarietyId>(*m_variety));
    const bool soaks = protocol && std::any_of(protocol->stages.begin(), protocol->stages.end(),
                                               [](const ProtocolStage& each) {
                                                   return each.stage == Stage::Soak;
                                               });
    m_soak->setVisible(soaks);
    if (!soaks) {
        m_soak->setChecked(false);
    }
    if (protocol) {
        m_seed->setPlaceholderText(protocol->variety.seedPerTray
                                       ? numberText(m_units == UnitSystem::Metric
                                                        ? inGrams(*protocol->variety.seedPerTray)
                                                        : inOunces(*protocol->variety.seedPerTray),
                                                    m_units == UnitSystem::Metric ? 0 : 2)
                                       : QString());
        if (setsSeed) {
            m_seed->clear();
        }
    }
}

void PlanForm::chooseMedium(MediumId medium, bool isChosen)
{
    std::erase(m_media, medium);
    if (isChosen) {
        m_media.push_back(medium);
    }
    showMedia();
    showDesign();
    Q_EMIT changed();
}

void PlanForm::showMedia()
{
    clearLayout(m_mediaNames->layout());
    QStringList names;
    for (QAction* choice : m_mediaMenu->actions()) {
        const MediumId id{choice->data().toLongLong()};
        choice->setChecked(std::find(m_media.begin(), m_media.end(), id) != m_media.end());
    }
    const auto all = m_journal.media().all(Listed::All).value_or(std::vector<Medium>());
    for (const MediumId id : m_media) {
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const Medium& each) { return each.id == id; });
        if (found == all.end()) {
            continue;
        }
        auto* chip = new QWidget;
        auto* row = new QHBoxLayout(chip);
        row->setContentsMargins(0, 0, scaled(6), 0);
        row->setSpacing(scaled(5));
        row->addWidget(new MarkerDot(found->marker));
        row->addWidget(label(QString::fromStdString(found->name)));
        m_mediaNames->layout()->addWidget(chip);
        names << QString::fromStdString(found->name);
    }
    const int media = static_cast<int>(m_media.size());
    m_compared->setText(media == 0   ? tr("Choose the media")
                        : media == 1 ? tr("1 medium")
                                     : tr("%n media", nullptr, media));
    fillControls();
}

void PlanForm::fillControls()
{
    refill(*m_control, [this] {
        m_control->addItem(tr("none"));
        for (const Medium& each :
             m_journal.media().all(Listed::All).value_or(std::vector<Medium>())) {
            if (std::find(m_media.begin(), m_media.end(), each.id) != m_media.end()) {
                addChoice(*m_control, QString::fromStdString(each.name), each.id,
                          markerIcon(each.marker));
            }
        }
    });
}

Design PlanForm::design() const
{
    return chosenOf<Design>(*m_design);
}

// A design that settles a number shows it and lets nobody change it.
void PlanForm::showDesign()
{
    const QSignalBlocker noBlocks(m_blocks);
    const QSignalBlocker noEach(m_each);
    const bool isSquare = design() == Design::LatinSquare;
    const bool inBlocks = design() == Design::RandomizedBlocks;
    m_blocks->setEnabled(inBlocks);
    m_each->setEnabled(!isSquare);
    m_each->setSingleStep(inBlocks ? m_blocks->value() : 1);
    if (isSquare) {
        const int count = static_cast<int>(treatments().size());
        m_each->setValue(count);
        m_blocks->setValue(std::max(2, count));
    } else if (inBlocks) {
        const int rounds =
            std::max(1, (m_each->value() + m_blocks->value() / 2) / m_blocks->value());
        m_each->setValue(rounds * m_blocks->value());
    }
}

std::vector<Treatment> PlanForm::treatments() const
{
    std::vector<Treatment> treatments;
    const auto add = [&](MediumId medium, Feeding feeding) {
        Treatment treatment;
        treatment.trial = m_base.trial.id;
        treatment.position = static_cast<int>(treatments.size());
        treatment.medium = medium;
        treatment.feeding = feeding;
        // What is stored already stays itself.
        const auto stored = static_cast<std::size_t>(treatment.position);
        if (stored < m_base.treatments.size()) {
            treatment.id = m_base.treatments[stored].id;
        }
        treatments.push_back(treatment);
    };
    for (const MediumId medium : m_media) {
        if (chosenOf<bool>(*m_feeding)) {
            add(medium, Feeding::Nutrient);
            add(medium, Feeding::NoNutrient);
        } else {
            add(medium, Feeding::AsProtocol);
        }
    }
    return treatments;
}

void PlanForm::setDraft(const TrialDraft& draft)
{
    const QSignalBlocker quiet(this);
    m_base = draft;
    m_media.clear();
    bool isFedBothWays = false;
    for (const Treatment& each : draft.treatments) {
        if (std::find(m_media.begin(), m_media.end(), each.medium) == m_media.end()) {
            m_media.push_back(each.medium);
        }
        isFedBothWays = isFedBothWays || each.feeding != Feeding::AsProtocol;
    }
    m_name->setText(draft.trial.name == draft.trial.question
                        ? QString()
                        : QString::fromStdString(draft.trial.name));
    m_question->setText(QString::fromStdString(draft.trial.question));
    m_question->setCursorPosition(0);
    choose(*m_feeding, isFedBothWays);
    showMedia();
    choose(*m_control, draft.trial.control);
    choose(*m_variety, draft.plan.variety);
    fillLots();
    choose(*m_lot, draft.plan.seedLot);
    showMass(*m_seed, draft.plan.seedPerTray, m_units);
    showMass(*m_margin, draft.trial.margin, m_units);
    showMass(*m_spread, draft.plan.spread, m_units);
    const QSignalBlocker noBlocks(m_blocks);
    const QSignalBlocker noEach(m_each);
    m_blocks->setValue(draft.plan.blocks);
    m_each->setValue(draft.plan.traysEach);
    choose(*m_design, draft.plan.design);
    m_day->setDate(draft.plan.sowOn);
    m_time->setMinute(draft.plan.sowMinute);
    m_soak->setChecked(draft.plan.startsWithSoak);
    showProtocol(false);
    showDesign();
}

Result<TrialDraft> PlanForm::draft() const
{
    TrialDraft draft = m_base;
    draft.trays.clear();
    draft.treatments = treatments();
    const auto seed = massIn(*m_seed, m_units);
    const auto margin = massIn(*m_margin, m_units);
    const auto spread = massIn(*m_spread, m_units);
    m_seed->markWrong(!seed);
    m_margin->markWrong(!margin);
    m_spread->markWrong(!spread);
    for (const auto* read : {&seed, &margin, &spread}) {
        if (!*read) {
            return passOn(*read);
        }
    }
    if (!m_day->requireDate()) {
        return fail(ErrorKind::Invalid, TextReason::NotADate, m_day->text().toStdString());
    }
    if (!m_time->requireTime()) {
        return fail(ErrorKind::Invalid, TextReason::NotATime, m_time->text().toStdString());
    }
    draft.trial.question = m_question->text().trimmed().toStdString();
    const QString name = m_name->text().trimmed();
    draft.trial.name = (name.isEmpty() ? m_question->text().trimmed() : name).toStdString();
    draft.trial.margin = *margin;
    draft.trial.control = chosen<MediumId>(*m_control);
    draft.plan.variety = chosenOf<VarietyId>(*m_variety);
    draft.plan.seedLot = chosen<SeedLotId>(*m_lot);
    draft.plan.seedPerTray = *seed;
    draft.plan.spread = *spread;
    draft.plan.design = design();
    draft.plan.blocks = m_blocks->value();
    draft.plan.traysEach = m_each->value();
    draft.plan.sowOn = *m_day->date();
    draft.plan.sowMinute = *m_time->minute();
    draft.plan.startsWithSoak = m_soak->isChecked();
    return draft;
}

QString PlanForm::person() const
{
    return m_person->text().trimmed();
}

void PlanForm::setSpreadWords(const QString& words)
{
    setWords(*m_spreadWords, words);
}

void PlanForm::setMarginWords(const QString& words)
{
    setWords(*m_marginWords, words);
}

} // namespace plumule::ui

#include "moc_plan_form.cpp"
