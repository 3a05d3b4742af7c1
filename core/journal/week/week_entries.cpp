#include "core/journal/week/week_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/sowing.h"
#include "core/journal/week/repeat_sowing.h"
#include "core/journal/week/week_reading.h"
#include "core/medium/medium_repository.h"
#include "core/tray/tray_reason.h"
#include "core/variety/variety_repository.h"
#include "core/week/repeat_repository.h"
#include "core/week/repeat_rules.h"
#include "core/week/week_reason.h"

namespace plumule {
namespace {

// As far ahead as the next day of a repeating sowing is looked for.
constexpr int kDaysToNext = 366;

// "Radish, rose, Coir mix".
Result<std::string> nameOfRepeat(Database& database, const Repeat& repeat)
{
    const auto variety = VarietyRepository(database).find(repeat.variety);
    const auto medium = MediumRepository(database).find(repeat.medium);
    if (!variety || !medium) {
        return fail(ErrorKind::NotFound,
                    variety ? TrayReason::MediumUnknown : TrayReason::VarietyUnknown);
    }
    return variety->name + ", " + medium->name;
}

// The repeating sowing, where that day is still to be answered.
Result<Repeat> openRepeat(Database& database, RepeatId id, Date due, Date today)
{
    RepeatRepository repeats(database);
    const auto repeat = repeats.find(id);
    if (!repeat) {
        return fail(ErrorKind::NotFound, WeekReason::RepeatUnknown);
    }
    if (repeats.isAnswered(id, due)) {
        return fail(ErrorKind::Conflict, WeekReason::DayAnswered, toIso(due));
    }
    if (!isDayOf(*repeat, due) || today + kWeekDays < due) {
        return fail(ErrorKind::Conflict, WeekReason::DayNotItsOwn, toIso(due));
    }
    return *repeat;
}

void answer(Database& database, RepeatId repeat, Date due, RepeatAnswer given)
{
    RepeatDay day{{}, repeat, due, given};
    RepeatRepository(database).insert(day);
}

} // namespace

Result<Week> WeekEntries::week()
{
    return m_ledger.ask(
        [this](Database& database) { return wholeWeek(database, m_ledger.clock().now()); });
}

Result<std::vector<RepeatRow>> WeekEntries::repeats()
{
    return m_ledger.ask([this](Database& database) {
        const Date today = m_ledger.clock().today();
        const auto varieties = VarietyRepository(database).byId();
        const auto media = MediumRepository(database).byId();
        RepeatRepository repeats(database);
        const auto answered = repeats.answeredSince(today - kDaysLate);
        std::vector<RepeatRow> rows;
        for (const Repeat& repeat : repeats.all()) {
            const auto variety = varieties.find(repeat.variety);
            const auto medium = media.find(repeat.medium);
            if (variety == varieties.end() || medium == media.end()) {
                continue;
            }
            RepeatRow row{repeat, variety->second.name, medium->second, {}};
            const auto open =
                openDays(repeat, answersTo(answered, repeat.id), today, today + kDaysToNext);
            if (!open.empty() && !variety->second.isRetired && !row.medium.isRetired) {
                row.next = open.front();
            }
            rows.push_back(std::move(row));
        }
        return rows;
    });
}

Result<Repeat> WeekEntries::save(const Repeat& given)
{
    const auto what = given.id.isStored() ? Intention::ChangeRepeat : Intention::AddRepeat;
    return m_ledger.record(what, [&](Database& database, Deed& deed) -> Result<Repeat> {
        Repeat repeat = given;
        if (auto checked = checkRepeat(repeat); !checked) {
            return passOn(checked);
        }
        const auto name = nameOfRepeat(database, repeat);
        if (!name) {
            return passOn(name);
        }
        deed.whom = *name;
        RepeatRepository repeats(database);
        if (!repeat.id.isStored()) {
            repeats.insert(repeat);
            return repeat;
        }
        if (!repeats.find(repeat.id)) {
            return fail(ErrorKind::NotFound, WeekReason::RepeatUnknown);
        }
        repeats.update(repeat);
        return repeat;
    });
}

Done WeekEntries::end(RepeatId id)
{
    return m_ledger.record(Intention::EndRepeat, [&](Database& database, Deed& deed) -> Done {
        RepeatRepository repeats(database);
        auto repeat = repeats.find(id);
        const auto name = repeat ? nameOfRepeat(database, *repeat) : Result<std::string>("");
        if (!repeat || !name) {
            return repeat ? Done(passOn(name))
                          : Done(fail(ErrorKind::NotFound, WeekReason::RepeatUnknown));
        }
        deed.whom = *name;
        if (!repeats.hasAnswers(id)) {
            repeats.remove(id);
            return {};
        }
        const Date today = m_ledger.clock().today();
        const auto answered = repeats.answeredSince(today - kDaysLate);
        for (const Date due : openDays(*repeat, answersTo(answered, id), today, today)) {
            answer(database, id, due, RepeatAnswer::Skipped);
        }
        const Date last = std::max(repeat->from, today);
        repeat->until = std::min(repeat->until.value_or(last), last);
        repeats.update(*repeat);
        return {};
    });
}

Result<std::vector<TrayId>> WeekEntries::sow(RepeatId id, Date due)
{
    return m_ledger.record(Intention::SowTrays,
                           [&](Database& database, Deed& deed) -> Result<std::vector<TrayId>> {
                               const Moment now = m_ledger.clock().now();
                               const auto repeat = openRepeat(database, id, due, now.date);
                               if (!repeat) {
                                   return passOn(repeat);
                               }
                               const auto draft = draftFor(database, *repeat, now);
                               if (!draft) {
                                   return passOn(draft);
                               }
                               auto sown = sowAll(database, *draft, deed);
                               if (sown) {
                                   answer(database, id, due, RepeatAnswer::Sown);
                               }
                               return sown;
                           });
}

Done WeekEntries::skip(RepeatId id, Date due)
{
    return m_ledger.record(Intention::SkipRepeat, [&](Database& database, Deed& deed) -> Done {
        const auto repeat = openRepeat(database, id, due, m_ledger.clock().today());
        if (!repeat) {
            return passOn(repeat);
        }
        const auto name = nameOfRepeat(database, *repeat);
        if (!name) {
            return passOn(name);
        }
        deed.whom = *name;
        deed.with = {toIso(due)};
        answer(database, id, due, RepeatAnswer::Skipped);
        return {};
    });
}

} // namespace plumule
