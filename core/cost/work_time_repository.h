#pragma once

#include "core/cost/work_time.h"

namespace plumule {

class Database;

// Stored stretches of work.
class WorkTimeRepository
{
public:
    explicit WorkTimeRepository(Database& database)
        : m_database(database)
    {}

    // The one that runs; of several, which two copies may bring together, the oldest.
    [[nodiscard]] std::optional<WorkTime> running() const;
    [[nodiscard]] std::optional<WorkTime> find(WorkTimeId work) const;
    // Those that have ended, newest first.
    [[nodiscard]] std::vector<WorkTime> latest(int count) const;
    // By task, of the stretches begun from that day on.
    [[nodiscard]] std::vector<MeasuredTask> measured(Date from) const;
    // How often the journal says the task was done since; none of what it does not time.
    [[nodiscard]] std::optional<int> timesSince(LabourKind task, Moment since) const;

    void insert(WorkTime& work);
    void update(const WorkTime& work);
    void remove(WorkTimeId work);

private:
    Database& m_database;
};

} // namespace plumule
