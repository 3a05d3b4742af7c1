#pragma once

#include "core/base/date.h"

namespace plumule::bench {

// When the invented rooms are looked at: a morning's round.
inline constexpr int kMorningMinute = 430;
[[nodiscard]] inline Moment presentMoment()
{
    return {dateFromIso("2026-11-28").value(), kMorningMinute};
}

} // namespace plumule::bench
