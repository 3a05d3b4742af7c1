// Part of core/review/planning/trial_outlook.h: whether a plan is fair.
#include "core/review/planning/trial_outlook.h"

#include "core/tray/stage_plan.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

bool feeds(const Treatment& treatment, const Medium& medium,
           const std::vector<ProtocolStage>& stages)
{
    switch (treatment.feeding) {
    case Feeding::Nutrient:
        return true;
    case Feeding::NoNutrient:
        return false;
    case Feeding::AsProtocol:
        break;
    }
    return std::any_of(stages.begin(), stages.end(), [&](const ProtocolStage& stage) {
        return waterFor(stage, medium) == WaterKind::Nutrient;
    });
}

// The trays of a plan as they would be on record once harvested.
class PlannedSeason
{
public:
    PlannedSeason(const TrialDraft& draft, const SeasonFacts& facts)
        : m_facts(facts.withoutTrays())
    {
        m_facts.trials[trialOf(draft)] = draft.trial.code;
        m_facts.designs[trialOf(draft)] = draft.plan.design;
        for (const PlannedTray& planned : draft.trays) {
            add(draft, planned);
        }
        gather();
    }

    [[nodiscard]] std::vector<Finding> findings() const
    {
        if (m_trays.trays.empty()) {
            return {};
        }
        auto findings = fairnessOf(m_facts, m_trays, aspectsComparedWithin());
        std::erase_if(findings,
                      [](const Finding& finding) { return finding.aspect == Aspect::DaysGrown; });
        return findings;
    }

private:
    // A new trial has no number yet, and a tray outside any trial has none either.
    static TrialId trialOf(const TrialDraft& draft)
    {
        return draft.trial.id.isStored() ? draft.trial.id : TrialId{-1};
    }

    void add(const TrialDraft& draft, const PlannedTray& planned);
    void gather();

    SeasonFacts m_facts;
    ComparedTrays m_trays;
};

void PlannedSeason::add(const TrialDraft& draft, const PlannedTray& planned)
{
    const auto treatment =
        std::find_if(draft.treatments.begin(), draft.treatments.end(),
                     [&](const Treatment& one) { return one.position == planned.treatment; });
    const auto medium = treatment == draft.treatments.end() ? m_facts.media.end()
                                                            : m_facts.media.find(treatment->medium);
    if (medium == m_facts.media.end()) {
        return;
    }
    SeasonRecord record;
    Tray& tray = record.tray;
    tray.id = {static_cast<std::int64_t>(m_facts.trays.size()) + 1};
    tray.medium = medium->first;
    tray.variety = draft.plan.variety;
    tray.seedLot = draft.plan.seedLot;
    tray.seed = draft.plan.seedPerTray;
    tray.sownOn = draft.plan.sowOn;
    tray.trial = trialOf(draft);
    if (draft.plan.design != Design::CompletelyRandom) {
        tray.block = planned.block;
    }
    if (draft.plan.design == Design::LatinSquare) {
        record.column = planned.position;
    }
    record.lastCut = draft.plan.sowOn;
    record.hasStages = true;
    record.plansNutrient = feeds(*treatment, medium->second, m_facts.protocols[draft.plan.variety]);
    const auto& places = m_facts.cost.layout.places;
    const auto place = std::find_if(places.begin(), places.end(), [&](const Place& one) {
        return planned.place && one.id == *planned.place;
    });
    if (place != places.end()) {
        record.shelf = place->shelf;
    }
    m_facts.trays.push_back(std::move(record));
}

void PlannedSeason::gather()
{
    std::stable_sort(
        m_facts.trays.begin(), m_facts.trays.end(),
        [](const SeasonRecord& a, const SeasonRecord& b) { return a.tray.medium < b.tray.medium; });
    for (const SeasonRecord& record : m_facts.trays) {
        if (m_trays.media.empty() || m_trays.media.back()->id != record.tray.medium) {
            m_trays.media.push_back(&m_facts.media.at(record.tray.medium));
        }
        ComparedTray tray;
        tray.record = &record;
        tray.medium = m_trays.media.size() - 1;
        // What can be told apart hangs on the layout alone: any yields do, but for equal ones.
        tray.value = static_cast<double>(m_trays.trays.size() * 7919 % 101);
        m_trays.trays.push_back(tray);
    }
}

} // namespace

std::vector<Finding> fairnessOfPlan(const TrialDraft& draft, const SeasonFacts& facts)
{
    return PlannedSeason(draft, facts).findings();
}

PlanAnswer planAnswerOf(const TrialDraft& draft, const SeasonFacts& facts)
{
    return {outlookOf(draft, facts), fairnessOfPlan(draft, facts)};
}

} // namespace plumule
