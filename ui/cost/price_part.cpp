#include "ui/cost/price_part.h"

#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/master_detail.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

constexpr std::array kItems{PriceItem::Medium,      PriceItem::Concentrate, PriceItem::Water,
                            PriceItem::Electricity, PriceItem::Labour,      PriceItem::Packaging,
                            PriceItem::Washing,     PriceItem::Waste};

QString labourFieldName(LabourKind kind)
{
    return QStringLiteral("labour") + QLatin1String(toText(kind));
}

} // namespace

PricePart::PricePart(Journal& journal, Services services, QWidget* parent)
    : RecordPart(journal, services, tr("New price"), parent)
{
    buildForm();
    buildLabour();
    connect(m_item, &QComboBox::currentIndexChanged, this, &PricePart::fillUnits);
    connect(m_medium, &QComboBox::currentIndexChanged, this, &PricePart::fillUnits);
    connect(m_unit, &QComboBox::activated, this, &PricePart::turnAmount);
}

QString PricePart::name() const
{
    return tr("Prices and work");
}

bool PricePart::concerns(Concept about) const
{
    return about == Concept::Cost || about == Concept::Medium || about == Concept::Room;
}

void PricePart::buildForm()
{
    m_item = new QComboBox;
    m_item->setObjectName("priceItem");
    for (const PriceItem item : kItems) {
        addChoice(*m_item, nameOf(item), item);
    }
    m_medium = new QComboBox;
    m_medium->setObjectName("priceMedium");
    m_from = new DateField("priceFrom");
    m_amount = new NumberField;
    m_amount->setObjectName("priceAmount");
    m_amount->setAccessibleName(tr("Price"));
    m_unit = new QComboBox;
    m_unit->setObjectName("priceUnit");
    m_unit->setAccessibleName(tr("What the price is for"));
    QFormLayout* form = m_records->form();
    form->addRow(tr("Price of"), m_item);
    form->addRow(tr("Medium"), m_medium);
    form->addRow(tr("From"), m_from);
    auto* priced = new FlowLayout;
    priced->addWidget(m_amount);
    priced->addWidget(m_unit);
    form->addRow(tr("Price"), priced);
    auto* words = label(tr("A price holds from its day until the next one of the same thing. Seed "
                           "has its price with "
                           "its lot."),
                        "muted");
    words->setWordWrap(true);
    form->addRow(QString(), words);
}

void PricePart::buildLabour()
{
    auto* card = new Card(tr("Minutes of work"));
    m_labour = fieldForm();
    card->body()->addLayout(m_labour);
    m_records->below()->addWidget(card);
}

std::vector<Price> PricePart::prices() const
{
    return journal().costs().prices().value_or(std::vector<Price>());
}

void PricePart::reload()
{
    m_media = journal().media().all(Listed::All).value_or(std::vector<Medium>());
    std::map<MediumId, QString> names;
    refill(*m_medium, [&] {
        for (const Medium& each : m_media) {
            names[each.id] = QString::fromStdString(each.name);
            addChoice(*m_medium, names[each.id], each.id);
        }
    });
    std::vector<MasterDetail::Item> items;
    for (const Price& each : prices()) {
        const QString what = each.medium ? names[*each.medium] : nameOf(each.item);
        items.push_back(
            {each.id.value, QStringLiteral("%1, %2").arg(what, longDateText(each.from)), {}});
    }
    m_records->setItems(items);
    show(m_records->chosen());
    showLabour();
}

void PricePart::show(qint64 id)
{
    Price price;
    price.from = journal().clock().today();
    for (const Price& each : prices()) {
        if (each.id.value == id) {
            price = each;
        }
    }
    // What is being typed stays, unless the record itself changed.
    if (m_shown == price && m_shownIn == room().units) {
        return;
    }
    m_shown = price;
    m_shownIn = room().units;
    choose(*m_item, price.item);
    if (price.medium) {
        choose(*m_medium, price.medium);
    }
    m_from->setDate(price.from);
    fillUnits();
    chooseUnit(id == 0 ? m_units.front().measure : price.measure);
    m_amount->setUnit(QString::fromStdString(room().currency));
    m_amount->setNumber(id == 0 ? std::nullopt : std::optional(inUnits(price.amount)), 4);
    settleForm();
}

// What the chosen thing may be priced by, in the room's units.
void PricePart::fillUnits()
{
    const auto item = chosenOf<PriceItem>(*m_item);
    m_medium->setEnabled(item == PriceItem::Medium);
    bool isLooseMix = false;
    for (const Medium& each : m_media) {
        if (each.id == chosen<MediumId>(*m_medium)) {
            isLooseMix = each.form == MediumForm::LooseMix;
        }
    }
    // The measure that this price was given for is offered, whatever is usual.
    const bool isOfShown =
        m_shown && m_shown->id.isStored() && m_shown->item == item &&
        (item != PriceItem::Medium || m_shown->medium == chosen<MediumId>(*m_medium));
    const PriceMeasure kept = m_measure;
    m_units = priceUnits(item, isLooseMix, room().units,
                         isOfShown ? std::optional(m_shown->measure) : std::nullopt);
    m_unit->clear();
    for (const PriceUnit& each : m_units) {
        m_unit->addItem(each.name);
    }
    chooseUnit(kept);
}

