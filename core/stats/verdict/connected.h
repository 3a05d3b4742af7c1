#pragma once

#include <cstddef>
#include <numeric>
#include <vector>

namespace plumule::stats {

// Points joined by lines, and which of them hang together.
class Connected
{
public:
    explicit Connected(std::size_t points)
        : m_parent(points)
    {
        std::iota(m_parent.begin(), m_parent.end(), std::size_t{0});
    }

    void join(std::size_t a, std::size_t b) { m_parent[rootOf(a)] = rootOf(b); }

    // By point: its component, numbered from 0 in the order of their first points.
    [[nodiscard]] std::vector<std::size_t> components() const
    {
        std::vector<std::size_t> numbers(m_parent.size(), m_parent.size());
        std::vector<std::size_t> result;
        std::size_t count = 0;
        for (std::size_t point = 0; point < m_parent.size(); ++point) {
            std::size_t& number = numbers[rootOf(point)];
            if (number == m_parent.size()) {
                number = count++;
            }
            result.push_back(number);
        }
        return result;
    }

private:
    [[nodiscard]] std::size_t rootOf(std::size_t point) const
    {
        while (m_parent[point] != point) {
            point = m_parent[point];
        }
        return point;
    }

    std::vector<std::size_t> m_parent;
};

} // namespace plumule::stats
