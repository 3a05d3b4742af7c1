#include "core/order/order_needs.h"

#include <algorithm>

namespace plumule {
namespace {

Date firstDayOf(const SowingNeed& need)
{
    return need.times.sow.date;
}

// Places that are taken from a day on, day by day.
class PlacesAhead
{
public:
    explicit PlacesAhead(const OrderFacts& facts)
        : m_facts(facts)
    {}

    // At the fullest of these days; the last one not included.
    [[nodiscard]] int freeFrom(Date from, Date until) const
    {
        int least = m_facts.places;
        for (Date day = from; day == from || day < until; day = day + 1) {
            least = std::min(least, freeOn(day));
        }
        return std::max(0, least);
    }

    void take(Date from, Date until, int trays)
    {
        for (Date day = from; day < until; day = day + 1) {
            m_planned[day] += trays;
        }
    }

private:
    [[nodiscard]] int freeOn(Date day) const
    {
        const auto taken = std::count_if(
            m_facts.leaving.begin(), m_facts.leaving.end(),
            [&](const std::optional<Date>& leaves) { return !leaves || *leaves > day; });
        const auto planned = m_planned.find(day);
        return m_facts.places - static_cast<int>(taken) -
               (planned == m_planned.end() ? 0 : planned->second);
    }

    const OrderFacts& m_facts;
    std::map<Date, int> m_planned;
};

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
    PlacesAhead places(facts);
    auto seed = facts.seedLeft;
    auto pieces = facts.freePieces;
    for (OrderLine* line : inTurn) {
        SowingNeed& need = *line->sowing;
        const Date until = line->promise.day;
        need.freePlaces = places.freeFrom(firstDayOf(need), until);
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