// The first where that one is not among them.
void PricePart::chooseUnit(PriceMeasure measure)
{
    const auto found = std::find_if(m_units.begin(), m_units.end(),
                                    [&](const PriceUnit& each) { return each.measure == measure; });
    m_unit->setCurrentIndex(
        found == m_units.end() ? 0 : static_cast<int>(std::distance(m_units.begin(), found)));
    m_measure = unit().measure;
}

const PriceUnit& PricePart::unit() const
{
    return m_units[static_cast<std::size_t>(std::max(0, m_unit->currentIndex()))];
}

// The same price, for another measure of the thing.
void PricePart::turnAmount()
{
    const auto typed = m_amount->number();
    if (typed && *typed) {
        m_amount->setNumber(**typed / unitsIn(m_measure) * unitsIn(unit().measure), 4);
    }
    m_measure = unit().measure;
}

void PricePart::showLabour()
{
    const auto tasks = journal().costs().labour().value_or(std::vector<LabourTask>());
    if (tasks == m_shownLabour) {
        return;
    }
    const bool isSameRows =
        std::equal(tasks.begin(), tasks.end(), m_shownLabour.begin(), m_shownLabour.end(),
                   [](const LabourTask& a, const LabourTask& b) { return a.id == b.id; });
    m_shownLabour = tasks;
    if (isSameRows) {
        // In place: the focus may be on the next of these fields by now.
        for (const LabourTask& task : tasks) {
            auto* field = findChild<NumberField*>(labourFieldName(task.kind));
            const auto typed = field->number();
            const bool isSaved = typed && *typed && qRound(**typed * 60) == task.seconds;
            if (isSaved || !field->isModified() || !field->hasFocus()) {
                field->setNumber(task.seconds / 60.0, 2);
            }
        }
        return;
    }
    while (m_labour->rowCount() > 0) {
        m_labour->removeRow(0);
    }
    for (const LabourTask& task : tasks) {
        auto* field = new NumberField(tr("min"));
        field->setObjectName(labourFieldName(task.kind));
        field->setRange(0, 600);
        field->setMaximumWidth(scaled(140));
        field->setNumber(task.seconds / 60.0, 2);
        m_labour->addRow(nameOf(task.kind), field);
        connect(field, &QLineEdit::editingFinished, this,
                [this, kind = task.kind, field] { saveLabour(kind, *field); });
    }
}

void PricePart::saveLabour(LabourKind kind, NumberField& field)
{
    const auto found = std::find_if(m_shownLabour.begin(), m_shownLabour.end(),
                                    [&](const LabourTask& task) { return task.kind == kind; });
    if (found == m_shownLabour.end()) {
        return;
    }
    const LabourTask& task = *found;
    const auto minutes = field.number();
    if (!minutes || !*minutes) {
        field.markWrong(true);
        return;
    }
    LabourTask changed = task;
    changed.seconds = qRound(**minutes * 60);
    if (changed.seconds != task.seconds) {
        // Queued: the answer builds these fields anew, and this one is the sender.
        QMetaObject::invokeMethod(
            this,
            [this, changed] {
                settle(journal().costs().changeLabour(changed),
                       tr("Changed the minutes of %1.").arg(nameOf(changed.kind)));
            },
            Qt::QueuedConnection);
    }
}

bool PricePart::save()
{
    if (!m_from->requireDate()) {
        services().messages.refuse(howToWriteADay());
        return false;
    }
    const auto amount = m_amount->number();
    if (!amount || !*amount) {
        m_amount->markWrong(true);
        services().messages.refuse(tr("Please give a price, such as 4.20."));
        return false;
    }
    Price price;
    price.id = PriceId{m_records->chosen()};
    price.item = chosenOf<PriceItem>(*m_item);
    if (price.item == PriceItem::Medium) {
        price.medium = chosenOf<MediumId>(*m_medium);
    }
    price.from = *m_from->date();
    price.amount = money(**amount);
    price.measure = unit().measure;
    const auto saved = journal().costs().savePrice(price);
    if (!settle(saved, tr("Saved the price."))) {
        return false;
    }
    m_records->choose(saved->id.value);
    settleForm();
    return true;
}

void PricePart::remove()
{
    services().ask.confirm(
        this, tr("Remove a price"), tr("Remove this price?"), tr("Remove"), [this] {
            if (settle(journal().costs().removePrice(PriceId{m_records->chosen()}),
                       tr("Removed the price."))) {
                m_records->choose(0);
            }
        });
}

} // namespace plumule::ui

#include "moc_price_part.cpp"
