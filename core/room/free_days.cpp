#include "core/room/free_days.h"

namespace plumule {

FreeDays::FreeDays(int things, Date from, int days)
    : m_from(from)
    , m_free(static_cast<std::size_t>(std::max(days, 1)), things)
{}

std::size_t FreeDays::placeOf(Date day) const
{
    return static_cast<std::size_t>(
        std::clamp(day - m_from, 0, static_cast<int>(m_free.size()) - 1));
}

void FreeDays::take(Date from, Date until, int count)
{
    const Date end = m_from + static_cast<int>(m_free.size());
    for (Date day = std::max(from, m_from); day < std::min(until, end); day = day + 1) {
        m_free[placeOf(day)] -= count;
    }
}

int FreeDays::on(Date day) const
{
    return m_free[placeOf(day)];
}

int FreeDays::through(Date from, Date until) const
{
    int fewest = on(from);
    for (std::size_t place = placeOf(from); m_from + static_cast<int>(place) < until; ++place) {
        if (place == m_free.size()) {
            break;
        }
        fewest = std::min(fewest, m_free[place]);
    }
    return fewest;
}

} // namespace plumule
