#include "core/order/order_needs.h"

#include "core/room/free_days.h"

#include <algorithm>

namespace plumule {
namespace {

Date firstDayOf(const SowingNeed& need)
{
    return need.times.sow.date;
}

// Through the last promised day.
FreeDays placesAhead(const OrderFacts& facts, const std::vector<OrderLine*>& lines)
{
    const Date today = facts.now.date;
    Date last = today;
    for (const OrderLine* line : lines) {
        last = std::max(last, line->promise.day);
    }
    FreeDays places(facts.places, today, last - today + 1);
    for (const std::optional<Date>& leaves : facts.leaving) {
        places.take(today, leaves.value_or(last + 1), 1);
    }
    return places;
}

} // namespace

void addWhatThereIs(const OrderFacts& facts, std::vector<OrderLine>& lines)
{
    std::vector<OrderLine*> inTurn;
    for (OrderLine& line : lines) {
        if (line.sowing && !line.sowing->isLate) {
            inTurn.push_back(&line);
        }
    }
    std::stable_sort(inTurn.begin(), inTurn.end(), [](const OrderLine* a, const OrderLine* b) {
        return firstDayOf(*a->sowing) < firstDayOf(*b->sowing);
    });
    FreeDays places = placesAhead(facts, inTurn);
    auto seed = facts.seedLeft;
    auto pieces = facts.freePieces;
    for (OrderLine* line : inTurn) {
        SowingNeed& need = *line->sowing;
        const Date until = line->promise.day;
        need.freePlaces = std::max(0, places.through(firstDayOf(need), until));
        places.take(firstDayOf(need), until, need.trays);
        if (need.medium.isReusable) {
            int& free = pieces[need.medium.id];
            need.freePieces = std::max(0, free);
            free -= need.trays;
        }
        if (const auto left = seed.find(line->promise.order.variety); left != seed.end()) {
            need.seedLeft = std::max(Mass{}, left->second);
            left->second -= need.seed.value_or(Mass{});
        }
    }
}

} // namespace plumule
