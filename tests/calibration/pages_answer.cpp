#include "pages_answer.h"

#include "core/review/comparison/comparison.h"

#include <algorithm>
#include <cmath>

namespace plumule::calibration {
namespace {

constexpr int kDaysBetween = 14;
constexpr int kDaysGrown = 12;

class PagesFacts
{
public:
    PagesFacts(const std::vector<SownTray>& trays, const PagesAsk& ask)
        : m_ask(ask)
    {
        for (const SownTray& tray : trays) {
            Medium& medium = m_facts.media[mediumOf(tray)];
            medium.id = mediumOf(tray);
            medium.name = "M" + std::to_string(tray.medium);
            const VarietyId variety{static_cast<std::int64_t>(tray.variety) + 1};
            m_facts.varieties[variety] = "V" + std::to_string(tray.variety);
            m_facts.trials[trialOf(tray)] = "T" + std::to_string(tray.sowing);
        }
        for (const SownTray& tray : trays) {
            addRecord(tray);
        }
    }

    [[nodiscard]] SeasonComparison compare() const
    {
        SeasonFilter filter;
        filter.from = m_start;
        filter.to = m_start + 10'000;
        ComparisonAsk ask;
        ask.response = m_ask.scale == stats::CellScale::LogOfRatio ? Response::CostPerGram
                                                                   : Response::YieldPerTray;
        Series series;
        series.kind = SeriesKind::Season;
        series.plannedTrials = m_ask.plannedTrials;
        series.mainMetric = ask.response;
        return comparisonOf(m_facts, filter, series, ask);
    }

private:
    static MediumId mediumOf(const SownTray& tray)
    {
        return MediumId{static_cast<std::int64_t>(tray.medium) + 1};
    }
    static TrialId trialOf(const SownTray& tray)
    {
        return TrialId{static_cast<std::int64_t>(tray.sowing) + 1};
    }

    void addRecord(const SownTray& tray)
    {
        const bool isRatio = m_ask.scale == stats::CellScale::LogOfRatio;
        const double yield = isRatio ? tray.per : tray.value.value_or(0);
        SeasonRecord record;
        record.tray.id = TrayId{static_cast<std::int64_t>(m_facts.trays.size()) + 1};
        record.tray.medium = mediumOf(tray);
        record.tray.variety = VarietyId{static_cast<std::int64_t>(tray.variety) + 1};
        record.tray.trial = trialOf(tray);
        record.tray.sownOn = m_start + kDaysBetween * static_cast<int>(tray.sowing);
        record.trialSownOn = record.tray.sownOn;
        record.tray.endedOn = record.tray.sownOn + kDaysGrown;
        if (tray.block) {
            record.tray.block = static_cast<int>(*tray.block) + 1;
        }
        if (m_ask.isOnOwnShelves) {
            record.shelf = ShelfId{record.tray.medium.value};
        }
        record.use.medium = &m_facts.media.at(record.tray.medium);
        record.cost.seed = isRatio ? tray.value : std::nullopt;
        record.yield = grams(yield);
        record.tray.state = yield > 0 ? TrayState::Harvested : TrayState::Discarded;
        if (yield > 0) {
            record.lastCut = record.tray.endedOn;
            record.cutOn = {*record.lastCut};
        }
        m_facts.trays.push_back(std::move(record));
    }

    PagesAsk m_ask;
    Date m_start = date(2026, 1, 5);
    SeasonFacts m_facts;
};

double logOfPercent(double percent)
{
    return std::log1p(percent / 100);
}

// a numbered before b, as the engine has them; numbers are those of `media`.
stats::PairAnswer engineTerms(const MediaPair& pair, const SeasonComparison& comparison)
{
    const auto numberOf = [&](std::size_t index) {
        return static_cast<std::size_t>(comparison.means[index].medium.id.value) - 1;
    };
    stats::PairAnswer answer;
    answer.a = numberOf(pair.a);
    answer.b = numberOf(pair.b);
    answer.sowingsShared = pair.trialsShared;
    answer.verdict = pair.verdict;
    answer.why = pair.why;
    if (pair.percent) {
        answer.difference = logOfPercent(*pair.percent);
    }
    if (pair.lowerPercent && pair.upperPercent) {
        answer.halfWidth =
            (logOfPercent(*pair.upperPercent) - logOfPercent(*pair.lowerPercent)) / 2;
    }
    return answer.a < answer.b ? answer : stats::reversed(answer);
}

} // namespace

stats::MediaAnswer pagesAnswer(const std::vector<SownTray>& trays, const PagesAsk& ask)
{
    const SeasonComparison comparison = PagesFacts(trays, ask).compare();
    stats::MediaAnswer answer;
    answer.scope = comparison.scope;
    answer.sowings = comparison.trials;
    for (const MediaPair& pair : comparison.pairs) {
        answer.pairs.push_back(engineTerms(pair, comparison));
    }
    std::sort(answer.pairs.begin(), answer.pairs.end(), [](const auto& one, const auto& two) {
        return std::pair(one.a, one.b) < std::pair(two.a, two.b);
    });
    return answer;
}

} // namespace plumule::calibration
