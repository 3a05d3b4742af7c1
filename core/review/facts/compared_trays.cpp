#include "core/review/facts/compared_trays.h"

#include "core/tray/stage_plan.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <set>

namespace plumule {
namespace {

constexpr std::array kGroupings = {Grouping::Form, Grouping::Nutrients, Grouping::Reuse,
                                   Grouping::Own};
constexpr std::array kGroupingTexts = {"form", "nutrients", "reuse", "own"};

constexpr std::size_t kLeastReadings = 3;

int daysOf(const SeasonRecord& record)
{
    return dayCount(record.tray.sownOn, *record.lastCut);
}

// The coefficient of variation of the tray's readings on the last day with three or more.
std::optional<double> evennessOf(const SeasonRecord& record)
{
    std::map<int, std::vector<double>> days;
    for (const Height& height : record.heights) {
        if (const auto above = heightAboveSurface(height, *record.use.medium)) {
            days[dayCount(record.tray.sownOn, height.on)].push_back(inMillimetres(*above));
        }
    }
    for (auto day = days.rbegin(); day != days.rend(); ++day) {
        if (day->second.size() < kLeastReadings) {
            continue;
        }
        const MeanInterval heights = meanInterval(day->second);
        return heights.mean > 0 ? std::optional(100 * *heights.sd / heights.mean) : std::nullopt;
    }
    return std::nullopt;
}

// A day with many media read and many trays of them; the later of two as good.
std::optional<int> bestReadDay(const std::vector<const SeasonRecord*>& records)
{
    std::map<int, std::pair<std::set<MediumId>, int>> days;
    for (const SeasonRecord* record : records) {
        for (const auto& [day, mean] : dailyHeights(*record)) {
            auto& [media, trays] = days[day];
            media.insert(record->tray.medium);
            ++trays;
        }
    }
    std::optional<int> best;
    std::pair<std::size_t, int> most;
    for (const auto& [day, read] : days) {
        const std::pair now(read.first.size(), read.second);
        if (!best || now >= most) {
            best = day;
            most = now;
        }
    }
    return best;
}

class ResponseReader
{
public:
    ResponseReader(const SeasonFacts& facts, Response response, std::optional<int> day)
        : m_facts(facts)
        , m_response(response)
        , m_day(day)
        , m_area(facts.cost.layout.room.trayArea())
    {}

    [[nodiscard]] std::optional<ComparedTray> read(const SeasonRecord& record) const
    {
        ComparedTray tray;
        tray.record = &record;
        if (m_response == Response::CostPerGram) {
            tray.cost = record.cost.total();
        }
        const auto value = valueOf(record, tray.cost);
        if (!value) {
            return std::nullopt;
        }
        tray.value = *value;
        return tray;
    }

private:
    [[nodiscard]] std::optional<double> valueOf(const SeasonRecord& record, double cost) const
    {
        const double yield = inGrams(record.yield);
        switch (m_response) {
        case Response::YieldPerTray:
        case Response::YieldPerTraySown:
            return yield;
        case Response::YieldPerArea:
            return m_area > 0 ? std::optional(yield / m_area) : std::nullopt;
        case Response::YieldPerSeed:
            return record.tray.seed && record.tray.seed->count() > 0
                       ? std::optional(record.yield / *record.tray.seed)
                       : std::nullopt;
        case Response::YieldPerDay:
            return daysOf(record) > 0 ? std::optional(yield / daysOf(record)) : std::nullopt;
        case Response::CostPerGram:
            // Without a single price there is no cost, not a cost of 0.
            return cost > 0 && yield > 0 ? std::optional(cost / yield) : std::nullopt;
        case Response::HeightOnDay:
            return heightOf(record);
        case Response::DaysToHarvest:
            return daysOf(record);
        case Response::Residue:
            return record.use.residue ? std::optional(inGrams(*record.use.residue)) : std::nullopt;
        case Response::Evenness:
            return evennessOf(record);
        case Response::Work:
            return workMinutes(record.use, m_facts.cost.labour);
        }
        return std::nullopt;
    }

    [[nodiscard]] std::optional<double> heightOf(const SeasonRecord& record) const
    {
        const auto heights = dailyHeights(record);
        const auto found = m_day ? heights.find(*m_day) : heights.end();
        return found == heights.end() ? std::nullopt : std::optional(found->second);
    }

    const SeasonFacts& m_facts;
    Response m_response;
    std::optional<int> m_day;
    double m_area;
};

std::vector<const SeasonRecord*> recordsWhere(const SeasonFacts& facts, const SeasonFilter& filter,
                                              bool (*isWanted)(const SeasonRecord&,
                                                               const SeasonFilter&))
{
    std::vector<const SeasonRecord*> records;
    for (const SeasonRecord& record : facts.trays) {
        if (isWanted(record, filter)) {
            records.push_back(&record);
        }
    }
    // Trays of a medium keep their order, which is that of their ids.
    std::stable_sort(records.begin(), records.end(),
                     [](const SeasonRecord* a, const SeasonRecord* b) {
                         return a->tray.medium < b->tray.medium;
                     });
    return records;
}

// Adds it where it is not among them.
std::size_t numberOfMedium(ComparedTrays& compared, const Medium& medium)
{
    const auto found = std::find(compared.media.begin(), compared.media.end(), &medium);
    const auto number = static_cast<std::size_t>(found - compared.media.begin());
    if (found == compared.media.end()) {
        compared.media.push_back(&medium);
    }
    return number;
}

} // namespace

const char* toText(Grouping grouping)
{
    return kGroupingTexts[static_cast<std::size_t>(grouping)];
}

bool fromText(std::string_view text, Grouping& grouping)
{
    for (const Grouping each : kGroupings) {
        if (text == toText(each)) {
            grouping = each;
            return true;
        }
    }
    return false;
}

double ComparedTrays::mean() const
{
    const double sum =
        std::accumulate(trays.begin(), trays.end(), 0.0,
                        [](double so, const ComparedTray& tray) { return so + tray.value; });
    return trays.empty() ? 0 : sum / static_cast<double>(trays.size());
}

std::size_t ComparedTrays::mediaWithValues() const
{
    return trays.empty() ? 0 : trays.back().medium + 1;
}

ComparedTrays comparedTrays(const SeasonFacts& facts, const SeasonFilter& filter,
                            const ComparisonAsk& ask)
{
    const auto records = recordsWhere(facts, filter, isCounted);
    ComparedTrays compared;
    if (ask.response == Response::HeightOnDay) {
        compared.day = ask.day ? ask.day : bestReadDay(records);
    }
    const ResponseReader reader(facts, ask.response, compared.day);
    compared.trays.reserve(records.size());
    for (const SeasonRecord* record : records) {
        auto tray = reader.read(*record);
        if (!tray) {
            ++compared.withoutValue;
            continue;
        }
        if (compared.media.empty() || compared.media.back()->id != record->tray.medium) {
            compared.media.push_back(&facts.media.at(record->tray.medium));
        }
        tray->medium = compared.media.size() - 1;
        compared.trays.push_back(*tray);
    }
    for (const SeasonRecord* record : recordsWhere(facts, filter, hasFailed)) {
        ComparedTray& tray = compared.failed.emplace_back();
        tray.record = record;
        tray.cost = record->cost.total();
        tray.medium = numberOfMedium(compared, facts.media.at(record->tray.medium));
    }
    return compared;
}

} // namespace plumule
