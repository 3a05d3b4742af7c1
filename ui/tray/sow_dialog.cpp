#include "ui/tray/sow_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "ui/medium/marker.h"
#include "ui/text/form_reason.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/check_list.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
SowDialog::SowDialog(Journal& journal, Services services, QWidget* parent)
    : FormDialog(services.ask, "sowDialog", tr("Sow"), parent)
    , m_journal(journal)
{
    if (const auto layout = m_journal.room().layout()) {
        m_units = layout->room.units;
    }
    makeFields();
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(24));
    m_columns->addWidget(buildWhat(), 3);
    m_columns->addWidget(buildWhere(), 2);
    body()->addLayout(m_columns, 1);
    wish({scaled(860), scaled(620)});
    addCancel();
    connect(addButton(tr("Sow"), "sowNow", "primary"), &QPushButton::clicked, this,
            &SowDialog::sow);
    fillChoices();
    wireSignals();
    showVariety();
    showMedium();
    showPlaces();
}

void SowDialog::wireSignals()
{
    connect(m_variety, &QComboBox::currentIndexChanged, this, &SowDialog::showVariety);
    connect(m_medium, &QComboBox::currentIndexChanged, this, &SowDialog::showMedium);
    connect(m_count, &QSpinBox::valueChanged, this, [this] {
        m_places->checkFirst(m_count->value());
        m_pieces->checkFirst(m_count->value());
        showDates();
    });
    connect(m_day, &DateField::dateGiven, this, &SowDialog::showDates);
    connect(m_time, &TimeField::timeGiven, this, &SowDialog::showDates);
    connect(m_soak, &QCheckBox::toggled, this, &SowDialog::showDates);
    connect(m_harvest, &DateField::dateGiven, this, &SowDialog::sowForHarvest);
}

void SowDialog::propose(const SowProposal& proposal)
{
    choose(*m_variety, proposal.variety);
    choose(*m_medium, proposal.medium);
    m_count->setValue(proposal.trays);
    m_soak->setChecked(proposal.beginsWithSoak);
    m_harvest->setDate(proposal.harvest);
    sowForHarvest();
}

void SowDialog::fillChoices()
{
    for (const Variety& each : m_journal.varieties().all().value_or(std::vector<Variety>())) {
        addChoice(*m_variety, QString::fromStdString(each.name), each.id);
    }
    m_media = m_journal.media().all().value_or(std::vector<Medium>());
    for (const Medium& each : m_media) {
        addChoice(*m_medium, QString::fromStdString(each.name), each.id, markerIcon(each.marker));
    }
    fillTrials();
}

void SowDialog::fillTrials()
{
    m_trial->addItem(tr("none"));
    for (const Trial& each : m_journal.trials().all().value_or(std::vector<Trial>())) {
        addChoice(*m_trial, QString::fromStdString(each.code + "  " + each.name), each.id);
    }
}

void SowDialog::showVariety()
{
    m_protocol.reset();
    m_lot->clear();
    m_lot->addItem(tr("not written down"));
    const auto id = chosen<VarietyId>(*m_variety);
    if (!id) {
        return;
    }
    if (const auto protocol = m_journal.varieties().protocol(*id)) {
        m_protocol = *protocol;
        showMass(*m_seed, protocol->variety.seedPerTray, m_units);
    }
    const UnitText text(m_units);
    for (const SeedLotStock& stock :
         m_journal.varieties().lots(*id).value_or(std::vector<SeedLotStock>())) {
        const QString lotName = QString::fromStdString(stock.lot.lotNumber);
        addChoice(*m_lot,
                  stock.left ? tr("%1, %2 left").arg(lotName, text.mass(*stock.left, 0)) : lotName,
                  stock.lot.id);
    }
    m_lot->setCurrentIndex(m_lot->count() > 1 ? 1 : 0);
    m_soak->setVisible(m_protocol && soakMinutes(*m_protocol) > 0);
    m_soak->setChecked(false);
    const auto next = m_journal.trays().nextCode(*id);
    m_code->setPlaceholderText(next ? tr("next is %1").arg(QString::fromStdString(*next))
                                    : QString());
    showDates();
}

std::optional<Medium> SowDialog::medium() const
{
    const auto id = chosen<MediumId>(*m_medium);
    for (const Medium& each : m_media) {
        if (id == each.id) {
            return each;
        }
    }
    return std::nullopt;
}

void SowDialog::showMedium()
{
    m_pieces->clear();
    const auto chosenMedium = medium();
    const bool hasPieces = chosenMedium && chosenMedium->isReusable;
    m_pieces->setVisible(hasPieces);
    m_piecesWords->setVisible(hasPieces);
    if (!hasPieces) {
        return;
    }
    int dirty = 0;
    for (const PieceRecord& record :
         m_journal.media().pieces(chosenMedium->id).value_or(std::vector<PieceRecord>())) {
        if (record.isInUse) {
            continue;
        }
        if (record.needsSanitising) {
            ++dirty;
            continue;
        }
        m_pieces->addCheck(tr("piece %1, %n use(s)", nullptr, record.uses).arg(record.piece.number),
                           record.piece.id.value);
    }
    m_piecesWords->setText(m_pieces->count() == 0 ? whyNoPiece(dirty)
                           : dirty > 0
                               ? tr("Clean pieces (%n more to be sanitised)", nullptr, dirty)
                               : tr("Clean pieces of this medium"));
    m_pieces->checkFirst(m_count->value());
}

