#include "core/journal/trial_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger.h"
#include "core/medium/medium_repository.h"
#include "core/trial/trial_repository.h"
#include "core/trial/trial_rules.h"

namespace plumule {
namespace {

std::string freeCode(TrialRepository& trials)
{
    std::vector<std::string> used;
    for (const Trial& trial : trials.all()) {
        used.push_back(trial.code);
    }
    return nextTrialCode(used);
}

Done checkStored(Database& database, const Trial& trial)
{
    TrialRepository trials(database);
    if (trial.id.isStored() && !trials.find(trial.id)) {
        return fail(ErrorKind::NotFound, "trial", trial.code);
    }
    const auto sameCode = trials.findByCode(trial.code);
    if (sameCode && sameCode->id != trial.id) {
        return fail(ErrorKind::Duplicate, "trial.code", trial.code);
    }
    if (trial.control && !MediumRepository(database).find(*trial.control)) {
        return fail(ErrorKind::NotFound, "trial.control");
    }
    return {};
}

} // namespace

Result<std::vector<Trial>> TrialEntries::all()
{
    return m_ledger.ask([](Database& database) { return TrialRepository(database).all(); });
}

Result<Trial> TrialEntries::save(const Trial& trial)
{
    const bool isNew = !trial.id.isStored();
    return m_ledger.record(isNew ? "trial.add" : "trial.change",
                           [&](Database& database, std::string& subject) -> Result<Trial> {
                               TrialRepository trials(database);
                               Trial stored = trial;
                               stored.name = trimmed(trial.name);
                               stored.code = trimmed(trial.code);
                               if (stored.code.empty()) {
                                   stored.code = freeCode(trials);
                               }
                               subject = stored.code;
                               const Done checked = checkTrial(stored).and_then(
                                   [&] { return checkStored(database, stored); });
                               if (!checked) {
                                   return tl::unexpected<Error>(checked.error());
                               }
                               if (isNew) {
                                   trials.insert(stored);
                               } else {
                                   trials.update(stored);
                               }
                               return stored;
                           });
}

Done TrialEntries::remove(TrialId trial)
{
    return m_ledger.record("trial.remove", [&](Database& database, std::string& subject) -> Done {
        TrialRepository trials(database);
        const auto found = trials.find(trial);
        if (!found) {
            return fail(ErrorKind::NotFound, "trial");
        }
        subject = found->code;
        if (trials.isInUse(trial)) {
            return fail(ErrorKind::InUse, "trial", found->code);
        }
        trials.remove(trial);
        return {};
    });
}

} // namespace plumule
