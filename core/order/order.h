#pragma once

#include "core/harvest/harvest.h"

namespace plumule {

struct OrderTag;
struct OrderCutTag;
using OrderId = Id<OrderTag>;
using OrderCutId = Id<OrderCutTag>;

enum class Recurrence
{
    Once,
    Weekly // a standing order: the same day of every week
};
[[nodiscard]] const char* toText(Recurrence recurrence); // once, weekly
bool fromText(std::string_view text, Recurrence& recurrence);

// An amount of a variety that is promised for a day.
struct Order
{
    OrderId id;
    VarietyId variety;
    std::optional<MediumId> medium; // to be sown on it; none: the one with most trays on record
    Mass amount;
    Date day; // of a standing one the first
    Recurrence recurs = Recurrence::Once;
    std::optional<Date> endsOn; // from that day on nothing is promised
    std::string customer;       // may be empty
    std::string note;
    bool operator==(const Order&) const = default;
};

// One day of an order.
struct PromiseKey
{
    Date day;
    OrderId order;
    auto operator<=>(const PromiseKey&) const = default;
};

struct Promise
{
    Order order;
    Date day;
    bool operator==(const Promise&) const = default;

    [[nodiscard]] PromiseKey key() const { return {day, order.id}; }
};

// The oldest first, those of one day as they were written down.
[[nodiscard]] inline bool isBefore(const Promise& a, const Promise& b)
{
    return a.key() < b.key();
}

// A cut that was put to a promise by hand; neither order nor day: to none.
struct OrderCut
{
    OrderCutId id;
    HarvestId harvest;
    std::optional<OrderId> order;
    std::optional<Date> day;
    bool operator==(const OrderCut&) const = default;
};

} // namespace plumule
