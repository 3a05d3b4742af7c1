#include "core/review/facts/season_facts.h"
#include "core/tray/stage_plan.h"

#include <algorithm>
#include <array>
#include <set>

namespace plumule {
namespace {

constexpr std::array kCostParts = {&TrayCost::seed,     &TrayCost::medium,    &TrayCost::washing,
                                   &TrayCost::nutrient, &TrayCost::water,     &TrayCost::light,
                                   &TrayCost::labour,   &TrayCost::packaging, &TrayCost::waste};

// The mean of each part over the trays where it is known.
class MeanCost
{
public:
    void add(const TrayCost& cost)
    {
        for (std::size_t i = 0; i < kCostParts.size(); ++i) {
            if (const auto part = cost.*kCostParts[i]) {
                m_sums[i] += *part;
                ++m_counts[i];
            }
        }
    }
    [[nodiscard]] TrayCost mean() const
    {
        TrayCost cost;
        for (std::size_t i = 0; i < kCostParts.size(); ++i) {
            if (m_counts[i] > 0) {
                cost.*kCostParts[i] = m_sums[i] / m_counts[i];
            }
        }
        return cost;
    }

private:
    std::array<double, kCostParts.size()> m_sums = {};
    std::array<int, kCostParts.size()> m_counts = {};
};

template <class Key>
std::string nameIn(const std::map<Key, std::string>& names, Key key)
{
    const auto found = names.find(key);
    return found == names.end() ? std::string() : found->second;
}

// Without a single price there is no cost, not a cost of 0.
std::optional<double> knownTotal(const TrayCost& cost)
{
    const double total = cost.total();
    return total > 0 ? std::optional(total) : std::nullopt;
}

SeasonTray seasonTray(const SeasonRecord& record, const SeasonFacts& facts)
{
    const Tray& tray = record.tray;
    SeasonTray result;
    result.tray = tray.id;
    result.code = tray.code;
    result.variety = nameIn(facts.varieties, tray.variety);
    if (tray.trial) {
        result.trial = nameIn(facts.trials, *tray.trial);
    }
    result.yieldGrams = inGrams(record.yield);
    result.cost = knownTotal(record.cost);
    if (tray.seed && tray.seed->count() > 0) {
        result.gramsPerSeedGram = record.yield / *tray.seed;
    }
    result.harvestedOn = *record.lastCut;
    result.days = dayCount(tray.sownOn, *record.lastCut);
    if (record.use.residue) {
        result.residueGrams = inGrams(*record.use.residue);
    }
    return result;
}

// Gathers one medium's trays.
class MediumSums
{
public:
    void add(const SeasonRecord& record, const SeasonFacts& facts)
    {
        m_costs.add(record.cost);
        m_trays.push_back(seasonTray(record, facts));
        for (const auto& [day, mean] : dailyHeights(record)) {
            m_heights[day].push_back(mean);
        }
    }

    // What a tray cost that gave nothing is part of what the others' grams cost.
    void addFailed(const TrayCost& cost)
    {
        m_failedCost += cost.total();
        ++m_failed;
    }

