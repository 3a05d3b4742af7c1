#include "app/system_clock.h"

#include <chrono>
#include <ctime>

namespace plumule::app {

Moment SystemClock::now() const
{
    const std::time_t seconds = std::time(nullptr);
    std::tm local = {};
    ::localtime_r(&seconds, &local);
    return {date(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1),
                 static_cast<unsigned>(local.tm_mday)),
            local.tm_hour * 60 + local.tm_min};
}

std::int64_t SystemClock::utcMilliseconds() const
{
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(since).count();
}

} // namespace plumule::app
