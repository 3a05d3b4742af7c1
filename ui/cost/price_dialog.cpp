#include "ui/cost/price_dialog.h"

#include "core/cost/price_history.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/price_fields.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {

PriceDialog::PriceDialog(Journal& journal, Services services, std::optional<PriceItem> item,
                         std::optional<MediumId> medium, QWidget* parent)
    : RecordDialog(journal, services, "priceDialog", tr("A price"), parent)
{
    const auto layout = journal.room().layout();
    const Room room = layout ? layout->room : Room();
    auto* form = fieldForm();
    m_fields = new PriceFields(*form, this);
    m_fields->setMedia(journal.media().all(Listed::All).value_or(std::vector<Medium>()));
    Price price;
    price.item = item.value_or(PriceItem::Medium);
    price.medium = medium;
    price.from = journal.clock().today();
    m_fields->show(price, room);
    if (item) {
        m_fields->fixWhat();
        showHistory(*item, medium, room);
    }
    body()->addLayout(form);
    body()->addStretch(1);
    wish({scaled(560), scaled(item ? 560 : 380)});
    addSave("savePrice", tr("Save"));
    panel()->settle();
}

void PriceDialog::showHistory(PriceItem item, std::optional<MediumId> medium, const Room& room)
{
    const auto prices = journal().costs().prices();
    if (!prices) {
        return;
    }
    const auto media = medium ? std::vector<MediumId>{*medium} : std::vector<MediumId>();
    for (const PriceHistory& history : priceHistories(*prices, media)) {
        if (history.item == item && history.medium == medium && !history.steps.empty()) {
            auto* chart = new ChartView;
            chart->setObjectName("priceHistory");
            chart->setMinimumHeight(scaled(180));
            const Date today = journal().clock().today();
            chart->draw(priceChart(history, std::min(history.steps.front().from, today - 30), today,
                                   room.currency));
            body()->addWidget(chart);
        }
    }
}

std::optional<QString> PriceDialog::save()
{
    auto price = m_fields->read();
    if (!price) {
        refuse(price.error());
        return std::nullopt;
    }
    for (const Price& each : journal().costs().prices().value_or(std::vector<Price>())) {
        if (each.item == price->item && each.medium == price->medium && each.from == price->from) {
            price->id = each.id;
        }
    }
    const auto saved = journal().costs().savePrice(*price);
    if (!saved) {
        refuse(sentence(saved.error()));
        return std::nullopt;
    }
    return tr("Saved the price.");
}

} // namespace plumule::ui

#include "moc_price_dialog.cpp"