QString SowDialog::whyNoPiece(int dirty)
{
    return dirty > 0
               ? tr("No clean piece: sanitise %n piece(s) first, and note it under Set-up, Media.",
                    nullptr, dirty)
               : tr("No piece is free: add one under Set-up, Media, or choose another medium.");
}

void SowDialog::showPlaces()
{
    m_places->clear();
    for (const Spot& spot : m_journal.room().freeSpots().value_or(std::vector<Spot>())) {
        m_places->addCheck(nameOf(std::optional(spot)), spot.place.value);
    }
    m_places->checkFirst(m_count->value());
}

Moment SowDialog::at() const
{
    const Moment now = m_journal.clock().now();
    return {m_day->date().value_or(now.date), m_time->minute().value_or(now.minute)};
}

void SowDialog::showDates()
{
    if (!m_protocol) {
        return;
    }
    const bool soaks = m_soak->isChecked();
    const Moment sownAt = soaks ? at() + soakMinutes(*m_protocol) : at();
    const Moment harvest = sownAt + minutesToHarvest(*m_protocol);
    QStringList words;
    if (soaks) {
        words << tr("To be sown %1 at %2.").arg(dayText(sownAt.date), clockText(sownAt.minute));
    }
    words << tr("Due to be cut on %1, day %2.")
                 .arg(dayText(harvest.date))
                 .arg(dayCount(sownAt.date, harvest.date));
    m_dates->setText(words.join(' '));
    m_harvest->setDate(harvest.date);
}

void SowDialog::sowForHarvest()
{
    const auto wanted = m_harvest->date();
    if (!m_protocol || !wanted) {
        return;
    }
    const SowingTimes times = timesForHarvest(*m_protocol, {*wanted, at().minute});
    const Moment begin = m_soak->isChecked() && times.soak ? *times.soak : times.sow;
    m_day->setDate(begin.date);
    m_time->setMinute(begin.minute);
    showDates();
}

Result<SowingDraft> SowDialog::draft() const
{
    SowingDraft made;
    const auto variety = chosen<VarietyId>(*m_variety);
    const auto mediumId = chosen<MediumId>(*m_medium);
    if (!variety || !mediumId) {
        return fail(ErrorKind::Missing,
                    variety ? FormReason::MediumMissing : FormReason::VarietyMissing);
    }
    const auto seed = massIn(*m_seed, m_units);
    if (!seed) {
        return fail(ErrorKind::Invalid, FormReason::AmountForm, m_seed->text().toStdString());
    }
    made.variety = *variety;
    made.medium = *mediumId;
    made.seedLot = chosen<SeedLotId>(*m_lot);
    made.count = m_count->value();
    made.seedPerTray = *seed;
    made.at = at();
    made.startsWithSoak = m_soak->isVisible() && m_soak->isChecked();
    made.places = m_places->checked<PlaceId>();
    if (medium()->isReusable) {
        made.pieces = m_pieces->checked<PieceId>();
    }
    made.trial = chosen<TrialId>(*m_trial);
    if (m_block->value() > 0) {
        made.block = m_block->value();
    }
    if (!m_person->text().trimmed().isEmpty()) {
        made.sownBy = m_person->text().trimmed().toStdString();
    }
    if (!m_code->text().trimmed().isEmpty()) {
        made.code = m_code->text().trimmed().toStdString();
    }
    return made;
}

void SowDialog::sow()
{
    const bool hasDay = m_day->requireDate();
    const bool hasTime = m_time->requireTime();
    if (!hasDay || !hasTime) {
        refuse(hasDay ? howToWriteATime() : howToWriteADay());
        return;
    }
    const auto made = draft();
    if (!made) {
        refuse(sentence(made.error()));
        return;
    }
    const auto chosenMedium = medium();
    if (chosenMedium && chosenMedium->isReusable &&
        static_cast<int>(made->pieces.size()) != made->count) {
        refuse(m_pieces->count() == 0 ? m_piecesWords->text()
               : made->count == 1
                   ? tr("Choose one clean piece for the tray.")
                   : tr("Choose one clean piece for each of the %n trays.", nullptr, made->count));
        return;
    }
    if (static_cast<int>(made->places.size()) > made->count) {
        refuse(tr("There are more places chosen than trays."));
        return;
    }
    const auto done = m_journal.trays().sow(*made);
    if (!done) {
        refuse(sentence(done.error()));
        return;
    }
    Q_EMIT sown(static_cast<int>(done->size()));
    accept();
}

} // namespace plumule::ui

#include "moc_sow_dialog.cpp"
