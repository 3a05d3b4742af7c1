#include "ui/stock/marks_dialog.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/stock/stock_rules.h"
#include "ui/stock/stock_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace plumule::ui {

MarksDialog::MarksDialog(Journal& journal, Services services, const Stock& stock, QWidget* parent)
    : RecordDialog(journal, services, "marksDialog", tr("When is it low?"), parent)
{
    setAttribute(Qt::WA_DeleteOnClose);
    const auto layout = journal.room().layout();
    m_units = layout ? layout->room.units : UnitSystem::Metric;
    buildFields();
    fillThings(stock);
    addSave("marksSave", tr("Save"));
    connect(m_list, &QComboBox::currentIndexChanged, this, &MarksDialog::showThing);
    showThing();
}

void MarksDialog::buildFields()
{
    QFormLayout* form = fieldForm();
    m_list = new QComboBox;
    m_list->setObjectName("marksThing");
    m_days = new NumberField(tr("days"));
    m_days->setObjectName("marksDays");
    m_days->setRange(0, kMostLowDays);
    m_days->setPlaceholderText(tr("usually %1").arg(kUsualLowDays));
    m_amount = new NumberField;
    m_amount->setObjectName("marksAmount");
    m_amount->setRange(0, 1e6);
    m_amount->setPlaceholderText(tr("whatever is left"));
    m_share = new NumberField;
    m_share->setObjectName("marksShare");
    m_share->setRange(0, 1e6);
    m_share->setPlaceholderText(tr("not known"));
    m_shareName = label(QString());
    m_gone = new QCheckBox(tr("no longer kept"));
    m_gone->setObjectName("marksGone");
    form->addRow(tr("What"), m_list);
    form->addRow(tr("Low below"), m_days);
    form->addRow(tr("or below"), m_amount);
    form->addRow(m_shareName, m_share);
    form->addRow(QString(), m_gone);
    body()->addLayout(form);
    body()->addStretch(1);
}

void MarksDialog::fillThings(const Stock& stock)
{
    for (const Variety& each : journal().varieties().all().value_or(std::vector<Variety>())) {
        const auto known = std::find_if(stock.seedLows.begin(), stock.seedLows.end(),
                                        [&](const SeedLow& low) { return low.variety == each.id; });
        m_list->addItem(tr("Seed of %1").arg(QString::fromStdString(each.name)));
        m_things.push_back(
            {known == stock.seedLows.end() ? SeedLow{{}, each.id, {}, {}} : *known, {}});
    }
    for (const StockLine& line : stock.supplies) {
        m_list->addItem(QString::fromStdString(line.item.name));
        m_things.push_back({std::nullopt, line.item});
    }
}

const MarksDialog::Thing& MarksDialog::thing() const
{
    return m_things[static_cast<std::size_t>(std::max(0, m_list->currentIndex()))];
}

void MarksDialog::showThing()
{
    if (m_things.empty()) {
        return;
    }
    const Thing& now = thing();
    const bool isMetric = m_units == UnitSystem::Metric;
    const QString unit = now.seed                            ? UnitText(m_units).massUnit()
                         : now.item.unit == StockUnit::Piece ? tr("pieces")
                         : isMetric                          ? QStringLiteral("L")
                                                             : QStringLiteral("gal");
    const auto shown = [&](std::optional<StockAmount> amount) -> std::optional<double> {
        if (!amount || now.item.unit == StockUnit::Piece) {
            return amount ? std::optional(static_cast<double>(amount->count())) : std::nullopt;
        }
        return isMetric ? inLitres(asVolume(*amount)) : inUsGallons(asVolume(*amount));
    };
    m_amount->setUnit(unit);
    m_share->setUnit(unit);
    const auto days = now.seed ? now.seed->days : now.item.lowDays;
    m_days->setNumber(days ? std::optional(double(*days)) : std::nullopt, 0);
    if (now.seed) {
        showMass(*m_amount, now.seed->amount, m_units);
    } else {
        m_amount->setNumber(shown(now.item.lowAmount), 3);
    }
    const bool hasShare = !now.seed && (now.item.kind == StockKind::Packaging ||
                                        now.item.kind == StockKind::Sanitiser);
    m_shareName->setText(now.item.kind == StockKind::Packaging ? tr("A cut takes")
                                                               : tr("A piece takes"));
    m_share->setNumber(hasShare ? shown(now.item.eachUse) : std::nullopt, 3);
    m_share->setVisible(hasShare);
    m_shareName->setVisible(hasShare);
    const bool isOwn =
        !now.seed && now.item.kind != StockKind::Medium && now.item.kind != StockKind::Concentrate;
    m_gone->setVisible(isOwn);
    m_gone->setChecked(now.item.isRetired);
    panel()->settle();
}

std::optional<std::optional<StockAmount>> MarksDialog::typed(const NumberField& field) const
{
    const auto number = field.number();
    if (!number) {
        return std::nullopt;
    }
    if (!*number) {
        return std::optional<StockAmount>();
    }
    if (thing().item.unit == StockUnit::Piece) {
        return std::optional(pieces(std::llround(**number)));
    }
    return std::optional(
        asStock(m_units == UnitSystem::Metric ? litres(**number) : usGallons(**number)));
}

std::optional<QString> MarksDialog::save()
{
    const auto days = m_days->number();
    m_days->markWrong(!days);
    if (!days || m_things.empty()) {
        refuse(days ? tr("Nothing is kept yet.") : sentence(days.error()));
        return std::nullopt;
    }
    const auto whole = *days ? std::optional(static_cast<int>(**days)) : std::nullopt;
    return thing().seed ? saveSeed(whole) : saveItem(whole);
}

std::optional<QString> MarksDialog::saveSeed(std::optional<int> days)
{
    const auto amount = massIn(*m_amount, m_units);
    m_amount->markWrong(!amount);
    if (!amount) {
        refuse(sentence(amount.error()));
        return std::nullopt;
    }
    SeedLow low = *thing().seed;
    low.days = days;
    low.amount = *amount;
    if (const Done done = journal().stock().markSeedLow(low); !done) {
        refuse(sentence(done.error()));
        return std::nullopt;
    }
    return tr("Saved %1.").arg(m_list->currentText());
}

std::optional<QString> MarksDialog::saveItem(std::optional<int> days)
{
    const auto amount = typed(*m_amount);
    const auto share = typed(*m_share);
    m_amount->markWrong(!amount);
    m_share->markWrong(!share);
    if (!amount || !share) {
        refuse(tr("Please check the marked fields."));
        return std::nullopt;
    }
    StockItem item = thing().item;
    item.lowDays = days;
    item.lowAmount = *amount;
    item.eachUse = *share;
    item.isRetired = m_gone->isChecked();
    const auto saved = journal().stock().save(item);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Saved %1.").arg(m_list->currentText());
}

} // namespace plumule::ui

#include "moc_marks_dialog.cpp"
