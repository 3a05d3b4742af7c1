#include "core/week/repeat_repository.h"

#include "core/storage/table.h"
#include "core/week/repeat_rules.h"

namespace plumule {

template <>
struct TableOf<Repeat>
{
    static constexpr const char* name = "repeat_sowing";
    static constexpr auto columns =
        std::tuple{column("variety_id", &Repeat::variety),   column("medium_id", &Repeat::medium),
                   column("trays", &Repeat::trays),          column("weekdays", &Repeat::weekdays),
                   column("every_days", &Repeat::everyDays), column("from_date", &Repeat::from),
                   column("until_date", &Repeat::until)};
    static bool isSound(const Repeat& repeat) { return checkRepeat(repeat).has_value(); }
};

template <>
struct TableOf<RepeatDay>
{
    static constexpr const char* name = "repeat_day";
    static constexpr auto columns =
        std::tuple{column("repeat_sowing_id", &RepeatDay::repeat),
                   column("on_date", &RepeatDay::on), column("answer", &RepeatDay::answer)};
};

std::vector<Repeat> RepeatRepository::all()
{
    return selectRows<Repeat>(m_database, "ORDER BY from_date, id");
}

std::optional<Repeat> RepeatRepository::find(RepeatId repeat)
{
    return findRow<Repeat>(m_database, repeat);
}

void RepeatRepository::insert(Repeat& repeat)
{
    insertRow(m_database, repeat);
}

void RepeatRepository::update(const Repeat& repeat)
{
    updateRow(m_database, repeat);
}

void RepeatRepository::remove(RepeatId repeat)
{
    deleteRow<Repeat>(m_database, repeat);
}

std::map<RepeatId, std::set<Date>> RepeatRepository::answeredSince(Date from)
{
    std::map<RepeatId, std::set<Date>> answered;
    for (const RepeatDay& day : selectRows<RepeatDay>(m_database, "WHERE on_date >= ?1", from)) {
        answered[day.repeat].insert(day.on);
    }
    return answered;
}

bool RepeatRepository::isAnswered(RepeatId repeat, Date on)
{
    return m_database
        .prepare("SELECT 1 FROM repeat_day WHERE repeat_sowing_id = ?1 AND on_date = ?2")
        .bind(repeat, on)
        .step();
}

bool RepeatRepository::hasAnswers(RepeatId repeat)
{
    return m_database.prepare("SELECT 1 FROM repeat_day WHERE repeat_sowing_id = ?1 LIMIT 1")
        .bind(repeat)
        .step();
}

void RepeatRepository::insert(RepeatDay& day)
{
    insertRow(m_database, day);
}

} // namespace plumule
