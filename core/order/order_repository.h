#pragma once

#include "core/order/cut_shares.h"
#include "core/storage/database.h"

namespace plumule {

// Stores orders and the cuts that were put to them by hand. Writing needs an open transaction.
class OrderRepository
{
public:
    explicit OrderRepository(Database& database)
        : m_database(database)
    {}

    // As they were written down.
    [[nodiscard]] std::vector<Order> all();
    [[nodiscard]] std::optional<Order> find(OrderId order);
    void insert(Order& order);
    void update(const Order& order);
    // With the cuts that were put to it by hand.
    void remove(OrderId order);

    [[nodiscard]] std::optional<WeighedCut> cut(HarvestId cut);
    // Weighed from one day to another, both included, in order; one query.
    [[nodiscard]] std::vector<WeighedCut> cuts(Date from, Date to);
    // By hand; instead of what was said of that cut before.
    void assign(const OrderCut& cut);
    // It goes by rule again.
    void release(HarvestId cut);

    // The medium that most trays of each variety were sown on; of as many, the one sown last.
    [[nodiscard]] std::map<VarietyId, MediumId> usualMedia();

private:
    Database& m_database;
};

} // namespace plumule
