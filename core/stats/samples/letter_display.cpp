#include "core/stats/samples/letter_display.h"

#include <algorithm>
#include <functional>
#include <numeric>

namespace plumule::stats {

namespace {

using LetterGroup = std::vector<bool>;

bool isWithin(const LetterGroup& inner, const LetterGroup& outer)
{
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (inner[i] && !outer[i]) {
            return false;
        }
    }
    return true;
}

void absorb(std::vector<LetterGroup>& groups)
{
    for (std::size_t i = groups.size(); i-- > 0;) {
        for (std::size_t j = 0; j < groups.size(); ++j) {
            if (i != j && isWithin(groups[i], groups[j])) {
                groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(i));
                break;
            }
        }
    }
}

// Every group holding both is split into one without the one and one without the other.
void separate(std::vector<LetterGroup>& groups, std::size_t a, std::size_t b)
{
    const std::size_t before = groups.size();
    for (std::size_t i = 0; i < before; ++i) {
        if (!groups[i][a] || !groups[i][b]) {
            continue;
        }
        LetterGroup other = groups[i];
        groups[i][a] = false;
        other[b] = false;
        groups.push_back(std::move(other));
    }
    absorb(groups);
}

// A group whose pairs all share another letter as well says nothing.
void dropRedundant(std::vector<LetterGroup>& groups)
{
    for (std::size_t i = groups.size(); i-- > 0;) {
        const LetterGroup one = groups[i];
        bool needed = false;
        for (std::size_t a = 0; a < one.size() && !needed; ++a) {
            for (std::size_t b = a; b < one.size() && !needed; ++b) {
                const auto shared = std::count_if(groups.begin(), groups.end(),
                                                  [&](const auto& g) { return g[a] && g[b]; });
                needed = one[a] && one[b] && shared == 1;
            }
        }
        if (!needed) {
            groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(i));
        }
    }
}

// For each place from the highest mean down, whose it is.
std::vector<std::size_t> fromTheHighest(std::span<const double> means)
{
    std::vector<std::size_t> order(means.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return means[a] > means[b]; });
    return order;
}

} // namespace

std::vector<std::string>
letterDisplay(std::span<const double> means,
              const std::vector<std::pair<std::size_t, std::size_t>>& differing)
{
    const std::vector<std::size_t> order = fromTheHighest(means);
    std::vector<std::size_t> place(means.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        place[order[i]] = i;
    }
    std::vector<LetterGroup> groups{LetterGroup(means.size(), true)};
    for (const auto& [a, b] : differing) {
        separate(groups, place[a], place[b]);
    }
    dropRedundant(groups);
    std::sort(groups.begin(), groups.end(), std::greater<>());
    std::vector<std::string> letters(means.size());
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const std::string letter(g / 26 + 1, static_cast<char>('a' + g % 26));
        for (std::size_t i = 0; i < means.size(); ++i) {
            if (groups[g][place[i]]) {
                letters[i] += letter;
            }
        }
    }
    return letters;
}

} // namespace plumule::stats
