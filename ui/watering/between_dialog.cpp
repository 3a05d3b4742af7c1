#include "ui/watering/between_dialog.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "ui/watering/round_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/check_list.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QFormLayout>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

// Growing trays in walking order; those without a place last.
std::vector<TrayListRow> growingIn(Journal& journal)
{
    TrayFilter filter;
    filter.state = TrayState::Growing;
    auto rows = journal.trays().list(filter).value_or(std::vector<TrayListRow>());
    std::stable_sort(rows.begin(), rows.end(), [](const TrayListRow& a, const TrayListRow& b) {
        const auto rank = [](const TrayListRow& row) {
            return row.spot ? row.spot->rank : std::numeric_limits<int>::max();
        };
        return rank(a) < rank(b);
    });
    return rows;
}

} // namespace

BetweenDialog::BetweenDialog(Journal& journal, Ask& ask, const std::vector<TrayId>& trays,
                             QWidget* parent)
    : FormDialog(ask, "betweenDialog", tr("Water as needed"), parent)
    , m_journal(journal)
{
    wish({scaled(560), scaled(480)});
    if (const auto layout = journal.room().layout()) {
        m_units = UnitText(layout->room.units);
    }
    auto* words = label(tr("Which trays were given water between rounds?"), "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    body()->addWidget(buildTrays(trays), 1);
    body()->addWidget(buildWater());
    buildButtons();
    if (!trays.empty()) {
        propose(trays.front());
    }
    showCount();
    (trays.empty() ? static_cast<QWidget*>(m_trays) : m_amount)->setFocus();
}

QWidget* BetweenDialog::buildTrays(const std::vector<TrayId>& trays)
{
    m_trays = new CheckList("betweenTrays");
    m_trays->setAccessibleName(tr("Trays"));
    m_trays->setMinimumHeight(scaled(150));
    for (const TrayListRow& row : growingIn(m_journal)) {
        const TrayRecord& record = row.record;
        const bool isChosen = std::find(trays.begin(), trays.end(), record.tray.id) != trays.end();
        m_trays->addCheck(QStringLiteral("%1  ·  %2  ·  %3  ·  %4")
                              .arg(QString::fromStdString(record.tray.code),
                                   QString::fromStdString(record.variety),
                                   QString::fromStdString(record.medium.name), nameOf(row.spot)),
                          record.tray.id.value, isChosen);
        if (isChosen && m_trays->currentRow() < 0) {
            m_trays->setCurrentRow(m_trays->count() - 1);
        }
    }
    connect(m_trays, &QListWidget::itemChanged, this, &BetweenDialog::showCount);
    return m_trays;
}

QWidget* BetweenDialog::buildWater()
{
    auto* block = new QWidget;
    auto* form = fieldForm();
    block->setLayout(form);
    m_amount = new NumberField(m_units.volumeUnit());
    m_amount->setObjectName("betweenAmount");
    m_amount->setRange(0, 100'000);
    m_amount->setPlaceholderText(tr("not measured"));
    m_water = new QComboBox;
    m_water->setObjectName("betweenWater");
    for (const WaterKind kind : {WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient}) {
        m_water->addItem(nameOf(kind), int(kind));
    }
    m_method = new QComboBox;
    m_method->setObjectName("betweenMethod");
    for (const WateringMethod method : {WateringMethod::Below, WateringMethod::Mist}) {
        m_method->addItem(nameOf(method), int(method));
    }
    m_time = new TimeField("betweenTime");
    m_time->setMinute(m_journal.clock().now().minute);
    form->addRow(tr("Amount a tray"), m_amount);
    form->addRow(tr("Water"), m_water);
    form->addRow(tr("How"), m_method);
    form->addRow(tr("Today at"), m_time);
    return block;
}

void BetweenDialog::buildButtons()
{
    addCancel();
    m_give = addButton(QString(), "giveBetween", "primary");
    connect(m_give, &QPushButton::clicked, this, &BetweenDialog::give);
}

// What its stage asks for.
void BetweenDialog::propose(TrayId tray)
{
    const auto sheet = m_journal.trays().sheet(tray);
    if (!sheet || !sheet->plan.current) {
        return;
    }
    const TrayStage& stage = sheet->record.stages[*sheet->plan.current];
    if (stage.method != WateringMethod::None) {
        m_method->setCurrentIndex(m_method->findData(int(stage.method)));
        m_water->setCurrentIndex(m_water->findData(int(stage.water)));
        showVolume(*m_amount, stage.amount, m_units.units());
    }
}

std::vector<TrayId> BetweenDialog::checkedTrays() const
{
    return m_trays->checked<TrayId>();
}

void BetweenDialog::showCount()
{
    const auto count = static_cast<int>(checkedTrays().size());
    m_give->setText(count == 0 ? tr("Watered") : tr("Watered %1").arg(trayCount(count)));
    m_give->setEnabled(count > 0);
}

void BetweenDialog::give()
{
    const auto amount = volumeIn(*m_amount, m_units.units());
    m_amount->markWrong(!amount.has_value());
    if (!amount) {
        refuse(sentence(amount.error()));
        m_amount->setFocus();
        return;
    }
    if (!m_time->requireTime()) {
        refuse(howToWriteATime());
        m_time->setFocus();
        return;
    }
    BetweenDraft draft;
    draft.trays = checkedTrays();
    draft.amount = *amount;
    draft.water = static_cast<WaterKind>(m_water->currentData().toInt());
    draft.method = static_cast<WateringMethod>(m_method->currentData().toInt());
    draft.at = {m_journal.clock().today(), *m_time->minute()};
    const auto done = m_journal.watering().giveBetween(draft);
    if (!done) {
        refuse(sentence(done.error()));
        return;
    }
    accept();
    Q_EMIT given();
}

} // namespace plumule::ui

#include "moc_between_dialog.cpp"
