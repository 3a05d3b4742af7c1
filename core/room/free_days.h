#pragma once

#include "core/base/date.h"

#include <vector>

namespace plumule {

// How many of a number of things (places, pieces) are free, day by day from a day on. What is taken
// until a day is free again on it. Days beyond its end are as its last.
class FreeDays
{
public:
    // May fall below 0 where more is taken than there is.
    FreeDays(int things, Date from, int days);

    void take(Date from, Date until, int count);
    [[nodiscard]] int on(Date day) const;
    // The fewest from that day to the day before `until`, at least on the first day.
    [[nodiscard]] int through(Date from, Date until) const;

private:
    [[nodiscard]] std::size_t placeOf(Date day) const;

    Date m_from;
    std::vector<int> m_free;
};

} // namespace plumule
