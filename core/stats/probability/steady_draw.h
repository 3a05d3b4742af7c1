#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

namespace plumule::stats {

// Draws that are alike on every machine: std::mt19937_64 (whose output the standard fixes) brought
// into 0..bound−1 by rejection, since the library's own distributions differ between platforms.
class SteadyDraw
{
public:
    explicit SteadyDraw(std::uint64_t seed)
        : m_generator(seed)
    {}
    // bound ≥ 1.
    [[nodiscard]] std::size_t below(std::size_t bound);
    // Every order is as likely as any other (Durstenfeld 1964, CACM 7:420).
    template <class Item>
    void shuffle(std::vector<Item>& items)
    {
        for (std::size_t left = items.size(); left > 1; --left) {
            std::swap(items[left - 1], items[below(left)]);
        }
    }

private:
    std::mt19937_64 m_generator;
};

} // namespace plumule::stats
