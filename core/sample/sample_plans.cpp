#include "core/sample/sample_plans.h"

#include "core/tray/tray_repository.h"
#include "core/trial/trial_places.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_repository.h"

#include <algorithm>
#include <tuple>

namespace plumule {
namespace {

using SamplePlansByTrial = std::map<TrialId, TrialDraft>;

TrialDraft planFromSample(const SampleRow& row, const SampleStock& stock, Database& database)
{
    TrialDraft draft;
    const TrialId trial = row.found(stock.trials, "trial");
    draft.trial = TrialRepository(database).find(trial).value_or(Trial{});
    draft.plan.trial = trial;
    draft.plan.design = row.named<Design>("design");
    draft.plan.variety = row.found(stock.protocols, "variety").variety.id;
    if (row.has("seed_lot")) {
        draft.plan.seedLot =
            row.foundAs(stock.lots, row.text("variety") + "/" + row.text("seed_lot"), "seed_lot");
    }
    draft.plan.seedPerTray = row.maybeGrams("seed_g");
    const Moment sowAt = row.planned("sow_day", "sow_time");
    draft.plan.sowOn = sowAt.date;
    draft.plan.sowMinute = sowAt.minute;
    draft.plan.startsWithSoak = row.isYes("starts_with_soak");
    draft.plan.blocks = row.whole("blocks");
    draft.plan.traysEach = row.whole("trays_each");
    draft.plan.drawNumber = row.whole("draw_number");
    return draft;
}

SamplePlansByTrial readPlans(Database& database, SampleTables& tables, const SampleStock& stock)
{
    SamplePlansByTrial plans;
    tables.forEach("trial_plans", [&](const SampleRow& row) {
        TrialDraft draft = planFromSample(row, stock, database);
        plans.emplace(draft.plan.trial, std::move(draft));
    });
    tables.forEach("treatments", [&](const SampleRow& row) {
        const auto plan = plans.find(row.found(stock.trials, "trial"));
        if (plan == plans.end()) {
            row.refuse("trial");
            return;
        }
        Treatment treatment;
        treatment.medium = row.found(stock.media, "medium").id;
        treatment.feeding = row.named<Feeding>("feeding");
        plan->second.treatments.push_back(treatment);
    });
    return plans;
}

// By block, then place in walking order; treatments by medium.
std::vector<PlannedTray> layoutOfTrays(Database& database, const TrialDraft& draft,
                                       const SampleStock& stock)
{
    std::map<PlaceId, std::string> nameOfPlace;
    for (const auto& [name, place] : stock.places) {
        nameOfPlace.emplace(place, name);
    }
    TrayFilter filter;
    filter.trial = draft.trial.id;
    std::vector<TrayRecord> records = TrayRepository(database).records(filter);
    const auto keyOf = [&](const TrayRecord& record) {
        const auto place = record.place ? nameOfPlace[*record.place] : std::string();
        return std::tuple(record.tray.block.value_or(1), place, record.tray.code);
    };
    std::sort(records.begin(), records.end(),
              [&](const TrayRecord& a, const TrayRecord& b) { return keyOf(a) < keyOf(b); });
    std::map<int, int> inBlock;
    std::vector<PlannedTray> layout;
    for (const TrayRecord& record : records) {
        const auto treatment =
            std::find_if(draft.treatments.begin(), draft.treatments.end(),
                         [&](const Treatment& one) { return one.medium == record.tray.medium; });
        PlannedTray planned;
        planned.treatment = static_cast<int>(treatment - draft.treatments.begin());
        planned.block = record.tray.block.value_or(1);
        planned.position = ++inBlock[planned.block];
        planned.place = record.place;
        planned.tray = record.tray.id;
        layout.push_back(planned);
    }
    return layout;
}

} // namespace

void storeSamplePlans(Database& database, SampleTables& tables, const SampleStock& stock)
{
    SamplePlansByTrial plans = readPlans(database, tables, stock);
    if (tables.isFaulty()) {
        return;
    }
    TrialPlanRepository repository(database);
    for (auto& [trial, draft] : plans) {
        draft.trays = layoutOfTrays(database, draft, stock);
        if (draft.trays.empty()) {
            draft.trays = drawFor(database, draft).value_or(std::vector<PlannedTray>());
        }
        repository.store(draft);
    }
}

} // namespace plumule
