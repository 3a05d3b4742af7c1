#include "core/cost/work_time_repository.h"

#include "core/storage/table.h"

#include <algorithm>
#include <tuple>

namespace plumule {

template <>
struct TableOf<WorkTime>
{
    static constexpr const char* name = "work_time";
    static constexpr auto columns =
        std::tuple{column("task", &WorkTime::task),       column("on_date", &WorkTime::on),
                   column("minute", &WorkTime::minute),   column("second", &WorkTime::second),
                   column("seconds", &WorkTime::seconds), column("times", &WorkTime::times)};
    static bool isSound(const WorkTime& work)
    {
        return work.second >= 0 && work.second < 60 && work.times.value_or(0) >= 0 &&
               work.seconds.has_value() == work.times.has_value();
    }
};

namespace {

// The table whose rows are the task done once, where they carry the minute of it.
const char* actsOf(LabourKind task)
{
    switch (task) {
    case LabourKind::Watering:
        return "watering";
    case LabourKind::Harvesting:
        return "harvest";
    case LabourKind::ClearingOut:
        return "residue";
    default:
        return nullptr;
    }
}

} // namespace

std::optional<WorkTime> WorkTimeRepository::running() const
{
    return selectRow<WorkTime>(m_database, "WHERE seconds IS NULL ORDER BY id LIMIT 1");
}

std::optional<WorkTime> WorkTimeRepository::find(WorkTimeId work) const
{
    return findRow<WorkTime>(m_database, work);
}

std::vector<WorkTime> WorkTimeRepository::latest(int count) const
{
    return selectRows<WorkTime>(
        m_database,
        "WHERE seconds IS NOT NULL ORDER BY on_date DESC, minute DESC, second DESC, id DESC "
        "LIMIT ?1",
        count);
}

std::vector<MeasuredTask> WorkTimeRepository::measured(Date from) const
{
    Statement rows = m_database.prepare(
        "SELECT task, count(*), sum(seconds), sum(times) FROM work_time WHERE on_date >= ?1 AND "
        "seconds IS NOT NULL GROUP BY task");
    rows.bind(from);
    std::vector<MeasuredTask> tasks;
    while (rows.step()) {
        tasks.push_back({rows.get<LabourKind>(0), rows.get<int>(1), rows.get<std::int64_t>(2),
                         rows.get<std::int64_t>(3)});
    }
    std::sort(tasks.begin(), tasks.end(),
              [](const MeasuredTask& a, const MeasuredTask& b) { return a.task < b.task; });
    return tasks;
}

std::optional<int> WorkTimeRepository::timesSince(LabourKind task, Moment since) const
{
    const char* acts = actsOf(task);
    if (acts == nullptr) {
        return std::nullopt;
    }
    Statement rows = m_database.prepare(std::string("SELECT count(*) FROM ") + acts +
                                        " WHERE on_date >= ?1 AND (on_date > ?1 OR minute >= ?2)");
    rows.bind(since.date, since.minute);
    rows.step();
    return rows.get<int>(0);
}

void WorkTimeRepository::insert(WorkTime& work)
{
    insertRow(m_database, work);
}

void WorkTimeRepository::update(const WorkTime& work)
{
    updateRow(m_database, work);
}

void WorkTimeRepository::remove(WorkTimeId work)
{
    deleteRow<WorkTime>(m_database, work);
}

} // namespace plumule
