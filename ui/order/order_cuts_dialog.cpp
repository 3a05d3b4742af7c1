#include "ui/order/order_cuts_dialog.h"

#include "core/journal/order/order_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/order/order_text.h"
#include "ui/page/undoing.h"
#include "ui/widget/check_list.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QVBoxLayout>

namespace plumule::ui {

OrderCutsDialog::OrderCutsDialog(Journal& journal, Services services, const Promise& promise,
                                 const QString& variety, QWidget* parent)
    : FormDialog(services.ask, "orderCutsDialog", tr("Cuts of an order"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_promise(promise.key())
{
    wish({scaled(560), scaled(520)});
    UnitSystem system = UnitSystem::Metric;
    if (const auto layout = journal.room().layout()) {
        system = layout->room.units;
    }
    body()->addWidget(label(
        tr("%1: %2 of %3")
            .arg(promiseText(promise), UnitText(system).mass(promise.order.amount, 0), variety),
        "strong"));
    auto* words =
        label(tr("What is ticked goes to this order whole, and what you untick to none. %1")
                  .arg(sharingRule()),
              "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    m_cuts = new CheckList("orderCuts");
    m_cuts->setMinimumHeight(scaled(180));
    m_cuts->setAccessibleName(tr("Cuts of the week up to the day"));
    body()->addWidget(m_cuts, 1);
    fill();
    connect(addLeftButton(tr("By rule again"), "orderCutsByRule"), &QPushButton::clicked, this,
            [this] { finish(m_journal.orders().shareByRule(m_promise)); });
    addCancel();
    connect(addButton(tr("Save"), "orderCutsSave", "primary"), &QPushButton::clicked, this, [this] {
        finish(m_journal.orders().setCuts(m_promise, m_cuts->checked<HarvestId>()));
    });
    panel()->settle();
}

void OrderCutsDialog::fill()
{
    const auto cuts = m_journal.orders().cutsFor(m_promise);
    const auto layout = m_journal.room().layout();
    if (!cuts || !layout) {
        refuse(sentence(cuts ? layout.error() : cuts.error()));
        return;
    }
    const UnitText units(layout->room.units);
    for (const CutForPromise& each : *cuts) {
        QString words = tr("%1, %2: %3")
                            .arg(QString::fromStdString(each.cut.code), weekdayText(each.cut.on),
                                 units.mass(each.cut.net));
        if (each.part > Mass{} && each.part < each.cut.net) {
            words = tr("%1, of which %2").arg(words, units.mass(each.part));
        }
        if (each.cut.byHand) {
            words = tr("%1, by hand").arg(words);
        }
        m_cuts->addCheck(words, each.cut.id.value, each.part > Mass{});
    }
    if (cuts->empty()) {
        refuse(tr("Nothing of it was cut in the week up to that day."));
    }
}

void OrderCutsDialog::finish(const Done& done)
{
    if (!done) {
        refuse(sentence(done.error()));
        return;
    }
    tellLast(m_journal, m_services);
    accept();
}

} // namespace plumule::ui

#include "moc_order_cuts_dialog.cpp"
