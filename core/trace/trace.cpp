#include "core/trace/trace.h"

#include <algorithm>
#include <set>

namespace plumule {

Mass TracedTray::yield() const
{
    Mass sum;
    for (const Harvest& cut : cuts) {
        sum += cut.net;
    }
    return sum;
}

Mass TracedSowing::yield() const
{
    Mass sum;
    for (const TracedTray& tray : trays) {
        sum += tray.yield();
    }
    return sum;
}

int TracedSowing::count(TrayState state) const
{
    return static_cast<int>(std::count_if(trays.begin(), trays.end(), [&](const TracedTray& each) {
        return each.tray.state == state;
    }));
}

std::vector<TracedPromise> TracedSowing::promises() const
{
    std::map<PromiseKey, TracedPromise> added;
    for (const TracedTray& tray : trays) {
        for (const TracedPromise& one : tray.promises) {
            const auto [found, isNew] = added.try_emplace(one.key, one);
            found->second.part += isNew ? Mass{} : one.part;
        }
    }
    std::vector<TracedPromise> all;
    all.reserve(added.size());
    for (auto& [key, promise] : added) {
        all.push_back(std::move(promise));
    }
    return all;
}

std::vector<TracedSowing> sowingsOf(std::vector<TracedTray> trays)
{
    std::sort(trays.begin(), trays.end(), [](const TracedTray& a, const TracedTray& b) {
        return std::tie(a.tray.sownOn, a.variety, a.tray.code) <
               std::tie(b.tray.sownOn, b.variety, b.tray.code);
    });
    std::vector<TracedSowing> sowings;
    for (TracedTray& tray : trays) {
        if (sowings.empty() || sowings.back().on != tray.tray.sownOn ||
            sowings.back().variety != tray.variety) {
            sowings.push_back({tray.tray.sownOn, tray.variety, {}});
        }
        sowings.back().trays.push_back(std::move(tray));
    }
    return sowings;
}

TraceSums sumsOf(const std::vector<TracedSowing>& sowings)
{
    TraceSums sums;
    std::set<PromiseKey> promises;
    for (const TracedSowing& sowing : sowings) {
        sums.sown += static_cast<int>(sowing.trays.size());
        sums.cut += sowing.count(TrayState::Harvested);
        sums.thrownAway += sowing.count(TrayState::Discarded);
        sums.growing += sowing.count(TrayState::Growing);
        sums.yield += sowing.yield();
        for (const TracedTray& tray : sowing.trays) {
            sums.seed += tray.tray.seed.value_or(Mass{});
            sums.withoutSeed += tray.tray.seed ? 0 : 1;
            for (const TracedPromise& promise : tray.promises) {
                promises.insert(promise.key);
            }
        }
    }
    sums.promises = static_cast<int>(promises.size());
    return sums;
}

std::vector<TracedWater> watersOf(TrayId tray, const std::vector<Watering>& waterings,
                                  const std::vector<WaterReading>& readings,
                                  const std::vector<WaterRecipe>& recipes)
{
    std::map<WaterKind, TracedWater> byKind;
    std::map<WaterKind, std::set<Date>> days;
    for (const Watering& watering : waterings) {
        const auto [found, isNew] = byKind.try_emplace(watering.water);
        TracedWater& water = found->second;
        water.water = watering.water;
        water.first = isNew ? watering.on : water.first;
        water.last = watering.on;
        ++water.times;
        water.unmeasured += watering.amount ? 0 : 1;
        water.amount += watering.amount.value_or(Volume{});
        days[watering.water].insert(watering.on);
    }
    for (const WaterRecipe& recipe : recipes) {
        if (const auto found = byKind.find(recipe.water); found != byKind.end()) {
            found->second.concentrate = recipe.concentrate;
        }
    }
    for (const WaterReading& reading : readings) {
        const auto found = byKind.find(reading.water);
        const bool isOfIt = reading.tray
                                ? *reading.tray == tray
                                : found != byKind.end() && days[reading.water].contains(reading.on);
        if (found != byKind.end() && isOfIt) {
            found->second.readings.push_back(reading);
        }
    }
    std::vector<TracedWater> all;
    all.reserve(byKind.size());
    for (auto& [kind, water] : byKind) {
        all.push_back(std::move(water));
    }
    return all;
}

} // namespace plumule
