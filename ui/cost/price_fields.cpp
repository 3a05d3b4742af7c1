#include "ui/cost/price_fields.h"

#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

constexpr std::array kItems{PriceItem::Medium,      PriceItem::Concentrate, PriceItem::Water,
                            PriceItem::Electricity, PriceItem::Labour,      PriceItem::Packaging,
                            PriceItem::Washing,     PriceItem::Waste};

} // namespace

PriceFields::PriceFields(QFormLayout& form, QObject* parent)
    : QObject(parent)
{
    m_item = new QComboBox;
    m_item->setObjectName("priceItem");
    m_item->setToolTip(tr("Seed has its price with its lot."));
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
    form.addRow(tr("Price of"), m_item);
    form.addRow(tr("Medium"), m_medium);
    form.addRow(tr("Holds from"), m_from);
    auto* priced = new FlowLayout;
    priced->addWidget(m_amount);
    priced->addWidget(m_unit);
    form.addRow(tr("Price"), priced);
    connect(m_item, &QComboBox::currentIndexChanged, this, &PriceFields::fillUnits);
    connect(m_medium, &QComboBox::currentIndexChanged, this, &PriceFields::fillUnits);
    connect(m_unit, &QComboBox::activated, this, &PriceFields::turnAmount);
}

void PriceFields::setMedia(const std::vector<Medium>& media)
{
    m_media = media;
    refill(*m_medium, [&] {
        for (const Medium& each : m_media) {
            addChoice(*m_medium, QString::fromStdString(each.name), each.id);
        }
    });
}

void PriceFields::show(const Price& price, const Room& room)
{
    m_shown = price;
    m_shownIn = room.units;
    choose(*m_item, price.item);
    if (price.medium) {
        choose(*m_medium, price.medium);
    }
    m_from->setDate(price.from);
    fillUnits();
    const bool isNew = !price.id.isStored();
    chooseUnit(isNew ? m_units.front().measure : price.measure);
    m_amount->setUnit(QString::fromStdString(room.currency));
    m_amount->setNumber(isNew ? std::nullopt : std::optional(inUnits(price.amount)), 4);
}

void PriceFields::fixWhat()
{
    m_item->setEnabled(false);
    m_medium->setEnabled(false);
}

// What the chosen thing may be priced by, in the room's units.
void PriceFields::fillUnits()
{
    const auto item = chosenOf<PriceItem>(*m_item);
    m_medium->setEnabled(item == PriceItem::Medium && m_item->isEnabled());
    const auto medium = std::find_if(m_media.begin(), m_media.end(), [this](const Medium& each) {
        return each.id == chosen<MediumId>(*m_medium);
    });
    const bool isLooseMix = medium != m_media.end() && medium->form == MediumForm::LooseMix;
    // The measure that this price was given for is offered, whatever is usual.
    const bool isOfShown =
        m_shown.id.isStored() && m_shown.item == item &&
        (item != PriceItem::Medium || m_shown.medium == chosen<MediumId>(*m_medium));
    const PriceMeasure kept = m_measure;
    m_units = priceUnits(item, isLooseMix, m_shownIn,
                         isOfShown ? std::optional(m_shown.measure) : std::nullopt);
    m_unit->clear();
    for (const PriceUnit& each : m_units) {
        m_unit->addItem(each.name);
    }
    chooseUnit(kept);
}

// The first where that one is not among them.
void PriceFields::chooseUnit(PriceMeasure measure)
{
    const auto found = std::find_if(m_units.begin(), m_units.end(),
                                    [&](const PriceUnit& each) { return each.measure == measure; });
    m_unit->setCurrentIndex(
        found == m_units.end() ? 0 : static_cast<int>(std::distance(m_units.begin(), found)));
    m_measure = unit().measure;
}

const PriceUnit& PriceFields::unit() const
{
    return m_units[static_cast<std::size_t>(std::max(0, m_unit->currentIndex()))];
}

// The same price, for another measure of the thing.
void PriceFields::turnAmount()
{
    const auto typed = m_amount->number();
    if (typed && *typed) {
        m_amount->setNumber(**typed / unitsIn(m_measure) * unitsIn(unit().measure), 4);
    }
    m_measure = unit().measure;
}

tl::expected<Price, QString> PriceFields::read()
{
    if (!m_from->requireDate()) {
        return tl::unexpected(howToWriteADay());
    }
    const auto amount = m_amount->number();
    if (!amount || !*amount) {
        m_amount->markWrong(true);
        return tl::unexpected(tr("Please give a price, such as 4.20."));
    }
    Price price;
    price.id = m_shown.id;
    price.item = chosenOf<PriceItem>(*m_item);
    if (price.item == PriceItem::Medium) {
        price.medium = chosenOf<MediumId>(*m_medium);
    }
    price.from = *m_from->date();
    price.amount = money(**amount);
    price.measure = unit().measure;
    return price;
}

} // namespace plumule::ui

#include "moc_price_fields.cpp"
