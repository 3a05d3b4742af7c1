#pragma once

#include "core/base/result.h"
#include "core/variety/variety.h"

namespace plumule {

// Missing name or prefix; Invalid prefix (two letters A–Z), seed, or stages that are out of order,
// doubled, without length, watered without a method or more than twice a day. A fault in a stage
// has the stage's key as its value.
[[nodiscard]] Done checkProtocol(const Protocol& protocol);

// Missing lot number; Invalid: germination beyond 0 to 100 %, nothing bought, a negative price.
[[nodiscard]] Done checkLot(const SeedLot& lot);

// Bought less sown, corrected; none when the purchase was not weighed.
[[nodiscard]] std::optional<Mass> leftOf(const SeedLot& lot, Mass sown, Mass corrections);

} // namespace plumule
