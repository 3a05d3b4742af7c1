#include "core/journal/cost/work_time_entries.h"

#include "core/cost/cost_reason.h"
#include "core/cost/work_time_repository.h"
#include "core/journal/ledger/ledger.h"

namespace plumule {
namespace {

constexpr int kDaysMeasured = 365;
constexpr int kMostSeconds = 864'000; // as core/storage/cell_bounds.h has it

Done checkWork(const WorkTime& work)
{
    if (work.seconds.value_or(0) <= 0 || *work.seconds > kMostSeconds) {
        return fail(ErrorKind::Invalid, CostReason::WorkTimeWrong);
    }
    if (work.times.value_or(0) <= 0) {
        return fail(ErrorKind::Missing, CostReason::WorkTimesMissing);
    }
    return {};
}

// What the sentence of an ended stretch says: its seconds, and how often.
void tell(Deed& deed, const WorkTime& work)
{
    deed.whom = toText(work.task);
    if (!work.isRunning()) {
        deed.with = {std::to_string(*work.seconds), std::to_string(*work.times)};
    }
}

Result<WorkTime> ended(WorkTimeRepository& works, const WorkMoment& now)
{
    auto work = works.running();
    if (!work) {
        return fail(ErrorKind::NotFound, CostReason::NoTimerRuns);
    }
    if (isForgotten(*work, now)) {
        return fail(ErrorKind::Conflict, CostReason::TimerForgotten, toText(work->task));
    }
    work->seconds = secondsUntil(*work, now);
    work->times = works.timesSince(work->task, work->begun());
    if (const Done checked = checkWork(*work); !checked) {
        return passOn(checked);
    }
    works.update(*work);
    return *work;
}

} // namespace

Result<std::optional<WorkTime>> WorkTimeEntries::running()
{
    return m_ledger.ask([](Database& database) { return WorkTimeRepository(database).running(); });
}

Result<std::optional<int>> WorkTimeEntries::timesOf(const WorkTime& work)
{
    return m_ledger.ask([&](Database& database) {
        return WorkTimeRepository(database).timesSince(work.task, work.begun());
    });
}

Result<std::vector<MeasuredTask>> WorkTimeEntries::measured()
{
    return m_ledger.ask([&](Database& database) {
        return WorkTimeRepository(database).measured(m_ledger.clock().today() - kDaysMeasured + 1);
    });
}

Result<std::vector<WorkTime>> WorkTimeEntries::latest(int count)
{
    return m_ledger.ask(
        [&](Database& database) { return WorkTimeRepository(database).latest(count); });
}

Result<WorkTime> WorkTimeEntries::begin(LabourKind task)
{
    return m_ledger.record(
        Intention::BeginWork, [&](Database& database, Deed& deed) -> Result<WorkTime> {
            WorkTimeRepository works(database);
            if (const auto running = works.running()) {
                return fail(ErrorKind::Conflict, CostReason::TimerRuns, toText(running->task));
            }
            const WorkMoment now = workMomentOf(m_ledger.clock());
            WorkTime work;
            work.task = task;
            work.on = now.moment.date;
            work.minute = now.moment.minute;
            work.second = now.second;
            works.insert(work);
            tell(deed, work);
            return work;
        });
}

Result<WorkTime> WorkTimeEntries::end()
{
    return m_ledger.record(Intention::EndWork,
                           [&](Database& database, Deed& deed) -> Result<WorkTime> {
                               WorkTimeRepository works(database);
                               auto work = ended(works, workMomentOf(m_ledger.clock()));
                               if (work) {
                                   tell(deed, *work);
                               }
                               return work;
                           });
}

Result<WorkTime> WorkTimeEntries::save(const WorkTime& work)
{
    return m_ledger.record(Intention::SaveWork,
                           [&](Database& database, Deed& deed) -> Result<WorkTime> {
                               if (const Done checked = checkWork(work); !checked) {
                                   return passOn(checked);
                               }
                               WorkTimeRepository works(database);
                               WorkTime stored = work;
                               if (!stored.id.isStored()) {
                                   works.insert(stored);
                               } else if (works.find(stored.id)) {
                                   works.update(stored);
                               } else {
                                   return fail(ErrorKind::NotFound, CostReason::WorkUnknown);
                               }
                               tell(deed, stored);
                               return stored;
                           });
}

Done WorkTimeEntries::remove(WorkTimeId work)
{
    return m_ledger.record(Intention::RemoveWork, [&](Database& database, Deed& deed) -> Done {
        WorkTimeRepository works(database);
        const auto stored = works.find(work);
        if (!stored) {
            return fail(ErrorKind::NotFound, CostReason::WorkUnknown);
        }
        deed.whom = toText(stored->task);
        works.remove(work);
        return {};
    });
}

} // namespace plumule
