#pragma once

#include "core/cost/work_time.h"

namespace plumule {

class Ledger;

// Work that is timed at the rack and at the scale. A timer runs in the journal, not in the program.
class WorkTimeEntries
{
public:
    explicit WorkTimeEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<std::optional<WorkTime>> running();
    // How often the task was done since it began, as far as the journal tells: waterings, cuts.
    [[nodiscard]] Result<std::optional<int>> timesOf(const WorkTime& work);
    // By task, over the last 365 days.
    [[nodiscard]] Result<std::vector<MeasuredTask>> measured();
    // Newest first.
    [[nodiscard]] Result<std::vector<WorkTime>> latest(int count);

    // Conflict where a timer runs.
    Result<WorkTime> begin(LabourKind task);
    // The one that runs, for as often as the journal tells. NotFound where none runs; Missing where
    // the journal does not tell; Conflict where it was forgotten: save() then says how long it
    // took.
    Result<WorkTime> end();
    // A new one where its id is not stored, also in place of a timer that runs. Invalid where it
    // took no time, longer than ten days, or was done never.
    Result<WorkTime> save(const WorkTime& work);
    Done remove(WorkTimeId work);

private:
    Ledger& m_ledger;
};

} // namespace plumule
