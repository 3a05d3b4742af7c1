#include "ui/variety/seed_part.h"

#include "core/journal/variety/variety_entries.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/master_detail.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

SeedPart::SeedPart(Journal& journal, Services services, QWidget* parent)
    : RecordPart(journal, services, tr("New seed lot"), parent)
{
    buildForm();
    buildCounting();
}

QString SeedPart::name() const
{
    return tr("Seed");
}

bool SeedPart::concerns(Concept about) const
{
    return about == Concept::Variety || about == Concept::Tray || about == Concept::Room;
}

void SeedPart::buildForm()
{
    m_variety = new QComboBox;
    m_variety->setObjectName("lotVariety");
    m_number = new QLineEdit;
    m_number->setObjectName("lotNumber");
    m_supplier = new QLineEdit;
    m_boughtOn = new DateField("lotBoughtOn");
    m_boughtOn->setPlaceholderText(tr("not written down"));
    m_bought = new NumberField;
    m_bought->setObjectName("lotBought");
    m_price = new NumberField;
    m_price->setObjectName("lotPrice");
    m_germination = new NumberField(QStringLiteral("%"));
    m_germination->setRange(0, 100);
    m_note = new QLineEdit;
    m_usedUp = new QCheckBox(tr("used up"));
    QFormLayout* form = m_records->form();
    form->addRow(tr("Variety"), m_variety);
    form->addRow(tr("Lot number"), m_number);
    form->addRow(tr("Supplier"), m_supplier);
    form->addRow(tr("Bought on"), m_boughtOn);
    form->addRow(tr("Weight bought"), m_bought);
    form->addRow(tr("Price of it all"), m_price);
    form->addRow(tr("Germination"), m_germination);
    form->addRow(tr("Note"), m_note);
    form->addRow(QString(), m_usedUp);
}

void SeedPart::buildCounting()
{
    auto* card = new Card(tr("What is left"));
    m_left = label(QString());
    m_left->setObjectName("lotLeft");
    m_left->setWordWrap(true);
    m_found = new NumberField;
    m_found->setObjectName("lotFound");
    m_found->setAccessibleName(tr("Weight found on the shelf"));
    m_reason = new QLineEdit(tr("weighed on the shelf"));
    m_reason->setAccessibleName(tr("Why it is corrected"));
    auto* count = button(tr("The shelf was weighed"));
    count->setObjectName("lotCount");
    m_reason->setMinimumWidth(scaled(200));
    auto* row = new FlowLayout;
    row->addWidget(m_found);
    row->addWidget(m_reason);
    row->addWidget(count);
    card->body()->addWidget(m_left);
    card->body()->addLayout(row);
    m_records->below()->addWidget(card);
    connect(count, &QPushButton::clicked, this, &SeedPart::count);
    for (QLineEdit* field : std::initializer_list<QLineEdit*>{m_found, m_reason}) {
        connect(field, &QLineEdit::returnPressed, this, &SeedPart::count);
    }
}

std::vector<SeedLotStock> SeedPart::lots() const
{
    return journal()
        .varieties()
        .lots(std::nullopt, Listed::All)
        .value_or(std::vector<SeedLotStock>());
}

void SeedPart::reload()
{
    std::map<VarietyId, QString> names;
    refill(*m_variety, [&] {
        for (const Variety& each :
             journal().varieties().all(Listed::All).value_or(std::vector<Variety>())) {
            names[each.id] = QString::fromStdString(each.name);
            addChoice(*m_variety, names[each.id], each.id);
        }
    });
    std::vector<MasterDetail::Item> items;
    for (const SeedLotStock& each : lots()) {
        items.push_back({each.lot.id.value,
                         QStringLiteral("%1, %2").arg(names[each.lot.variety],
                                                      QString::fromStdString(each.lot.lotNumber)),
                         {}});
    }
    m_records->setItems(items);
    show(m_records->chosen());
}

void SeedPart::show(qint64 id)
{
    std::optional<SeedLotStock> stock;
    for (const SeedLotStock& each : lots()) {
        if (each.lot.id.value == id) {
            stock = each;
        }
    }
    const UnitText text(room().units);
    m_left->setText(
        !stock ? tr("Save the lot first.")
        : stock->left
            ? tr("%1 left; %2 sown.").arg(text.mass(*stock->left, 0), text.mass(stock->sown, 0))
            : tr("%1 sown; the purchase was not weighed.").arg(text.mass(stock->sown, 0)));
    const SeedLot lot = stock ? stock->lot : SeedLot();
    // What is being typed stays, unless the record itself changed.
    if (m_shown == lot && m_shownIn == room().units) {
        return;
    }
    m_shown = lot;
    m_shownIn = room().units;
    if (stock) {
        choose(*m_variety, lot.variety);
    }
    m_number->setText(QString::fromStdString(lot.lotNumber));
    m_supplier->setText(QString::fromStdString(lot.supplier));
    m_boughtOn->setDate(id == 0 ? std::optional(journal().clock().today()) : lot.boughtOn);
    showMass(*m_bought, lot.bought, m_shownIn);
    showMoney(*m_price, lot.price, QString::fromStdString(room().currency));
    m_germination->setNumber(lot.germinationPercent, 1);
    m_note->setText(QString::fromStdString(lot.note));
    m_usedUp->setChecked(lot.isUsedUp);
    showMass(*m_found, std::nullopt, m_shownIn);
    settleForm();
}

bool SeedPart::save()
{
    const auto bought = massIn(*m_bought, m_shownIn);
    const auto price = moneyIn(*m_price);
    const auto germination = m_germination->number();
    m_bought->markWrong(!bought);
    m_price->markWrong(!price);
    m_germination->markWrong(!germination);
    const bool isDayWrong = m_boughtOn->isUnreadable();
    markWrong(*m_boughtOn, isDayWrong);
    if (!bought || !price || !germination || isDayWrong) {
        services().messages.refuse(tr("Please check the marked fields."));
        return false;
    }
    SeedLot lot;
    lot.id = SeedLotId{m_records->chosen()};
    lot.variety = chosenOf<VarietyId>(*m_variety);
    lot.lotNumber = m_number->text().trimmed().toStdString();
    lot.supplier = m_supplier->text().trimmed().toStdString();
    lot.boughtOn = m_boughtOn->date();
    lot.bought = *bought;
    lot.price = *price;
    lot.germinationPercent = *germination;
    lot.note = m_note->text().trimmed().toStdString();
    lot.isUsedUp = m_usedUp->isChecked();
    const auto saved = journal().varieties().saveLot(lot);
    if (!settle(saved, tr("Saved lot %1.").arg(m_number->text()))) {
        return false;
    }
    m_records->choose(saved->id.value);
    settleForm();
    return true;
}

void SeedPart::remove()
{
    services().ask.confirm(this, tr("Remove a seed lot"),
                           tr("Remove lot %1?").arg(m_number->text()), tr("Remove"), [this] {
                               const auto done =
                                   journal().varieties().removeLot(SeedLotId{m_records->chosen()});
                               if (settle(done, tr("Removed lot %1.").arg(m_number->text()))) {
                                   m_records->choose(0);
                               }
                           });
}

void SeedPart::count()
{
    const auto found = massIn(*m_found, m_shownIn);
    if (!found || !*found) {
        m_found->markWrong(true);
        return;
    }
    settle(journal().varieties().countLot(SeedLotId{m_records->chosen()}, **found,
                                          m_reason->text().trimmed().toStdString()),
           tr("Corrected what is left of lot %1.").arg(m_number->text()));
}

} // namespace plumule::ui

#include "moc_seed_part.cpp"