    [[nodiscard]] MediumSeason season(const Medium& medium) &&
    {
        MediumSeason season;
        season.medium = medium;
        std::vector<double> yields;
        double cost = m_failedCost;
        double grams = 0;
        for (const SeasonTray& tray : m_trays) {
            yields.push_back(tray.yieldGrams);
            if (tray.cost) {
                cost += *tray.cost;
                grams += tray.yieldGrams;
            }
        }
        season.yield = meanInterval(yields);
        season.failed = m_failed;
        if (grams > 0 && cost > 0) {
            season.costPerGram = cost / grams;
        }
        for (const auto& [day, means] : m_heights) {
            season.heights.push_back({day, meanInterval(means)});
        }
        season.meanCost = m_costs.mean();
        season.trays = std::move(m_trays);
        return season;
    }

private:
    std::vector<SeasonTray> m_trays;
    std::map<int, std::vector<double>> m_heights;
    MeanCost m_costs;
    double m_failedCost = 0;
    int m_failed = 0;
};

template <class Key>
bool isAmong(const std::vector<Key>& chosen, std::optional<Key> key)
{
    return chosen.empty() || (key && std::find(chosen.begin(), chosen.end(), *key) != chosen.end());
}

bool isChosen(const Tray& tray, std::optional<ShelfId> shelf, const SeasonFilter& filter)
{
    return isAmong(filter.varieties, std::optional(tray.variety)) &&
           isAmong(filter.trials, tray.trial) && isAmong(filter.shelves, shelf);
}

LeftOutTray leftOut(const Tray& tray, const SeasonFacts& facts, LeftOut why,
                    const std::optional<std::string>& reason = std::nullopt)
{
    const auto medium = facts.media.find(tray.medium);
    return {tray.id, tray.code, medium == facts.media.end() ? "" : medium->second.name, why,
            reason.value_or("")};
}

// Why a tray that was cut within the span is not counted; none when it is. One that grows on or
// was discarded after a cut is among the unfinished.
std::optional<LeftOut> whyNotCounted(const SeasonRecord& record, const SeasonFilter& filter)
{
    if (record.tray.setAsideReason) {
        return LeftOut::SetAside;
    }
    return record.lastCut && *record.lastCut > filter.to ? std::optional(LeftOut::CutAgainLater)
                                                         : std::nullopt;
}

bool isWithin(Date day, const SeasonFilter& filter)
{
    return !(day < filter.from) && !(filter.to < day);
}

bool isSownWithin(Date day, const SeasonFilter& filter)
{
    return !(filter.sownFrom && day < *filter.sownFrom) &&
           !(filter.sownUntil && *filter.sownUntil < day);
}

bool isFinished(const SeasonRecord& record, const SeasonFilter& filter)
{
    return isOfSpan(record, filter) && record.tray.state == TrayState::Harvested &&
           record.lastCut.has_value();
}

void addUnfinished(SeasonReview& review, const SeasonFacts& facts)
{
    for (const UnfinishedRecord& record : facts.unfinished) {
        const Tray& tray = record.tray;
        if (!isOfSpan(record, review.filter)) {
            continue;
        }
        if (tray.state == TrayState::Discarded) {
            review.leftOut.push_back(leftOut(tray, facts, LeftOut::Discarded, tray.discardReason));
        } else {
            review.leftOut.push_back(leftOut(
                tray, facts, record.isCut ? LeftOut::CutAgainLater : LeftOut::StillGrowing));
        }
    }
}

// Sorts the trays that were cut into those that count, by medium, and those left out.
class SeasonSums
{
public:
    SeasonSums(const SeasonFacts& facts, SeasonReview& review)
        : m_facts(facts)
        , m_review(review)
    {}

    void add(const SeasonRecord& record)
    {
        const Tray& tray = record.tray;
        if (hasFailed(record, m_review.filter)) {
            m_failed.push_back(&record);
            return;
        }
        if (!isFinished(record, m_review.filter)) {
            return;
        }
        if (const auto why = whyNotCounted(record, m_review.filter)) {
            m_review.leftOut.push_back(leftOut(tray, m_facts, *why, tray.setAsideReason));
            return;
        }
        m_media[tray.medium].add(record, m_facts);
        ++m_review.trays;
        m_varieties.insert(tray.variety);
        if (tray.trial) {
            m_trials.insert(*tray.trial);
        }
    }

