#include "core/journal/trial/trial_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/journal/trial/trial_reading.h"
#include "core/journal/trial/trial_storing.h"
#include "core/medium/medium_repository.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

// The names that a list of trials shows.
struct TrialNames
{
    std::map<MediumId, Medium> media;
    std::map<VarietyId, Variety> varieties;
};

void fill(TrialRow& row, const std::set<MediumId>& media, const std::set<VarietyId>& varieties,
          const TrialNames& names)
{
    for (const MediumId medium : media) {
        row.media.push_back(pointedAt(names.media, medium, "trial", row.trial.id));
    }
    if (varieties.size() == 1) {
        row.variety = pointedAt(names.varieties, *varieties.begin(), "trial", row.trial.id).name;
    }
}

void fillSown(TrialRow& row, const std::vector<SownForTrial>& sown, const TrialNames& names)
{
    std::set<MediumId> media;
    std::set<VarietyId> varieties;
    for (const SownForTrial& part : sown) {
        media.insert(part.medium);
        varieties.insert(part.variety);
        row.trays += part.trays;
        row.growing += part.growing;
        row.harvested += part.harvested;
        row.lastHarvest = std::max(row.lastHarvest, part.lastHarvest);
    }
    row.state = row.growing > 0 ? TrialState::Growing : TrialState::Ended;
    fill(row, media, varieties, names);
}

void fillPlanned(TrialRow& row, const TrialDraft& draft, const TrialNames& names)
{
    std::set<MediumId> media;
    for (const Treatment& treatment : draft.treatments) {
        media.insert(treatment.medium);
    }
    row.trays = draft.count();
    fill(row, media, {draft.plan.variety}, names);
}

// When it began or is to begin; one without a day stands first.
Date dayOf(const TrialRow& row, const TrialDraft* draft)
{
    const Date none{std::numeric_limits<std::int32_t>::max()};
    return row.trial.startedOn.value_or(draft == nullptr ? none : draft->plan.sowOn);
}

std::vector<TrialRow> rowsOf(Database& database)
{
    const TrialNames names{MediumRepository(database).byId(), VarietyRepository(database).byId()};
    std::map<TrialId, std::vector<SownForTrial>> sown;
    for (const SownForTrial& part : TrialRepository(database).sown()) {
        sown[part.trial].push_back(part);
    }
    std::map<TrialId, TrialDraft> drafts;
    for (TrialDraft& draft : TrialPlanRepository(database).all()) {
        drafts.emplace(draft.trial.id, std::move(draft));
    }
    std::vector<std::pair<Date, TrialRow>> dated;
    for (Trial& trial : TrialRepository(database).all()) {
        TrialRow row;
        row.trial = std::move(trial);
        const auto draft = drafts.find(row.trial.id);
        const auto trays = sown.find(row.trial.id);
        if (trays != sown.end()) {
            fillSown(row, trays->second, names);
        } else if (draft != drafts.end()) {
            fillPlanned(row, draft->second, names);
        }
        const Date day = dayOf(row, draft == drafts.end() ? nullptr : &draft->second);
        dated.emplace_back(day, std::move(row));
    }
    std::stable_sort(dated.begin(), dated.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<TrialRow> rows;
    rows.reserve(dated.size());
    for (auto& [day, row] : dated) {
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

Result<std::vector<Trial>> TrialEntries::all()
{
    return m_ledger.ask([](Database& database) { return TrialRepository(database).all(); });
}

Result<std::vector<TrialRow>> TrialEntries::list()
{
    return m_ledger.ask([](Database& database) { return rowsOf(database); });
}

Result<TrialProgress> TrialEntries::progress(TrialId trial)
{
    return m_ledger.ask(
        [&](Database& database) { return progressOf(database, trial, m_ledger.clock().today()); });
}

Result<Trial> TrialEntries::save(const Trial& trial)
{
    const bool isNew = !trial.id.isStored();
    return m_ledger.record(isNew ? Intention::AddTrial : Intention::ChangeTrial,
                           [&](Database& database, Deed& deed) -> Result<Trial> {
                               Trial stored = trial;
                               const Done done = storeTrial(database, stored);
                               deed.whom = stored.code;
                               if (!done) {
                                   return passOn(done);
                               }
                               return stored;
                           });
}

Done TrialEntries::remove(TrialId trial)
{
    return m_ledger.record(Intention::RemoveTrial, [&](Database& database, Deed& deed) -> Done {
        TrialRepository trials(database);
        const auto found = trials.find(trial);
        if (!found) {
            return fail(ErrorKind::NotFound, TrialReason::Unknown);
        }
        deed.whom = found->code;
        if (trials.isInUse(trial)) {
            return fail(ErrorKind::InUse, TrialReason::InUse, found->code);
        }
        TrialPlanRepository(database).remove(trial);
        trials.remove(trial);
        return {};
    });
}

} // namespace plumule
