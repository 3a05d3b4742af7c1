#include "core/sample/sample_repeats.h"

#include "core/week/repeat_repository.h"
#include "core/week/repeat_rules.h"

namespace plumule {

void storeSampleRepeats(Database& database, SampleTables& tables, const SampleStock& stock)
{
    RepeatRepository repeats(database);
    tables.forEach("repeats", [&](const SampleRow& row) {
        Repeat repeat;
        repeat.variety = row.found(stock.protocols, "variety").variety.id;
        repeat.medium = row.found(stock.media, "medium").id;
        repeat.trays = row.whole("trays");
        repeat.from = row.day("from_day");
        repeat.everyDays = row.maybeWhole("every_days");
        if (!repeat.everyDays) {
            repeat.weekdays = weekdayBit(weekdayOf(repeat.from));
        }
        if (!checkRepeat(repeat)) {
            row.refuse("trays");
            return;
        }
        repeats.insert(repeat);
    });
}

} // namespace plumule
