#include "core/review/comparison/series_trays.h"

#include <algorithm>
#include <map>
#include <set>

namespace plumule {
namespace {

// A trial, or outside trials a day.
struct SowingKey
{
    Date day;
    TrialId trial; // not stored: none
    auto operator<=>(const SowingKey&) const = default;
};

// A trial is sown on its first day.
SowingKey keyOf(const Tray& tray, std::optional<Date> trialSownOn)
{
    const TrialId trial = tray.trial.value_or(TrialId());
    return {trialSownOn.value_or(tray.trial ? Date() : tray.sownOn), trial};
}

// All sowings with a tray in the days asked about, whatever else was chosen: a sowing is not all in
// because a choice hides what still grows.
class SowingList
{
public:
    SowingList(const SeasonFacts& facts, SeasonFilter filter)
        : m_facts(facts)
    {
        filter.varieties.clear();
        filter.shelves.clear();
        for (const SeasonRecord& record : facts.trays) {
            if (isOfSpan(record, filter)) {
                const bool isCutLater = record.lastCut && filter.to < *record.lastCut;
                add(record.tray, record.trialSownOn,
                    record.tray.state != TrayState::Growing && !isCutLater);
            }
        }
        for (const UnfinishedRecord& record : facts.unfinished) {
            if (isOfSpan(record, filter)) {
                add(record.tray, record.trialSownOn, record.tray.state != TrayState::Growing);
            }
        }
    }

    [[nodiscard]] std::vector<Sowing> sowings()
    {
        std::vector<Sowing> list;
        for (auto& [key, sowing] : m_sowings) {
            const auto standing = m_facts.standings.find(key.trial);
            if (standing != m_facts.standings.end()) {
                // Trays that were cut in other days than these, or are still to be sown.
                sowing.trays =
                    std::max(sowing.trays, standing->second.sown) + standing->second.unsown;
            }
            for (const VarietyId variety : m_varieties[key]) {
                sowing.varieties.push_back(m_facts.varieties.at(variety));
            }
            m_numbers[key] = list.size();
            list.push_back(std::move(sowing));
        }
        return list;
    }
    // Once sowings() were asked for.
    [[nodiscard]] std::size_t numberOf(const SeasonRecord& record) const
    {
        return m_numbers.at(keyOf(record.tray, record.trialSownOn));
    }

private:
    // A tray that was cut and grows on is among both kinds of records.
    void add(const Tray& tray, std::optional<Date> trialSownOn, bool isIn)
    {
        if (!m_added.insert(tray.id).second) {
            return;
        }
        const SowingKey key = keyOf(tray, trialSownOn);
        const bool isNew = m_sowings.count(key) == 0;
        Sowing& sowing = m_sowings[key];
        if (tray.trial) {
            sowing.trial = tray.trial;
            const auto code = m_facts.trials.find(*tray.trial);
            sowing.code = code == m_facts.trials.end() ? std::string() : code->second;
        }
        sowing.sownOn = isNew ? tray.sownOn : std::min(sowing.sownOn, tray.sownOn);
        ++sowing.trays;
        sowing.in += isIn ? 1 : 0;
        if (m_facts.varieties.count(tray.variety) > 0) {
            m_varieties[key].insert(tray.variety);
        }
    }

