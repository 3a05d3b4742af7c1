#include "core/week/repeat_rules.h"

#include "core/tray/sowing_rules.h"
#include "core/week/week_reason.h"

namespace plumule {

const char* toText(RepeatAnswer answer)
{
    return answer == RepeatAnswer::Sown ? "sown" : "skipped";
}

bool fromText(std::string_view text, RepeatAnswer& answer)
{
    for (const RepeatAnswer each : {RepeatAnswer::Sown, RepeatAnswer::Skipped}) {
        if (text == toText(each)) {
            answer = each;
            return true;
        }
    }
    return false;
}

int weekdayOf(Date day)
{
    constexpr int kWeekdayOfDayZero = 3; // 1 January 1970 was a Thursday
    const int shifted = (day.days % 7 + 7 + kWeekdayOfDayZero) % 7;
    return shifted;
}

Done checkRepeat(const Repeat& repeat)
{
    if (repeat.trays < 1 || repeat.trays > kMostTraysAtOnce) {
        return fail(ErrorKind::Invalid, WeekReason::TraysBeyond, kMostTraysAtOnce);
    }
    const bool hasWeekdays = repeat.weekdays && (*repeat.weekdays & kEveryWeekday) != 0;
    if (hasWeekdays == repeat.everyDays.has_value()) {
        return fail(ErrorKind::Missing, WeekReason::RhythmMissing);
    }
    if (repeat.everyDays && (*repeat.everyDays < 1 || *repeat.everyDays > kMostDaysBetween)) {
        return fail(ErrorKind::Invalid, WeekReason::DaysBeyond, kMostDaysBetween);
    }
    if (repeat.until && *repeat.until < repeat.from) {
        return fail(ErrorKind::Invalid, WeekReason::EndsBeforeStart);
    }
    return {};
}

bool isDayOf(const Repeat& repeat, Date day)
{
    if (day < repeat.from || (repeat.until && *repeat.until < day)) {
        return false;
    }
    if (repeat.everyDays) {
        return (day - repeat.from) % *repeat.everyDays == 0;
    }
    return (repeat.weekdays.value_or(0) & weekdayBit(weekdayOf(day))) != 0;
}

const std::set<Date>& answersTo(const std::map<RepeatId, std::set<Date>>& answered, RepeatId repeat)
{
    static const std::set<Date> kNone;
    const auto found = answered.find(repeat);
    return found == answered.end() ? kNone : found->second;
}

std::vector<Date> openDays(const Repeat& repeat, const std::set<Date>& answered, Date today,
                           Date last)
{
    std::vector<Date> days;
    for (Date day = today - kDaysLate; day <= last; day = day + 1) {
        if (!isDayOf(repeat, day)) {
            continue;
        }
        if (day <= today) {
            days.clear(); // the newer one is proposed instead of it
        }
        if (!answered.contains(day)) {
            days.push_back(day);
        }
    }
    return days;
}

} // namespace plumule
