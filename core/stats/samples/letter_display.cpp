#include "core/stats/samples/letter_display.h"

#include <algorithm>

namespace plumule::stats {

namespace {

using Group = std::vector<bool>;

bool isWithin(const Group& inner, const Group& outer)
{
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (inner[i] && !outer[i])
            return false;
    }
    return true;
}

void absorb(std::vector<Group>& groups)
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
void separate(std::vector<Group>& groups, std::size_t a, std::size_t b)
{
    const std::size_t before = groups.size();
    for (std::size_t i = 0; i < before; ++i) {
        if (!groups[i][a] || !groups[i][b])
            continue;
        Group other = groups[i];
        groups[i][a] = false;
        other[b] = false;
        groups.push_back(std::move(other));
    }
    absorb(groups);
}

// A group whose pairs all share another letter as well says nothing.
void dropRedundant(std::vector<Group>& groups)
{
    for (std::size_t i = groups.size(); i-- > 0;) {
        const Group one = groups[i];
        bool needed = false;
        for (std::size_t a = 0; a < one.size() && !needed; ++a) {
            for (std::size_t b = a; b < one.size() && !needed; ++b) {
                const auto shared = std::count_if(groups.begin(), groups.end(),
                                                  [&](const auto& g) { return g[a] && g[b]; });
                needed = one[a] && one[b] && shared == 1;
            }
        }
        if (!needed)
            groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(i));
    }
}

} // namespace

std::vector<std::string>
letterDisplay(std::size_t levels, const std::vector<std::pair<std::size_t, std::size_t>>& differing)
{
    std::vector<Group> groups{Group(levels, true)};
    for (const auto& [a, b] : differing)
        separate(groups, a, b);
    dropRedundant(groups);
    std::sort(groups.begin(), groups.end(), std::greater<>());
    std::vector<std::string> letters(levels);
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const std::string letter(g / 26 + 1, static_cast<char>('a' + g % 26));
        for (std::size_t i = 0; i < levels; ++i) {
            if (groups[g][i])
                letters[i] += letter;
        }
    }
    return letters;
}

} // namespace plumule::stats
