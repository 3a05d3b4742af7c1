#include "ui/order/order_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "ui/medium/marker.h"
#include "ui/order/order_text.h"
#include "ui/page/undoing.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCompleter>
#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

template <class Field>
Field* withName(Field* field, const char* name)
{
    field->setObjectName(QString::fromLatin1(name));
    return field;
}

} // namespace

OrderDialog::OrderDialog(Journal& journal, Services services, const Order& order, QWidget* parent)
    : RecordDialog(journal, services, "orderDialog",
                   order.id.isStored() ? tr("Change the order") : tr("A new order"), parent)
    , m_order(order)
    , m_given(services)
{
    if (const auto layout = journal.room().layout()) {
        m_units = layout->room.units;
    }
    wish({scaled(560), 0});
    buildFields();
    fillChoices();
    if (m_order.id.isStored()) {
        const QString whom = m_order.recurs == Recurrence::Once
                                 ? tr("this order")
                                 : tr("this order with all its days, past ones too");
        addRemove("orderRemove", tr("Remove an order"), whom.toStdString(),
                  [this] { return this->journal().orders().remove(m_order.id); });
        addEnd();
    }
    addSave("orderSave", tr("Save"));
    fill();
}

void OrderDialog::buildFields()
{
    auto* form = fieldForm();
    m_customer = withName(new QLineEdit, "orderCustomer");
    m_customer->setPlaceholderText(tr("may stay empty"));
    m_variety = withName(new QComboBox, "orderVariety");
    m_amount = withName(new NumberField, "orderAmount");
    m_day = new DateField("orderDay");
    m_recurs = withName(new QComboBox, "orderRecurs");
    m_endsOn = new DateField("orderEnds");
    m_endsOn->setPlaceholderText(tr("goes on"));
    m_endsOn->setAccessibleName(tr("Ends on"));
    m_endsName = label(tr("Ends on"));
    m_medium = withName(new QComboBox, "orderMedium");
    m_note = withName(new QLineEdit, "orderNote");
    form->addRow(tr("Whom"), m_customer);
    form->addRow(tr("Variety"), m_variety);
    form->addRow(tr("Promised"), m_amount);
    form->addRow(tr("For"), m_day);
    form->addRow(tr("How often"), m_recurs);
    form->addRow(m_endsName, m_endsOn);
    form->addRow(tr("Grown on"), m_medium);
    form->addRow(tr("Note"), m_note);
    body()->addLayout(form);
    auto* words = label(tr("A standing order that is changed keeps what it promised on days that "
                           "have passed: the change holds from today on."),
                        "muted");
    words->setWordWrap(true);
    words->setVisible(m_order.id.isStored() && m_order.recurs == Recurrence::Weekly);
    body()->addWidget(words);
    connect(m_recurs, &QComboBox::currentIndexChanged, this, &OrderDialog::showStanding);
}

void OrderDialog::fillChoices()
{
    QStringList customers;
    for (const Order& each : journal().orders().all().value_or(std::vector<Order>())) {
        customers << QString::fromStdString(each.customer);
    }
    customers.removeAll(QString());
    customers.removeDuplicates();
    auto* known = new QCompleter(customers, m_customer);
    known->setCaseSensitivity(Qt::CaseInsensitive);
    m_customer->setCompleter(known);
    for (const Variety& each : journal().varieties().all().value_or(std::vector<Variety>())) {
        addChoice(*m_variety, QString::fromStdString(each.name), each.id);
    }
    addChoice(*m_recurs, tr("once"), Recurrence::Once);
    addChoice(*m_recurs, tr("every week"), Recurrence::Weekly);
    m_medium->addItem(tr("the medium it is sown on most"));
    for (const Medium& each : journal().media().all().value_or(std::vector<Medium>())) {
        addChoice(*m_medium, QString::fromStdString(each.name), each.id, markerIcon(each.marker));
    }
}

void OrderDialog::fill()
{
    m_customer->setText(QString::fromStdString(m_order.customer));
    choose(*m_variety, m_order.variety);
    showMass(*m_amount, m_order.amount > Mass{} ? std::optional(m_order.amount) : std::nullopt,
             m_units);
    m_day->setDate(m_order.day);
    choose(*m_recurs, m_order.recurs);
    m_endsOn->setDate(m_order.endsOn);
    choose(*m_medium, m_order.medium);
    m_note->setText(QString::fromStdString(m_order.note));
    showStanding();
    panel()->settle();
}

void OrderDialog::addEnd()
{
    if (m_order.recurs == Recurrence::Once) {
        return;
    }
    const auto endNow = [this] {
        if (const Done ended = journal().orders().end(m_order.id, journal().clock().today());
            !ended) {
            refuse(sentence(ended.error()));
            return;
        }
        tellLast(journal(), m_given);
        accept();
    };
    auto* end = button(tr("End it today…"));
    end->setObjectName("orderEnd");
    body()->addWidget(end, 0, Qt::AlignLeft);
    connect(end, &QPushButton::clicked, this, [this, endNow] {
        m_given.ask.confirm(this, tr("End a standing order"),
                            tr("Promise nothing of it from today on? What it promised "
                               "before stays."),
                            tr("End it"), endNow);
    });
}

void OrderDialog::showStanding()
{
    const bool isStanding = chosenOf<Recurrence>(*m_recurs) == Recurrence::Weekly;
    m_endsName->setVisible(isStanding);
    m_endsOn->setVisible(isStanding);
}

std::optional<Order> OrderDialog::typed()
{
    Order order = m_order;
    const auto amount = massIn(*m_amount, m_units);
    m_amount->markWrong(!amount);
    if (!amount) {
        refuse(sentence(amount.error()));
        return std::nullopt;
    }
    if (!m_day->requireDate() || m_endsOn->isUnreadable()) {
        refuse(howToWriteADay());
        return std::nullopt;
    }
    order.customer = m_customer->text().toStdString();
    order.variety = chosenOf<VarietyId>(*m_variety);
    order.amount = amount->value_or(Mass{});
    order.day = *m_day->date();
    order.recurs = chosenOf<Recurrence>(*m_recurs);
    order.endsOn = order.recurs == Recurrence::Weekly ? m_endsOn->date() : std::nullopt;
    order.medium = chosen<MediumId>(*m_medium);
    order.note = m_note->text().toStdString();
    return order;
}

std::optional<QString> OrderDialog::save()
{
    const auto order = typed();
    if (!order) {
        return std::nullopt;
    }
    const auto saved = journal().orders().save(*order);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    const UnitText units(m_units);
    return tr("Saved the order of %1 for %2.")
        .arg(units.mass(saved->amount, 0), weekdayText(saved->day));
}

} // namespace plumule::ui

#include "moc_order_dialog.cpp"
