#pragma once

#include "core/base/result.h"
#include "core/journal/ledger/intention.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace plumule {

// Which concept a change belongs to, for those who show it.
enum class Concept
{
    Room,
    Variety,
    Medium,
    Trial,
    Tray,
    Watering,
    Harvest,
    Cost,
    Climate,
    Week,
    Order,
    Stock
};

struct Change
{
    Concept about = Concept::Tray;
    std::int64_t id = 0; // of the row that changed
};

using ChangeListener = std::function<void(const std::vector<Change>&)>;
using RefusalListener = std::function<void(Intention, const Error&)>;

} // namespace plumule
