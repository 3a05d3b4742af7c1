#include "core/review/fairness/fairness.h"

#include "core/review/fairness/aspect_counts.h"

#include <algorithm>
#include <fmt/format.h>
#include <functional>
#include <unordered_map>

namespace plumule {
namespace {

constexpr AspectTolerance kAlikeDensity = {0.02, 1e-9};
constexpr AspectTolerance kAlikeDays = {0, 0.5};
constexpr AspectTolerance kAlikeUses = {0, 3};
// Two loggers of the usual kind differ by as much side by side: ±0.5 °C and ±3 % of humidity each,
// which is about 0.1 kPa at 22 °C (from memory).
constexpr AspectTolerance kAlikeTemperature = {0, 1};
constexpr AspectTolerance kAlikeVpd = {0.1, 0.1};
constexpr AspectTolerance kAlikeLight = {0.1, 0.5};

// A tray's level, none where it is not on record, and what the level is called.
struct LevelAspect
{
    Aspect aspect = Aspect::Feeding;
    bool isWithinVariety = false;
    std::function<std::optional<std::int64_t>(const SeasonRecord&)> levelOf;
    std::function<std::string(std::int64_t)> nameOf;
};

struct NumberAspect
{
    Aspect aspect = Aspect::SeedDensity;
    AspectTolerance tolerance;
    std::function<std::optional<double>(const SeasonRecord&)> valueOf;
};

template <class Key>
std::optional<std::int64_t> numberOf(const std::optional<Key>& id)
{
    return id ? std::optional(id->value) : std::nullopt;
}

class FairnessJudge
{
public:
    FairnessJudge(const SeasonFacts& facts, const ComparedTrays& trays,
                  const std::set<Aspect>& inModel)
        : m_facts(facts)
        , m_trays(trays)
        , m_inModel(inModel)
    {}

    [[nodiscard]] std::vector<Finding> findings()
    {
        for (const LevelAspect& aspect : levelAspects()) {
            judge(aspect);
        }
        for (const NumberAspect& aspect : numberAspects()) {
            judge(aspect);
        }
        std::stable_sort(m_findings.begin(), m_findings.end(),
                         [](const Finding& a, const Finding& b) { return rank(a) < rank(b); });
        return std::move(m_findings);
    }

private:
    static std::tuple<Confounding, bool, Aspect> rank(const Finding& finding)
    {
        return {finding.confounding, finding.isInModel, finding.aspect};
    }

    std::vector<LevelAspect> levelAspects();
    [[nodiscard]] std::vector<NumberAspect> numberAspects() const;
    void judge(const LevelAspect& aspect);
    void judge(const NumberAspect& aspect);
    void keep(Finding finding, const Unlikeness& unlike);

    [[nodiscard]] std::string shelfName(std::int64_t shelf) const;
    [[nodiscard]] std::string lotName(std::int64_t lot) const;
    [[nodiscard]] bool isOfOneVariety() const;

