#pragma once

#include "core/order/order_plan.h"

namespace plumule {

// Fills in the places, pieces and seed that each sowing finds. What is to be sown first, the older
// promise first on one day, takes from what is left to the others.
void addWhatThereIs(const OrderFacts& facts, std::vector<OrderLine>& lines);

} // namespace plumule