    const SeasonFacts& m_facts;
    std::set<TrayId> m_added;
    std::map<SowingKey, Sowing> m_sowings;
    std::map<SowingKey, std::set<VarietyId>> m_varieties;
    std::map<SowingKey, std::size_t> m_numbers;
};

stats::SownTray sownTray(const ComparedTray& tray, std::size_t sowing)
{
    stats::SownTray sown;
    sown.sowing = sowing;
    sown.medium = tray.medium;
    sown.variety = static_cast<std::size_t>(tray.record->tray.variety.value);
    if (tray.record->tray.block) {
        sown.block = static_cast<std::size_t>(*tray.record->tray.block);
    }
    if (tray.record->column) {
        sown.column = static_cast<std::size_t>(*tray.record->column);
    }
    return sown;
}

void takeValue(stats::SownTray& sown, const ComparedTray& tray, Response response)
{
    if (response == Response::CostPerGram) {
        sown.value = tray.cost;
        sown.per = inGrams(tray.record->yield);
    } else {
        sown.value = tray.value;
    }
}

ComparedValue valueOf(const ComparedTray& tray, std::size_t sowing, bool isIn)
{
    ComparedValue value;
    value.tray = tray.record->tray.id;
    value.code = tray.record->tray.code;
    value.medium = tray.medium;
    value.value = tray.value;
    value.sowing = sowing;
    value.variety = tray.record->tray.variety;
    value.isIn = isIn;
    return value;
}

// In percent of the mean over the media of one sowing and variety, each medium counting once.
void addPercents(std::vector<ComparedValue>& values)
{
    using Cell = std::pair<std::size_t, VarietyId>;
    std::map<Cell, std::map<std::size_t, std::pair<double, int>>> sums;
    for (const ComparedValue& each : values) {
        auto& [sum, count] = sums[{each.sowing, each.variety}][each.medium];
        sum += each.value;
        ++count;
    }
    std::map<Cell, double> means;
    for (const auto& [cell, media] : sums) {
        for (const auto& [medium, sum] : media) {
            means[cell] += sum.first / sum.second / static_cast<double>(media.size());
        }
    }
    for (ComparedValue& each : values) {
        const double mean = means[{each.sowing, each.variety}];
        if (mean > 0) {
            each.percentOfTrial = 100 * each.value / mean;
        }
    }
}

// A square that doesn't know the place of each of its trays is none.
void dropPartColumns(std::vector<stats::SownTray>& trays)
{
    std::set<std::size_t> partly;
    for (const stats::SownTray& tray : trays) {
        if (tray.value && !tray.column) {
            partly.insert(tray.sowing);
        }
    }
    for (stats::SownTray& tray : trays) {
        if (partly.count(tray.sowing) > 0) {
            tray.column.reset();
        }
    }
}

class SeriesGatherer
{
public:
    SeriesGatherer(const SeasonFacts& facts, const SeasonFilter& filter,
                   const ComparedTrays& compared, Response response)
        : m_facts(facts)
        , m_filter(filter)
        , m_list(facts, filter)
        , m_compared(compared)
        , m_response(response)
    {
        m_result.sowings = m_list.sowings();
    }

    [[nodiscard]] SeriesTrays gather()
    {
        for (const ComparedTray& tray : m_compared.trays) {
            const std::size_t sowing = m_list.numberOf(*tray.record);
            stats::SownTray sown = sownTray(tray, sowing);
            takeValue(sown, tray, m_response);
            m_result.trays.push_back(sown);
            m_result.values.push_back(valueOf(tray, sowing, m_result.sowings[sowing].isAllIn()));
        }
        for (const ComparedTray& tray : m_compared.failed) {
            stats::SownTray sown = sownTray(tray, m_list.numberOf(*tray.record));
            // What a failed tray cost is part of what the others' grams cost, and it counts as
            // sown.
            if (m_response == Response::YieldPerTraySown) {
                sown.value = 0;
            } else if (m_response == Response::CostPerGram && tray.cost > 0) {
                sown.value = tray.cost;
                sown.per = 0;
            }
            m_result.trays.push_back(sown);
        }
        dropPartColumns(m_result.trays);
        addPercents(m_result.values);
        countDiscards();
        return std::move(m_result);
    }

private:
    void countDiscards()
    {
        std::map<std::pair<std::size_t, std::size_t>, stats::SownAndDiscarded> counts;
        for (const SeasonRecord& record : m_facts.trays) {
            const bool isFailed = hasFailed(record, m_filter);
            const auto medium =
                std::find(m_compared.media.begin(), m_compared.media.end(), record.use.medium);
            if ((!isFailed && !isCounted(record, m_filter)) || medium == m_compared.media.end()) {
                continue;
            }
            const std::size_t sowing = m_list.numberOf(record);
            if (!m_result.sowings[sowing].isAllIn()) {
                continue;
            }
            const auto number = static_cast<std::size_t>(medium - m_compared.media.begin());
            stats::SownAndDiscarded& count = counts[{sowing, number}];
            count.sowing = sowing;
            count.medium = number;
            ++count.sown;
            count.discarded += isFailed ? 1 : 0;
        }
        for (const auto& [key, count] : counts) {
            m_result.discards.push_back(count);
        }
    }

    const SeasonFacts& m_facts;
    const SeasonFilter& m_filter;
    SowingList m_list;
    const ComparedTrays& m_compared;
    Response m_response;
    SeriesTrays m_result;
};

} // namespace

SeriesTrays seriesTrays(const SeasonFacts& facts, const SeasonFilter& filter,
                        const ComparedTrays& compared, Response response)
{
    return SeriesGatherer(facts, filter, compared, response).gather();
}

stats::CellScale scaleOf(Response response)
{
    switch (response) {
    case Response::YieldPerTraySown:
    case Response::CostPerGram:
        return stats::CellScale::LogOfRatio;
    case Response::DaysToHarvest:
    case Response::Evenness:
        return stats::CellScale::Linear;
    case Response::YieldPerTray:
    case Response::YieldPerArea:
    case Response::YieldPerSeed:
    case Response::YieldPerDay:
    case Response::HeightOnDay:
    case Response::Residue:
    case Response::Work:
        break;
    }
    return stats::CellScale::Log;
}

} // namespace plumule
