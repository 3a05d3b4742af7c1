#pragma once

#include "core/tray/tray.h"

namespace plumule {

// Where a tray shall stand; none: off the racks.
struct TrayMove
{
    TrayId tray;
    std::optional<PlaceId> to;
    bool operator==(const TrayMove&) const = default;
};

} // namespace plumule
