#include "ui/stock/count_dialog.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/stock/stock_rules.h"
#include "ui/medium/marker.h"
#include "ui/stock/stock_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <cmath>

namespace plumule::ui {

CountDialog::CountDialog(Journal& journal, Services services, StockEvent what, const Stock& stock,
                         QWidget* parent)
    : RecordDialog(journal, services, "countDialog",
                   what == StockEvent::Counted ? tr("Count what is left") : tr("Bought"), parent)
    , m_what(what)
{
    setAttribute(Qt::WA_DeleteOnClose);
    const auto layout = journal.room().layout();
    m_units = layout ? layout->room.units : UnitSystem::Metric;
    buildFields();
    buildNewLot();
    buildNewItem();
    m_price->setUnit(layout ? QString::fromStdString(layout->room.currency) : QString());
    fillThings(stock);
    addSave("countSave", tr("Save"));
    connect(m_list, &QComboBox::currentIndexChanged, this, &CountDialog::showThing);
    connect(m_unit, &QComboBox::currentIndexChanged, this, &CountDialog::showThing);
    showThing();
    m_list->setFocus();
    panel()->settle();
}

void CountDialog::buildFields()
{
    QFormLayout* form = fieldForm();
    m_list = new QComboBox;
    m_list->setObjectName("countThing");
    m_left = label(QString(), "muted");
    m_left->setObjectName("countLeft");
    m_left->setWordWrap(true);
    m_day = new DateField("countDay");
    m_day->setDate(journal().clock().today());
    m_amount = new NumberField;
    m_amount->setObjectName("countAmount");
    m_amount->setRange(0, 1e6);
    m_note = new QLineEdit;
    m_note->setObjectName("countNote");
    form->addRow(tr("What"), m_list);
    form->addRow(QString(), m_left);
    form->addRow(tr("Day"), m_day);
    form->addRow(m_what == StockEvent::Counted ? tr("There is") : tr("Came in"), m_amount);
    form->addRow(tr("Note"), m_note);
    body()->addLayout(form);
}

void CountDialog::buildNewLot()
{
    m_newLot = new QWidget;
    QFormLayout* form = fieldForm();
    form->setContentsMargins(0, 0, 0, 0);
    m_newLot->setLayout(form);
    m_variety = new QComboBox;
    m_variety->setObjectName("boughtVariety");
    for (const Variety& each : journal().varieties().all().value_or(std::vector<Variety>())) {
        addChoice(*m_variety, QString::fromStdString(each.name), each.id);
    }
    m_number = new QLineEdit;
    m_number->setObjectName("boughtLot");
    m_supplier = new QLineEdit;
    m_supplier->setObjectName("boughtSupplier");
    m_price = new NumberField;
    m_price->setObjectName("boughtPrice");
    m_germination = new NumberField(QStringLiteral("%"));
    m_germination->setObjectName("boughtGermination");
    m_germination->setRange(0, 100);
    form->addRow(tr("Variety"), m_variety);
    form->addRow(tr("Lot number"), m_number);
    form->addRow(tr("Supplier"), m_supplier);
    form->addRow(tr("Price of it all"), m_price);
    form->addRow(tr("Germination"), m_germination);
    body()->addWidget(m_newLot);
}

void CountDialog::buildNewItem()
{
    m_newItem = new QWidget;
    QFormLayout* form = fieldForm();
    form->setContentsMargins(0, 0, 0, 0);
    m_newItem->setLayout(form);
    m_name = new QLineEdit;
    m_name->setObjectName("newItemName");
    m_kind = new QComboBox;
    m_kind->setObjectName("newItemKind");
    for (const StockKind kind : {StockKind::Packaging, StockKind::Sanitiser, StockKind::Other}) {
        addChoice(*m_kind, nameOf(kind), kind);
    }
    m_unit = new QComboBox;
    m_unit->setObjectName("newItemUnit");
    addChoice(*m_unit, tr("pieces"), StockUnit::Piece);
    addChoice(*m_unit, tr("litres or fluid ounces"), StockUnit::Millilitre);
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Kind"), m_kind);
    form->addRow(tr("Counted in"), m_unit);
    body()->addWidget(m_newItem);
    body()->addStretch(1);
}

void CountDialog::addThing(const QString& name, Thing thing, const QIcon& icon)
{
    m_list->addItem(icon, name);
    m_things.push_back(std::move(thing));
}

void CountDialog::fillThings(const Stock& stock)
{
    if (m_what == StockEvent::Bought) {
        addThing(tr("Seed, a new lot"), {Thing::Of::NewLot});
    } else {
        for (const SeedLine& line : stock.seed) {
            addThing(QString::fromStdString(line.variety + ", " + line.stock.lot.lotNumber),
                     {Thing::Of::Lot, line.stock});
        }
    }
    for (const StockLine& line : stock.supplies) {
        addThing(QString::fromStdString(line.item.name),
                 {Thing::Of::Item, {}, line.item, line.left},
                 line.marker ? markerIcon(*line.marker) : QIcon());
    }
    addThing(tr("Something else…"), {Thing::Of::NewItem});
}

const CountDialog::Thing& CountDialog::thing() const
{
    return m_things[static_cast<std::size_t>(std::max(0, m_list->currentIndex()))];
}

void CountDialog::chooseItem(const StockItem& item)
{
    for (std::size_t i = 0; i < m_things.size(); ++i) {
        if (m_things[i].of == Thing::Of::Item && m_things[i].item == item) {
            m_list->setCurrentIndex(static_cast<int>(i));
        }
    }
}

void CountDialog::chooseLot(SeedLotId lot)
{
    for (std::size_t i = 0; i < m_things.size(); ++i) {
        if (m_things[i].of == Thing::Of::Lot && m_things[i].lot.lot.id == lot) {
            m_list->setCurrentIndex(static_cast<int>(i));
        }
    }
}

StockItem CountDialog::typedItem() const
{
    if (thing().of == Thing::Of::Item) {
        return thing().item;
    }
    StockItem item;
    item.name = m_name->text().trimmed().toStdString();
    item.kind = chosenOf<StockKind>(*m_kind);
    item.unit = chosenOf<StockUnit>(*m_unit);
    return item;
}

StockUnit CountDialog::unit() const
{
    return typedItem().unit;
}

void CountDialog::showThing()
{
    const bool isSeed = thing().of == Thing::Of::Lot || thing().of == Thing::Of::NewLot;
    m_newLot->setVisible(thing().of == Thing::Of::NewLot);
    m_newItem->setVisible(thing().of == Thing::Of::NewItem);
    const UnitText text(m_units);
    const bool isMetric = m_units == UnitSystem::Metric;
    m_amount->setUnit(isSeed                       ? text.massUnit()
                      : unit() == StockUnit::Piece ? tr("pieces")
                      : isMetric                   ? QStringLiteral("L")
                                                   : QStringLiteral("gal"));
    QString words;
    if (thing().of == Thing::Of::Lot) {
        words = thing().lot.left ? tr("%1 should be left.").arg(text.mass(*thing().lot.left, 0))
                                 : tr("Its purchase was not weighed, so it can't be counted.");
    } else if (thing().of == Thing::Of::Item) {
        words = thing().left ? tr("%1 should be left.").arg(amountText(*thing().left, unit(), text))
                             : tr("Not counted before.");
    }
    m_left->setText(words);
    m_left->setVisible(!words.isEmpty());
    // A lot is counted now: its correction has no other day.
    m_day->setEnabled(thing().of != Thing::Of::Lot);
}

std::optional<StockAmount> CountDialog::typedAmount()
{
    const auto number = m_amount->number();
    m_amount->markWrong(!number || !*number);
    if (!number || !*number) {
        refuse(number ? tr("Enter how much there is.") : sentence(number.error()));
        return std::nullopt;
    }
    if (unit() == StockUnit::Piece) {
        return pieces(std::llround(**number));
    }
    return asStock(m_units == UnitSystem::Metric ? litres(**number) : usGallons(**number));
}

std::optional<QString> CountDialog::save()
{
    if (!m_day->requireDate()) {
        refuse(howToWriteADay());
        return std::nullopt;
    }
    if (thing().of == Thing::Of::Lot) {
        return saveLotCount();
    }
    return thing().of == Thing::Of::NewLot ? saveNewLot() : saveItem();
}

bool CountDialog::isMeant(double counted, double expected, const QString& expectedWords)
{
    if (!isOddCount(counted, expected) || m_doubted == counted) {
        return true;
    }
    m_doubted = counted;
    m_amount->markWrong(true);
    refuse(tr("That is far from the %1 that should be left. If it is right, press Save again.")
               .arg(expectedWords));
    return false;
}

std::optional<QString> CountDialog::saveLotCount()
{
    const auto mass = massIn(*m_amount, m_units);
    m_amount->markWrong(!mass || !*mass);
    if (!mass || !*mass) {
        refuse(mass ? tr("Enter how much there is.") : sentence(mass.error()));
        return std::nullopt;
    }
    if (const auto& left = thing().lot.left;
        left && !isMeant(inGrams(**mass), inGrams(*left), UnitText(m_units).mass(*left, 0))) {
        return std::nullopt;
    }
    const auto counted = journal().varieties().countLot(thing().lot.lot.id, **mass,
                                                        m_note->text().trimmed().toStdString());
    if (!counted) {
        refuse(sentence(counted.error()));
        return std::nullopt;
    }
    return tr("Counted %1.").arg(m_list->currentText());
}

std::optional<QString> CountDialog::saveNewLot()
{
    const auto mass = massIn(*m_amount, m_units);
    const auto price = moneyIn(*m_price);
    const auto germination = m_germination->number();
    m_amount->markWrong(!mass);
    m_price->markWrong(!price);
    m_germination->markWrong(!germination);
    if (!mass || !price || !germination) {
        refuse(tr("Please check the marked fields."));
        return std::nullopt;
    }
    SeedLot lot;
    lot.variety = chosenOf<VarietyId>(*m_variety);
    lot.lotNumber = m_number->text().trimmed().toStdString();
    lot.supplier = m_supplier->text().trimmed().toStdString();
    lot.boughtOn = m_day->date();
    lot.bought = *mass;
    lot.price = *price;
    lot.germinationPercent = *germination;
    lot.note = m_note->text().trimmed().toStdString();
    const auto saved = journal().varieties().saveLot(lot);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Bought lot %1 of %2.").arg(m_number->text().trimmed(), m_variety->currentText());
}

std::optional<QString> CountDialog::saveItem()
{
    const auto amount = typedAmount();
    if (!amount) {
        return std::nullopt;
    }
    const auto& left = thing().left;
    if (m_what == StockEvent::Counted && left &&
        !isMeant(double(amount->count()), double(left->count()),
                 amountText(*left, unit(), UnitText(m_units)))) {
        return std::nullopt;
    }
    const auto entered = journal().stock().enter(typedItem(), m_what, *m_day->date(), *amount,
                                                 m_note->text().toStdString());
    if (!entered) {
        refuse(sentence(entered.error()));
        return std::nullopt;
    }
    const QString words = amountText(*amount, unit(), UnitText(m_units));
    const QString name = QString::fromStdString(typedItem().name);
    return m_what == StockEvent::Counted ? tr("Counted %1: %2.").arg(name, words)
                                         : tr("Bought %1: %2.").arg(name, words);
}

} // namespace plumule::ui

#include "moc_count_dialog.cpp"
