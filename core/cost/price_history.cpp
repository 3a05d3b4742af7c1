#include "core/cost/price_history.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

constexpr int kDaysOfAYear = 365;
constexpr std::array kPricedItems{
    PriceItem::Labour,    PriceItem::Electricity, PriceItem::Water, PriceItem::Concentrate,
    PriceItem::Packaging, PriceItem::Washing,     PriceItem::Waste};

PriceHistory historyOf(const std::vector<Price>& prices, PriceItem item,
                       std::optional<MediumId> medium)
{
    PriceHistory history;
    history.item = item;
    history.medium = medium;
    for (const Price& price : prices) {
        if (price.item == item && price.medium == medium) {
            history.steps.push_back({price.from, inUnits(price.amount) / unitsIn(price.measure)});
        }
    }
    std::sort(history.steps.begin(), history.steps.end(),
              [](const PriceStep& a, const PriceStep& b) { return a.from < b.from; });
    return history;
}

ChartPoint pointAt(Date day, double price)
{
    return {static_cast<double>(day.days), price, "", std::nullopt, false};
}

} // namespace

std::optional<double> PriceHistory::on(Date day) const
{
    std::optional<double> holding;
    for (const PriceStep& step : steps) {
        if (!(day < step.from)) {
            holding = step.perUnit;
        }
    }
    return holding;
}

std::optional<double> PriceHistory::yearlyChange(Date day) const
{
    const auto now = on(day);
    const auto before = on(day - kDaysOfAYear);
    return now && before && *before > 0 ? std::optional(*now / *before - 1) : std::nullopt;
}

std::vector<PriceHistory> priceHistories(const std::vector<Price>& prices,
                                         const std::vector<MediumId>& media)
{
    std::vector<PriceHistory> histories;
    histories.reserve(std::size(kPricedItems) + media.size());
    for (const PriceItem item : kPricedItems) {
        histories.push_back(historyOf(prices, item, std::nullopt));
    }
    for (const MediumId medium : media) {
        histories.push_back(historyOf(prices, PriceItem::Medium, medium));
    }
    return histories;
}

PriceHistory seedPriceHistory(const std::map<SeedLotId, SeedLot>& lots, VarietyId variety)
{
    PriceHistory history;
    history.variety = variety;
    std::map<Date, double> byDay;
    for (const auto& [id, lot] : lots) {
        const bool isPriced = lot.boughtOn && lot.price && lot.bought && *lot.bought > Mass();
        if (lot.variety == variety && isPriced) {
            byDay[*lot.boughtOn] = inUnits(*lot.price) / (inGrams(*lot.bought) / 1e3);
        }
    }
    for (const auto& [day, price] : byDay) {
        history.steps.push_back({day, price});
    }
    return history;
}

ChartSpec priceChart(const PriceHistory& history, Date from, Date to, const std::string& currency)
{
    ChartSpec spec;
    spec.key = "price_history";
    spec.form = ChartForm::Curves;
    spec.x.key = "date";
    spec.x.low = from.days;
    spec.x.high = std::max(to, from + 1).days;
    spec.y.key = "price";
    spec.y.unit = currency;
    ChartSeries line;
    line.marker = -1;
    line.form = SeriesForm::Line;
    ChartSeries changes = line;
    changes.form = SeriesForm::Dots;
    std::optional<double> holding = history.on(from);
    if (holding) {
        line.points.push_back(pointAt(from, *holding));
    }
    for (const PriceStep& step : history.steps) {
        if (step.from <= from || to < step.from) {
            continue;
        }
        if (holding) {
            line.points.push_back(pointAt(step.from, *holding));
        }
        holding = step.perUnit;
        line.points.push_back(pointAt(step.from, *holding));
        changes.points.push_back(pointAt(step.from, *holding));
    }
    if (holding) {
        line.points.push_back(pointAt(to, *holding));
        spec.series = {std::move(line), std::move(changes)};
    }
    return spec;
}

} // namespace plumule
