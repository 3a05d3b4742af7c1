#pragma once

#include "core/base/clock.h"

#include <ctime>

namespace plumule::app {

// Seconds since 1970-01-01 UTC in the computer's time zone.
[[nodiscard]] Moment momentAt(std::time_t seconds);

// The computer's clock in its own time zone.
class SystemClock : public Clock
{
public:
    [[nodiscard]] Moment now() const override;
    [[nodiscard]] std::int64_t utcMilliseconds() const override;
};

} // namespace plumule::app
