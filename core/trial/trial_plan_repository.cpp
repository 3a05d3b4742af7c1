#include "core/trial/trial_plan_repository.h"

#include "core/storage/table.h"
#include "core/trial/trial_repository.h"

#include <map>
#include <utility>

namespace plumule {

template <>
struct TableOf<TrialPlan>
{
    static constexpr const char* name = "trial_plan";
    static constexpr auto columns = std::tuple{
        column("trial_id", &TrialPlan::trial),
        column("design", &TrialPlan::design),
        column("variety_id", &TrialPlan::variety),
        column("seed_lot_id", &TrialPlan::seedLot),
        column("seed_mg", &TrialPlan::seedPerTray),
        column("sow_on", &TrialPlan::sowOn),
        column("sow_minute", &TrialPlan::sowMinute),
        column("starts_with_soak", &TrialPlan::startsWithSoak),
        column("blocks", &TrialPlan::blocks),
        column("trays_each", &TrialPlan::traysEach),
        column("spread_mg", &TrialPlan::spread),
        column("draw_number", &TrialPlan::drawNumber),
    };
};

template <>
struct TableOf<Treatment>
{
    static constexpr const char* name = "treatment";
    static constexpr auto columns =
        std::tuple{column("trial_id", &Treatment::trial), column("position", &Treatment::position),
                   column("medium_id", &Treatment::medium), column("feeding", &Treatment::feeding)};
};

template <>
struct TableOf<PlannedTray>
{
    static constexpr const char* name = "planned_tray";
    static constexpr auto columns = std::tuple{
        column("trial_id", &PlannedTray::trial), column("treatment", &PlannedTray::treatment),
        column("block", &PlannedTray::block),    column("position", &PlannedTray::position),
        column("place_id", &PlannedTray::place), column("is_moved", &PlannedTray::isMoved),
        column("tray_id", &PlannedTray::tray)};
};

namespace {

constexpr const char* kTreatmentsByPosition = "ORDER BY trial_id, position, id";
constexpr const char* kTraysByBlock = "ORDER BY trial_id, block, position, id";

void checkLayoutsTreatments(const TrialDraft& draft)
{
    for (const PlannedTray& tray : draft.trays) {
        if (tray.treatment < 0 || std::cmp_greater_equal(tray.treatment, draft.treatments.size())) {
            throw damagedRow(TableOf<PlannedTray>::name, tray.id.value);
        }
    }
}

std::string ofOneTrial(const char* order)
{
    return std::string("WHERE trial_id = ?1 ") + order;
}

// Writes these rows over the present ones in their order; what is left over goes.
template <class Row>
void storeInstead(Database& database, const std::vector<Row>& present, std::vector<Row>& rows)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i < present.size()) {
            rows[i].id = present[i].id;
            updateRow(database, rows[i]);
        } else {
            rows[i].id = {};
            insertRow(database, rows[i]);
        }
    }
    for (std::size_t i = rows.size(); i < present.size(); ++i) {
        deleteRow<Row>(database, present[i].id);
    }
}

} // namespace

std::optional<TrialDraft> TrialPlanRepository::find(TrialId trial)
{
    auto named = TrialRepository(m_database).find(trial);
    auto plan = selectRow<TrialPlan>(m_database, "WHERE trial_id = ?1 ORDER BY id", trial);
    if (!named || !plan) {
        return std::nullopt;
    }
    TrialDraft draft{std::move(*named), *plan,
                     selectRows<Treatment>(m_database, ofOneTrial(kTreatmentsByPosition), trial),
                     selectRows<PlannedTray>(m_database, ofOneTrial(kTraysByBlock), trial)};
    checkLayoutsTreatments(draft);
    return draft;
}

std::vector<TrialDraft> TrialPlanRepository::all()
{
    const std::map<TrialId, Trial> trials = TrialRepository(m_database).byId();
    std::map<TrialId, TrialDraft> drafts;
    for (const TrialPlan& plan : selectRows<TrialPlan>(m_database, "ORDER BY id")) {
        const Trial& trial = pointedAt(trials, plan.trial, "trial_plan", plan.id);
        drafts.emplace(trial.id, TrialDraft{trial, plan, {}, {}});
    }
    for (const Treatment& treatment : selectRows<Treatment>(m_database, kTreatmentsByPosition)) {
        if (const auto draft = drafts.find(treatment.trial); draft != drafts.end()) {
            draft->second.treatments.push_back(treatment);
        }
    }
    for (const PlannedTray& tray : selectRows<PlannedTray>(m_database, kTraysByBlock)) {
        if (const auto draft = drafts.find(tray.trial); draft != drafts.end()) {
            draft->second.trays.push_back(tray);
        }
    }
    std::vector<TrialDraft> all;
    for (auto& [trial, draft] : drafts) {
        checkLayoutsTreatments(draft);
        all.push_back(std::move(draft));
    }
    return all;
}

bool TrialPlanRepository::isSown(TrialId trial)
{
    return m_database
        .prepare("SELECT 1 FROM planned_tray WHERE trial_id = ?1 AND tray_id IS NOT NULL LIMIT 1")
        .bind(trial)
        .step();
}

std::set<PlaceId> TrialPlanRepository::heldPlaces(TrialId except)
{
    Statement statement = m_database.prepare(
        "SELECT place_id FROM planned_tray WHERE tray_id IS NULL AND place_id IS NOT NULL AND "
        "trial_id <> ?1");
    statement.bind(except);
    std::set<PlaceId> held;
    while (statement.step()) {
        held.insert(statement.get<PlaceId>(0));
    }
    return held;
}

void TrialPlanRepository::store(TrialDraft& draft)
{
    const TrialId trial = draft.trial.id;
    const auto present = find(trial).value_or(TrialDraft{});
    draft.plan.id = present.plan.id;
    draft.plan.trial = trial;
    draft.plan.id.isStored() ? updateRow(m_database, draft.plan)
                             : insertRow(m_database, draft.plan);
    int position = 0;
    for (Treatment& treatment : draft.treatments) {
        treatment.trial = trial;
        treatment.position = position++;
    }
    for (PlannedTray& tray : draft.trays) {
        tray.trial = trial;
    }
    storeInstead(m_database, present.treatments, draft.treatments);
    storeInstead(m_database, present.trays, draft.trays);
}

void TrialPlanRepository::update(const PlannedTray& tray)
{
    updateRow(m_database, tray);
}

void TrialPlanRepository::remove(TrialId trial)
{
    for (const char* table : {"planned_tray", "treatment", "trial_plan"}) {
        m_database.prepare(std::string("DELETE FROM ") + table + " WHERE trial_id = ?1")
            .bind(trial)
            .run();
    }
}

} // namespace plumule