    const SeasonFacts& m_facts;
    const ComparedTrays& m_trays;
    const std::set<Aspect>& m_inModel;
    std::unordered_map<std::string, std::int64_t> m_people;
    std::vector<std::string> m_peopleNames;
    std::vector<Finding> m_findings;
};

template <class Key>
std::string nameOrNone(const std::map<Key, std::string>& names, std::int64_t id)
{
    const auto found = names.find(Key{id});
    return found == names.end() ? std::string() : found->second;
}

std::vector<LevelAspect> FairnessJudge::levelAspects()
{
    const auto person = [this](const SeasonRecord& record) -> std::optional<std::int64_t> {
        const auto& name = record.tray.sownBy;
        if (!name || name->empty()) {
            return std::nullopt;
        }
        const auto next = static_cast<std::int64_t>(m_peopleNames.size());
        const auto [place, isNew] = m_people.try_emplace(*name, next);
        if (isNew) {
            m_peopleNames.push_back(*name);
        }
        return place->second;
    };
    return {
        {Aspect::Feeding, false, [](const SeasonRecord& record) { return wasFed(record); },
         [](std::int64_t fed) { return fed != 0 ? "nutrient" : "no_nutrient"; }},
        {Aspect::Variety, false,
         [](const SeasonRecord& record) { return record.tray.variety.value; },
         [this](std::int64_t id) { return nameOrNone(m_facts.varieties, id); }},
        {Aspect::Trial, false,
         [](const SeasonRecord& record) { return record.tray.trial.value_or(TrialId()).value; },
         [this](std::int64_t id) { return nameOrNone(m_facts.trials, id); }},
        {Aspect::SeedLot, true,
         [](const SeasonRecord& record) { return numberOf(record.tray.seedLot); },
         [this](std::int64_t id) { return lotName(id); }},
        {Aspect::Shelf, false, [](const SeasonRecord& record) { return numberOf(record.shelf); },
         [this](std::int64_t id) { return shelfName(id); }},
        {Aspect::Season, false,
         [](const SeasonRecord& record) { return monthOf(record.tray.sownOn); },
         [](std::int64_t month) { return fmt::format("{}-{:02}", month / 12, month % 12 + 1); }},
        {Aspect::Person, false, person,
         [this](std::int64_t who) { return m_peopleNames[static_cast<std::size_t>(who)]; }},
    };
}

std::vector<NumberAspect> FairnessJudge::numberAspects() const
{
    const double area = m_facts.cost.layout.room.trayArea();
    return {
        {Aspect::SeedDensity, kAlikeDensity,
         [area](const SeasonRecord& record) {
             return record.tray.seed && area > 0 ? std::optional(inGrams(*record.tray.seed) / area)
                                                 : std::nullopt;
         }},
        {Aspect::DaysGrown, kAlikeDays,
         [](const SeasonRecord& record) {
             return std::optional<double>(dayCount(record.tray.sownOn, *record.lastCut));
         }},
        {Aspect::PieceUses, kAlikeUses,
         [](const SeasonRecord& record) {
             return record.pieceUse ? std::optional<double>(*record.pieceUse) : std::nullopt;
         }},
        {Aspect::Temperature, kAlikeTemperature,
         [](const SeasonRecord& record) { return record.climate.temperature; }},
        {Aspect::Vpd, kAlikeVpd, [](const SeasonRecord& record) { return record.climate.vpd; }},
        {Aspect::DailyLight, kAlikeLight,
         [](const SeasonRecord& record) { return record.climate.dli; }},
    };
}

std::string FairnessJudge::shelfName(std::int64_t shelf) const
{
    const RoomLayout& layout = m_facts.cost.layout;
    for (const Shelf& one : layout.shelves) {
        if (one.id.value != shelf) {
            continue;
        }
        for (const Rack& rack : layout.racks) {
            if (rack.id == one.rack) {
                return rack.name + "/" + one.name;
            }
        }
        return one.name;
    }
    return {};
}

bool FairnessJudge::isOfOneVariety() const
{
    return std::all_of(m_trays.trays.begin(), m_trays.trays.end(), [&](const ComparedTray& tray) {
        return tray.record->tray.variety == m_trays.trays.front().record->tray.variety;
    });
}

std::string FairnessJudge::lotName(std::int64_t lot) const
{
    const auto found = m_facts.cost.lots.find(SeedLotId{lot});
    if (found == m_facts.cost.lots.end()) {
        return {};
    }
    // Lots of two varieties may have the same number.
    const std::string& number = found->second.lotNumber;
    const auto variety = m_facts.varieties.find(found->second.variety);
    return isOfOneVariety() || variety == m_facts.varieties.end() ? number
                                                                  : variety->second + " " + number;
}

void FairnessJudge::judge(const LevelAspect& aspect)
{
    std::vector<AspectReading> readings;
    readings.reserve(m_trays.trays.size());
    Finding finding;
    finding.aspect = aspect.aspect;
    finding.media.resize(m_trays.media.size());
    for (const ComparedTray& tray : m_trays.trays) {
        const SeasonRecord& record = *tray.record;
        if (const auto level = aspect.levelOf(record)) {
            readings.push_back({record.tray.trial.value_or(TrialId()).value,
                                aspect.isWithinVariety ? record.tray.variety.value : 0, tray.medium,
                                *level});
        } else {
            ++finding.media[tray.medium].unknown;
        }
    }
    const AspectCounts counts(std::move(readings));
    for (std::size_t medium = 0; medium < finding.media.size(); ++medium) {
        for (const auto& [level, trays] : counts.levelsOf(medium)) {
            finding.media[medium].levels.push_back({aspect.nameOf(level), trays});
        }
    }
    if (aspect.aspect != Aspect::Variety && aspect.aspect != Aspect::Trial) {
        for (const std::int64_t trial : counts.fullyIn(finding.media.size())) {
            finding.fullyInTrials.push_back(nameOrNone(m_facts.trials, trial));
        }
    }
    finding.fully = counts.fullyPairs(m_trays.media.size());
    keep(std::move(finding), counts.worstPair(m_trays.media.size()));
}

void FairnessJudge::judge(const NumberAspect& aspect)
{
    AspectRanges ranges;
    Finding finding;
    finding.aspect = aspect.aspect;
    finding.media.resize(m_trays.media.size());
    for (const ComparedTray& tray : m_trays.trays) {
        if (const auto value = aspect.valueOf(*tray.record)) {
            ranges.add(tray.record->tray.variety.value, tray.medium, *value);
        } else {
            ++finding.media[tray.medium].unknown;
        }
    }
    for (std::size_t medium = 0; medium < finding.media.size(); ++medium) {
        finding.media[medium].numbers = ranges.numbersOf(medium);
    }
    keep(std::move(finding), ranges.worstPair(m_trays.media.size(), aspect.tolerance));
}

void FairnessJudge::keep(Finding finding, const Unlikeness& unlike)
{
    const auto known =
        std::count_if(finding.media.begin(), finding.media.end(), [](const AspectOfMedium& one) {
            return !one.levels.empty() || one.numbers.has_value();
        });
    if (known < 2) {
        return;
    }
    for (std::size_t medium = 0; medium < finding.media.size(); ++medium) {
        finding.media[medium].medium = medium;
    }
    finding.confounding = unlike.confounding;
    finding.isInModel = m_inModel.count(finding.aspect) > 0;
    if (unlike.confounding != Confounding::Alike) {
        finding.worst = unlike.worst;
    }
    m_findings.push_back(std::move(finding));
}

} // namespace

Advice adviceFor(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return Advice::FeedAllAlike;
    case Aspect::Variety:
        return Advice::GrowEachVarietyOnEveryMedium;
    case Aspect::Trial:
        return Advice::GrowEveryMediumInEachTrial;
    case Aspect::SeedLot:
        return Advice::UseOneSeedLot;
    case Aspect::SeedDensity:
        return Advice::SowAllAsDensely;
    case Aspect::Shelf:
        return Advice::SpreadMediaOverShelves;
    case Aspect::Season:
        return Advice::SowAllOnOneDay;
    case Aspect::DaysGrown:
        return Advice::CutAllOnOneDay;
    case Aspect::PieceUses:
        return Advice::UsePiecesAsWorn;
    case Aspect::Person:
        return Advice::ShareTheWork;
    case Aspect::Temperature:
    case Aspect::Vpd:
        return Advice::GrowInOneClimate;
    case Aspect::DailyLight:
        return Advice::LightAllAlike;
    }
    return Advice::FeedAllAlike;
}

