#include "ui/tray/sow_dialog.h"

#include "ui/medium/marker.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/check_list.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QDateEdit>
#include <QFormLayout>
#include <QSpinBox>
#include <QTimeEdit>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QComboBox* listField(const char* name)
{
    auto* box = new QComboBox;
    box->setObjectName(name);
    return box;
}

QDateEdit* dayField(const char* name)
{
    auto* field = new QDateEdit;
    field->setObjectName(name);
    field->setCalendarPopup(true);
    field->setDisplayFormat("ddd d MMM yyyy");
    return field;
}

} // namespace

SowDialog::SowDialog(Journal& journal, Services services, QWidget* parent)
    : QDialog(parent)
    , m_journal(journal)
    , m_services(services)
{
    setObjectName("sowDialog");
    setWindowTitle(tr("Sow"));
    resize(scaled(860), scaled(620));
    if (const auto layout = m_journal.room().layout()) {
        m_units = layout->room.units;
    }
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(20));
    column->addWidget(label(tr("Sow"), "title"));
    auto* row = new QHBoxLayout;
    row->setSpacing(scaled(24));
    row->addWidget(buildWhat(), 3);
    row->addWidget(buildWhere(), 2);
    column->addLayout(row, 1);
    column->addWidget(buildButtons());
    fillChoices();
    wireSignals();
    showVariety();
    showMedium();
    showPlaces();
}

QWidget* SowDialog::buildWhat()
{
    auto* what = new QWidget;
    m_form = fieldForm();
    what->setLayout(m_form);
    const Moment now = m_journal.clock().now();
    m_variety = listField("variety");
    m_lot = listField("lot");
    m_medium = listField("medium");
    m_count = new QSpinBox;
    m_count->setObjectName("count");
    m_count->setRange(1, 400);
    m_seed = new NumberField;
    m_seed->setObjectName("seed");
    m_day = dayField("day");
    m_day->setDate(toQDate(now.date));
    m_time = new QTimeEdit(QTime(0, 0).addSecs(now.minute * 60));
    m_time->setDisplayFormat("HH:mm");
    m_soak = new QCheckBox(tr("begin with the soak now"));
    m_soak->setObjectName("soak");
    m_harvest = dayField("harvest");
    m_dates = label(QString(), "muted");
    m_dates->setObjectName("dates");
    m_dates->setWordWrap(true);
    m_trial = listField("trial");
    m_block = new QSpinBox;
    m_block->setObjectName("block");
    m_block->setRange(0, 99);
    m_block->setSpecialValueText(tr("none"));
    m_person = new QLineEdit;
    m_person->setObjectName("person");
    m_code = new QLineEdit;
    m_code->setObjectName("code");
    auto* when = new QHBoxLayout;
    when->addWidget(m_day, 1);
    when->addWidget(m_time);
    m_form->addRow(tr("Variety"), m_variety);
    m_form->addRow(tr("Seed lot"), m_lot);
    m_form->addRow(tr("Medium"), m_medium);
    m_form->addRow(tr("Trays"), m_count);
    m_form->addRow(tr("Seed a tray"), m_seed);
    m_form->addRow(tr("Sown on"), when);
    m_form->addRow(QString(), m_soak);
    m_form->addRow(tr("To be cut on"), m_harvest);
    m_form->addRow(QString(), m_dates);
    m_form->addRow(tr("Trial"), m_trial);
    m_form->addRow(tr("Block"), m_block);
    m_form->addRow(tr("Sown by"), m_person);
    m_form->addRow(tr("Code"), m_code);
    return what;
}

QWidget* SowDialog::buildWhere()
{
    auto* where = new QWidget;
    auto* column = new QVBoxLayout(where);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(label(tr("Places, in walking order"), "strong"));
    m_places = new CheckList("places");
    column->addWidget(m_places, 2);
    m_piecesWords = label(tr("Clean pieces of this medium"), "strong");
    m_pieces = new CheckList("pieces");
    column->addWidget(m_piecesWords);
    column->addWidget(m_pieces, 1);
    for (CheckList* list : {m_places, m_pieces}) {
        list->setMinimumHeight(scaled(110));
    }
    return where;
}

QWidget* SowDialog::buildButtons()
{
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    m_refusal = label(QString(), "warning");
    m_refusal->setObjectName("refusal");
    m_refusal->setWordWrap(true);
    auto* leave = button(tr("Cancel"));
    m_sow = button(tr("Sow"), "primary");
    m_sow->setObjectName("sowNow");
    m_sow->setDefault(true);
    row->addWidget(m_refusal, 1);
    row->addWidget(leave);
    row->addWidget(m_sow);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_sow, &QPushButton::clicked, this, &SowDialog::sow);
    return bar;
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
    connect(m_day, &QDateEdit::dateChanged, this, &SowDialog::showDates);
    connect(m_time, &QTimeEdit::timeChanged, this, &SowDialog::showDates);
    connect(m_soak, &QCheckBox::toggled, this, &SowDialog::showDates);
    connect(m_harvest, &QDateEdit::userDateChanged, this, &SowDialog::sowForHarvest);
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
    m_piecesWords->setText(dirty > 0 ? tr("Clean pieces (%n more to be sanitised)", nullptr, dirty)
                                     : tr("Clean pieces of this medium"));
    m_pieces->checkFirst(m_count->value());
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
    return {fromQDate(m_day->date()), QTime(0, 0).secsTo(m_time->time()) / 60};
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
    const QSignalBlocker quiet(m_harvest);
    m_harvest->setDate(toQDate(harvest.date));
}

void SowDialog::sowForHarvest()
{
    if (!m_protocol) {
        return;
    }
    const SowingTimes times =
        timesForHarvest(*m_protocol, {fromQDate(m_harvest->date()), at().minute});
    const Moment begin = m_soak->isChecked() && times.soak ? *times.soak : times.sow;
    m_day->setDate(toQDate(begin.date));
    m_time->setTime(QTime(0, 0).addSecs(begin.minute * 60));
}

Result<SowingDraft> SowDialog::draft() const
{
    SowingDraft made;
    const auto variety = chosen<VarietyId>(*m_variety);
    const auto mediumId = chosen<MediumId>(*m_medium);
    if (!variety || !mediumId) {
        return fail(ErrorKind::Missing, variety ? "medium" : "variety");
    }
    const auto seed = massIn(*m_seed, m_units);
    if (!seed) {
        return fail(ErrorKind::Invalid, "seed", m_seed->text().toStdString());
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

void SowDialog::refuse(const QString& words)
{
    m_refusal->setText(words);
}

void SowDialog::sow()
{
    const auto made = draft();
    if (!made) {
        refuse(sentence(made.error()));
        return;
    }
    const auto chosenMedium = medium();
    if (chosenMedium && chosenMedium->isReusable &&
        static_cast<int>(made->pieces.size()) != made->count) {
        refuse(tr("Choose one clean piece for each of the %1 trays.").arg(made->count));
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
