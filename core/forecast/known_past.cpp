#include "core/forecast/known_past.h"

#include "core/starter/starter_yields.h"
#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iterator>
#include <limits>
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

std::optional<double> logCut(const TrayFact& tray, Stage /*from*/, Moment /*by*/)
{
    return tray.cut > Mass{} ? std::optional(std::log(inGrams(tray.cut))) : std::nullopt;
}

bool isBy(Moment by, const std::optional<Moment>& event)
{
    return event && *event <= by;
}

std::optional<double> daysLate(const TrayFact& tray, Stage from, Moment by)
{
    const auto begins =
        std::find_if(tray.stages.begin(), tray.stages.end(), [&](const StageFact& stage) {
            return stage.stage == from && isBy(by, stage.started);
        });
    if (begins == tray.stages.end()) {
        return std::nullopt;
    }
    std::int64_t planned = 0;
    for (auto stage = begins; stage != tray.stages.end(); ++stage) {
        planned += stage->lengthMinutes;
    }
    return static_cast<double>(*tray.cutAt - (*begins->started + planned)) / kMinutesPerDay;
}

} // namespace

KnownPast::KnownPast(const ForecastFacts& facts, Moment moment)
    : m_facts(facts)
    , m_moment(std::min(moment, facts.now))
    , m_by(moment < facts.now ? moment : Moment{{std::numeric_limits<std::int32_t>::max()}, 0})
{
    std::set<std::pair<ForecastCell, Date>> waitedFor;
    for (const TrayFact& tray : facts.trays) {
        if (tray.begunAt() > m_by) {
            continue;
        }
        const ForecastCell cell{tray.variety, tray.medium};
        const bool isCut = isBy(m_by, tray.cutAt);
        const bool isDiscarded = isBy(m_by, tray.discardedAt);
        if (!isCut && !isDiscarded) {
            waitedFor.insert({cell, tray.sownAt.date});
        } else if (!tray.isSetAside) {
            for (CellEnds* ends : {&m_ends[cell], &m_endsOfRoom}) {
                ends->discarded += isDiscarded ? 1 : 0;
                ++ends->ended;
            }
            if (isCut) {
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

stats::NestedValues KnownPast::nested(const std::vector<TrayTold>& trays)
{
    stats::NestedValues groups;
    for (std::size_t i = 0; i < trays.size(); ++i) {
        if (i == 0 || trays[i].sownOn != trays[i - 1].sownOn) {
            groups.emplace_back();
        }
        groups.back().push_back(trays[i].value);
    }
    return groups;
}

KnownPast::ToldByCell KnownPast::told(const std::map<ForecastCell, Trays>& past, Reading reading,
                                      Stage from) const
{
    ToldByCell all;
    for (const auto& [cell, trays] : past) {
        Told& one = all[cell];
        for (const TrayFact* tray : trays) {
            if (const std::optional<double> value = reading(*tray, from, m_by)) {
                one.trays.push_back({tray->sownAt.date, tray->cutAt->date, *value});
            }
        }
        const auto isEarlier = [](const TrayTold& a, const TrayTold& b) {
            return a.sownOn < b.sownOn;
        };
        std::stable_sort(one.trays.begin(), one.trays.end(), isEarlier);
        if (!one.trays.empty()) {
            one.squares = stats::nestedSquaresOf(nested(one.trays));
        }
    }
    return all;
}

const KnownPast::ToldByCell& KnownPast::toldOfYields() const
{
    if (!m_yields) {
        m_yields = told(m_cut, logCut, Stage::Light);
    }
    return *m_yields;
}

const KnownPast::ToldByCell& KnownPast::toldOfDays(Stage from) const
{
    const auto known = m_days.find(from);
    return known != m_days.end()
               ? known->second
               : m_days.emplace(from, told(m_complete, daysLate, from)).first->second;
}

CellEnds KnownPast::ends(const ForecastCell& cell) const
{
    const auto found = m_ends.find(cell);
    return found == m_ends.end() ? CellEnds{} : found->second;
}

// The spread that is expected is that of the room's other cells: its own is counted once.
std::optional<CellPrediction> KnownPast::fromPast(const ToldByCell& past, const ForecastCell& cell,
                                                  stats::NestedVariances memory) const
{
    const auto found = past.find(cell);
    if (found == past.end() || found->second.trays.size() < kFewestForOwnPast) {
        return std::nullopt;
    }
    const std::vector<TrayTold>& all = found->second.trays;
    std::vector<TrayTold> season;
    std::copy_if(all.begin(), all.end(), std::back_inserter(season), [&](const TrayTold& tray) {
        return daysFromTimeOfYear(tray.cutOn, m_moment.date) <= kSeasonDays;
    });
    const stats::NestedValues ofSeason = nested(season);
    const bool isSeason = season.size() >= kFewestForOwnPast && season.size() < all.size() &&
                          ofSeason.size() >= kFewestSeasonSowings;
    std::vector<stats::NestedSquares> others;
    for (const auto& [other, told] : past) {
        if (other != cell && !told.trays.empty()) {
            others.push_back(told.squares);
        }
    }
    const stats::NestedValues used = isSeason ? ofSeason : nested(all);
    CellPrediction prediction;
    prediction.next = stats::predictNested(used, stats::pooledVariances(others, memory));
    prediction.basis = {ForecastSource::OwnPast,
                        isSeason ? PastSpan::Season : PastSpan::All,
                        static_cast<int>(isSeason ? season.size() : all.size()),
                        static_cast<int>(used.size()),
                        {},
                        1};
    return prediction;
}

CellPrediction KnownPast::yield(const ForecastCell& cell) const
{
    if (auto own = fromPast(toldOfYields(), cell, kYieldApart)) {
        return *own;
    }
    return libraryYield(cell);
}

CellPrediction KnownPast::days(const ForecastCell& cell, Stage from) const
{
    if (auto own = fromPast(toldOfDays(from), cell, kDaysApart)) {
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
    const auto few = toldOfYields().find(cell);
    if (few != toldOfYields().end()) {
        prediction.basis.trays = static_cast<int>(few->second.trays.size());
        prediction.basis.sowings = static_cast<int>(nested(few->second.trays).size());
    }
    prediction.basis.source = read.source;
    return prediction;
}

} // namespace plumule
