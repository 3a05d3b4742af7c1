#include "app/system_clock.h"

#include <chrono>

namespace plumule::app {

Moment momentAt(std::time_t seconds)
{
    std::tm local = {};
    ::localtime_r(&seconds, &local);
    return {date(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1),
                 static_cast<unsigned>(local.tm_mday)),
            local.tm_hour * 60 + local.tm_min};
}

Moment SystemClock::now() const
{
    return momentAt(std::time(nullptr));
}

std::int64_t SystemClock::utcMilliseconds() const
{
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(since).count();
}

} // namespace plumule::app
