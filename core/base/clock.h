#pragma once

#include "core/base/date.h"

#include <cstdint>

namespace plumule {

// The only source of "now". It is handed in, so that tests and commands can set it.
class Clock
{
public:
    virtual ~Clock() = default;
    // The room's civil time.
    [[nodiscard]] virtual Moment now() const = 0;
    // Milliseconds since 1970-01-01 UTC, for history and backups.
    [[nodiscard]] virtual std::int64_t utcMilliseconds() const = 0;

    [[nodiscard]] Date today() const { return now().date; }
};

// Stands still until it is set.
class FixedClock : public Clock
{
public:
    explicit FixedClock(Moment moment)
        : m_now(moment)
    {}
    void set(Moment moment) { m_now = moment; }
    [[nodiscard]] Moment now() const override { return m_now; }
    // Takes the civil time for UTC.
    [[nodiscard]] std::int64_t utcMilliseconds() const override
    {
        return (std::int64_t{m_now.date.days} * kMinutesPerDay + m_now.minute) * 60'000;
    }

private:
    Moment m_now;
};

} // namespace plumule