    void finish()
    {
        m_review.varieties = static_cast<int>(m_varieties.size());
        m_review.trials = static_cast<int>(m_trials.size());
        for (const SeasonRecord* record : m_failed) {
            const auto medium = m_media.find(record->tray.medium);
            if (medium != m_media.end()) {
                medium->second.addFailed(record->cost);
            }
        }
        for (auto& [id, sums] : m_media) {
            m_review.media.push_back(std::move(sums).season(m_facts.media.at(id)));
            const MediumSeason& season = m_review.media.back();
            if (season.yield.n < 2) {
                m_review.tooFew.push_back(season.medium.name);
            }
        }
    }

private:
    const SeasonFacts& m_facts;
    SeasonReview& m_review;
    std::map<MediumId, MediumSums> m_media;
    std::vector<const SeasonRecord*> m_failed;
    std::set<VarietyId> m_varieties;
    std::set<TrialId> m_trials;
};

} // namespace

SeasonFacts SeasonFacts::withoutTrays() const
{
    SeasonFacts facts;
    facts.cost = cost;
    facts.media = media;
    facts.mediumGroups = mediumGroups;
    facts.varieties = varieties;
    facts.protocols = protocols;
    facts.trials = trials;
    facts.margins = margins;
    facts.designs = designs;
    facts.standings = standings;
    return facts;
}

void priceTrays(SeasonFacts& facts, const Progress& progress)
{
    constexpr std::size_t kTraysBetweenLooks = 512;
    for (std::size_t i = 0; i < facts.trays.size(); ++i) {
        if (i % kTraysBetweenLooks == 0 && progress.isStopped()) {
            return;
        }
        facts.trays[i].cost = costOf(facts.trays[i].use, facts.cost);
    }
}

bool isOfSpan(const SeasonRecord& record, const SeasonFilter& filter)
{
    const Tray& tray = record.tray;
    const bool isInTime =
        std::any_of(record.cutOn.begin(), record.cutOn.end(),
                    [&](Date day) { return isWithin(day, filter); }) ||
        (tray.state == TrayState::Discarded && tray.endedOn && isWithin(*tray.endedOn, filter));
    return isInTime && isChosen(tray, record.shelf, filter) &&
           isSownWithin(record.trialSownOn.value_or(tray.sownOn), filter);
}

bool isOfSpan(const UnfinishedRecord& record, const SeasonFilter& filter)
{
    const Tray& tray = record.tray;
    const bool isInTime = tray.state == TrayState::Growing
                              ? !(filter.to < tray.sownOn)
                              : tray.endedOn && isWithin(*tray.endedOn, filter);
    return isInTime && isChosen(tray, record.shelf, filter) &&
           isSownWithin(record.trialSownOn.value_or(tray.sownOn), filter);
}

bool isCounted(const SeasonRecord& record, const SeasonFilter& filter)
{
    return isFinished(record, filter) && !whyNotCounted(record, filter);
}

bool hasFailed(const SeasonRecord& record, const SeasonFilter& filter)
{
    return record.tray.state == TrayState::Discarded && !record.tray.setAsideReason &&
           isOfSpan(record, filter);
}

std::map<int, double> dailyHeights(const SeasonRecord& record)
{
    std::map<int, std::pair<double, int>> sums;
    for (const Height& height : record.heights) {
        if (const auto above = heightAboveSurface(height, *record.use.medium)) {
            auto& [sum, count] = sums[dayCount(record.tray.sownOn, height.on)];
            sum += inMillimetres(*above);
            ++count;
        }
    }
    std::map<int, double> means;
    for (const auto& [day, sum] : sums) {
        means[day] = sum.first / sum.second;
    }
    return means;
}

SeasonReview reviewOf(const SeasonFacts& facts, const SeasonFilter& filter)
{
    SeasonReview review;
    review.filter = filter;
    review.currency = facts.cost.layout.room.currency;
    SeasonSums sums(facts, review);
    for (const SeasonRecord& record : facts.trays) {
        sums.add(record);
    }
    sums.finish();
    addUnfinished(review, facts);
    for (const DamagedTray& each : facts.damaged) {
        review.leftOut.push_back({each.tray, each.code, {}, LeftOut::Damaged, {}});
    }
    std::sort(review.leftOut.begin(), review.leftOut.end(),
              [](const LeftOutTray& a, const LeftOutTray& b) { return a.code < b.code; });
    addCostCurves(review.media, facts.cost.prices, filter.to);
    return review;
}

} // namespace plumule
