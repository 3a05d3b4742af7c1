#include "core/forecast/known_past.h"

#include "core/starter/starter_yields.h"
#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>

namespace plumule {
namespace {

// What sowings, and trays of one sowing, lie apart where the room has not told yet; from memory.
constexpr stats::NestedVariances kYieldApart{0.10 * 0.10, 0.10 * 0.10}; // of log grams
constexpr stats::NestedVariances kDaysApart{0.7 * 0.7, 0.3 * 0.3};      // days²
// A room may give two thirds or half as much again of what was read; from memory.
constexpr double kRoomsApart = 1.5;

constexpr int kSeasonDays = 60; // to either side of the time of year
constexpr double kDaysOfYear = 365.2425;
constexpr std::size_t kFewestSeasonSowings = 4;

double daysFromTimeOfYear(Date a, Date b)
{
    return std::abs(std::remainder(a - b, kDaysOfYear));
}

std::optional<double> logCut(const TrayFact& tray, Stage /*from*/)
{
    return tray.cut > Mass{} ? std::optional(std::log(inGrams(tray.cut))) : std::nullopt;
}

std::optional<double> daysLate(const TrayFact& tray, Stage from)
{
    const auto begins =
        std::find_if(tray.stages.begin(), tray.stages.end(),
                     [&](const StageFact& stage) { return stage.stage == from && stage.started; });
    if (begins == tray.stages.end()) {
        return std::nullopt;
    }
    std::int64_t planned = 0;
    for (auto stage = begins; stage != tray.stages.end(); ++stage) {
        planned += stage->lengthMinutes;
    }
    return static_cast<double>(*tray.cutAt - (*begins->started + planned)) / kMinutesPerDay;
}

struct Sowings
{
    std::map<Date, std::vector<double>> values; // by day of sowing
    int trays = 0;

    [[nodiscard]] stats::NestedValues nested() const
    {
        stats::NestedValues groups;
        for (const auto& [day, group] : values) {
            groups.push_back(group);
        }
        return groups;
    }
};

template <class Reading>
Sowings sowingsOf(const std::vector<const TrayFact*>& trays, Reading reading)
{
    Sowings sowings;
    for (const TrayFact* tray : trays) {
        if (const std::optional<double> value = reading(*tray)) {
            sowings.values[tray->sownAt.date].push_back(*value);
            ++sowings.trays;
        }
    }
    return sowings;
}

} // namespace

KnownPast::KnownPast(const ForecastFacts& facts)
    : m_facts(facts)
{
    std::set<std::pair<ForecastCell, Date>> waitedFor;
    for (const TrayFact& tray : facts.trays) {
        const ForecastCell cell{tray.variety, tray.medium};
        if (tray.isGrowing()) {
            waitedFor.insert({cell, tray.sownAt.date});
        } else if (!tray.isSetAside) {
            const int lost = tray.discardedAt ? 1 : 0;
            for (CellEnds* ends : {&m_ends[cell], &m_endsOfRoom}) {
                ends->discarded += lost;
                ++ends->ended;
            }
            if (tray.cutAt) {
                m_cut[cell].push_back(&tray);
            }
        }
    }
    for (const auto& [cell, trays] : m_cut) {
        for (const TrayFact* tray : trays) {
            if (!waitedFor.contains({cell, tray->sownAt.date})) {
                m_complete[cell].push_back(tray);
            }
        }
    }
}

CellEnds KnownPast::ends(const ForecastCell& cell) const
{
    const auto found = m_ends.find(cell);
    return found == m_ends.end() ? CellEnds{} : found->second;
}

// The spread that is expected is that of the room's other cells: its own is counted once.
std::optional<CellPrediction> KnownPast::fromPast(const std::map<ForecastCell, Trays>& past,
                                                  const ForecastCell& cell, Reading reading,
                                                  Stage from, stats::NestedVariances memory) const
{
    const auto found = past.find(cell);
    if (found == past.end()) {
        return std::nullopt;
    }
    const auto told = [&](const TrayFact& tray) { return reading(tray, from); };
    const Sowings all = sowingsOf(found->second, told);
    if (all.trays < kFewestForOwnPast) {
        return std::nullopt;
    }
    const Sowings season = sowingsOf(found->second, [&](const TrayFact& tray) {
        const bool isNear = daysFromTimeOfYear(tray.cutAt->date, m_facts.now.date) <= kSeasonDays;
        return isNear ? told(tray) : std::nullopt;
    });
    const bool isSeason = season.trays >= kFewestForOwnPast && season.trays < all.trays &&
                          season.values.size() >= kFewestSeasonSowings;
    std::vector<stats::NestedValues> others;
    for (const auto& [other, trays] : past) {
        const Sowings sowings = other == cell ? Sowings{} : sowingsOf(trays, told);
        if (sowings.trays > 0) {
            others.push_back(sowings.nested());
        }
    }
    const Sowings& used = isSeason ? season : all;
    CellPrediction prediction;
    prediction.next = stats::predictNested(used.nested(), stats::pooledVariances(others, memory));
    prediction.basis = {ForecastSource::OwnPast,
                        isSeason ? PastSpan::Season : PastSpan::All,
                        used.trays,
                        static_cast<int>(used.values.size()),
                        {},
                        1};
    return prediction;
}

CellPrediction KnownPast::yield(const ForecastCell& cell) const
{
    if (auto own = fromPast(m_cut, cell, logCut, Stage::Light, kYieldApart)) {
        return *own;
    }
    return libraryYield(cell);
}

CellPrediction KnownPast::days(const ForecastCell& cell, Stage from) const
{
    if (auto own = fromPast(m_complete, cell, daysLate, from, kDaysApart)) {
        return *own;
    }
    CellPrediction asPlanned;
    asPlanned.next.groupVariance = kDaysApart.group;
    asPlanned.next.valueVariance = kDaysApart.value;
    asPlanned.next.degreesOfFreedom = stats::kExpectedWeight;
    asPlanned.basis.source = kFromMemory;
    return asPlanned;
}

CellPrediction KnownPast::libraryYield(const ForecastCell& cell) const
{
    const auto name = m_facts.varieties.find(cell.first);
    const LibraryYield read =
        plumule::libraryYield(name == m_facts.varieties.end() ? "" : name->second);
    const double low = std::log(read.gramsLow * m_facts.trayArea / kRoomsApart);
    const double high = std::log(read.gramsHigh * m_facts.trayArea * kRoomsApart);
    const double sd = (high - low) / 2 / stats::normalQuantile((1 + kForecastLevel) / 2);
    CellPrediction prediction;
    prediction.next.mean = (low + high) / 2;
    prediction.next.meanVariance = sd * sd;
    prediction.next.groupVariance = kYieldApart.group;
    prediction.next.valueVariance = kYieldApart.value;
    prediction.next.degreesOfFreedom = stats::kInfiniteDf;
    const auto found = m_cut.find(cell);
    if (found != m_cut.end()) {
        const Sowings few =
            sowingsOf(found->second, [](const TrayFact& tray) { return logCut(tray, {}); });
        prediction.basis.trays = few.trays;
        prediction.basis.sowings = static_cast<int>(few.values.size());
    }
    prediction.basis.source = read.source;
    return prediction;
}

} // namespace plumule
