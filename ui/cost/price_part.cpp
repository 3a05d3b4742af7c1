#include "ui/cost/price_part.h"

#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "ui/cost/price_fields.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/master_detail.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

QString labourFieldName(LabourKind kind)
{
    return QStringLiteral("labour") + QLatin1String(toText(kind));
}

} // namespace

PricePart::PricePart(Journal& journal, Services services, QWidget* parent)
    : RecordPart(journal, services, tr("New price"), parent)
{
    m_fields = new PriceFields(*m_records->form(), this);
    buildLabour();
}

QString PricePart::name() const
{
    return tr("Prices and work");
}

bool PricePart::concerns(Concept about) const
{
    return about == Concept::Cost || about == Concept::Medium || about == Concept::Room;
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
    const auto media = journal().media().all(Listed::All).value_or(std::vector<Medium>());
    std::map<MediumId, QString> names;
    for (const Medium& each : media) {
        names[each.id] = QString::fromStdString(each.name);
    }
    m_fields->setMedia(media);
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
    m_fields->show(price, room());
    settleForm();
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
    const auto price = m_fields->read();
    if (!price) {
        services().messages.refuse(price.error());
        return false;
    }
    const auto saved = journal().costs().savePrice(*price);
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
