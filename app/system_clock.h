#pragma once

#include "core/base/clock.h"

namespace plumule::app {

// The computer's clock in its own time zone.
class SystemClock : public Clock
{
public:
    [[nodiscard]] Moment now() const override;
    [[nodiscard]] std::int64_t utcMilliseconds() const override;
};

} // namespace plumule::app
