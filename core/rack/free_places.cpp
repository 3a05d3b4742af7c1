#include "core/rack/free_places.h"

#include <algorithm>

namespace plumule {
namespace {

int keptOn(Date evening, const std::vector<std::optional<Date>>& cuts, Date today)
{
    return static_cast<int>(std::count_if(cuts.begin(), cuts.end(), [&](const auto& cut) {
        return !cut || std::max(*cut, today) > evening;
    }));
}

int plannedOn(Date evening, const std::vector<PlannedSowing>& planned, Date today)
{
    int trays = 0;
    for (const PlannedSowing& sowing : planned) {
        // One that comes late is cut as much later.
        const int late = std::max(0, today - sowing.from);
        const bool stands = sowing.from + late <= evening && evening < sowing.until + late;
        trays += stands ? sowing.trays : 0;
    }
    return trays;
}

} // namespace

std::vector<FreeEvening> freeEvenings(int places, const std::vector<std::optional<Date>>& cuts,
                                      const std::vector<PlannedSowing>& planned, Date today,
                                      int evenings)
{
    std::vector<FreeEvening> all;
    for (int day = 0; day < evenings; ++day) {
        const Date on = today + day;
        const int left = std::max(0, places - keptOn(on, cuts, today));
        const int asked = plannedOn(on, planned, today);
        const int taken = std::min(left, asked);
        all.push_back({on, left - taken, taken, asked - taken});
    }
    return all;
}

std::vector<FreeSpell> tightestSpells(const std::vector<FreeEvening>& evenings, std::size_t most)
{
    std::vector<FreeSpell> spells;
    for (const FreeEvening& evening : evenings) {
        if (!spells.empty() && spells.back().free == evening.free) {
            spells.back().to = evening.on;
            spells.back().missing = std::max(spells.back().missing, evening.missing);
        } else {
            spells.push_back({evening.on, evening.on, evening.free, evening.missing});
        }
    }
    if (spells.size() < 2) {
        return {};
    }
    std::stable_sort(spells.begin(), spells.end(), [](const FreeSpell& a, const FreeSpell& b) {
        return a.free != b.free ? a.free < b.free : a.missing > b.missing;
    });
    spells.resize(std::min(spells.size(), most));
    std::sort(spells.begin(), spells.end(),
              [](const FreeSpell& a, const FreeSpell& b) { return a.from < b.from; });
    return spells;
}

} // namespace plumule