std::set<Aspect> aspectsComparedWithin()
{
    return {Aspect::Variety, Aspect::Trial, Aspect::Season};
}

std::vector<Finding> fairnessOf(const SeasonFacts& facts, const ComparedTrays& trays,
                                const std::set<Aspect>& inModel)
{
    return FairnessJudge(facts, trays, inModel).findings();
}

bool callsForAdvice(const Finding& finding)
{
    const bool isFully = finding.confounding == Confounding::Fully;
    const bool isLeft = finding.confounding == Confounding::Partly && !finding.isInModel;
    return isFully || isLeft || !finding.fullyInTrials.empty();
}

std::vector<Advice> suggestionsFor(const std::vector<Finding>& findings)
{
    std::vector<Advice> suggestions;
    for (const Finding& finding : findings) {
        const Advice advice = adviceFor(finding.aspect);
        const bool isNew =
            std::find(suggestions.begin(), suggestions.end(), advice) == suggestions.end();
        if (callsForAdvice(finding) && isNew) {
            suggestions.push_back(advice);
        }
    }
    return suggestions;
}

std::optional<bool> wasFed(const SeasonRecord& record)
{
    if (record.use.waterings) {
        return record.nutrientWaterings > 0;
    }
    return record.hasStages ? std::optional(record.plansNutrient) : std::nullopt;
}

} // namespace plumule
