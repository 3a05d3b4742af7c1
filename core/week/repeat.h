#pragma once

#include "core/medium/medium.h"
#include "core/variety/variety.h"

namespace plumule {

struct RepeatTag;
struct RepeatDayTag;
using RepeatId = Id<RepeatTag>;
using RepeatDayId = Id<RepeatDayTag>;

// A repeating sowing: "radish on coir, 4 trays, every Tuesday". It proposes; nothing is sown by
// itself. Its days are days of sowing, also where a soak comes before.
struct Repeat
{
    RepeatId id;
    VarietyId variety;
    MediumId medium;
    int trays = 1;
    // One of the two is given: weekdays as a sum of weekdayBit(), or every so many days from the
    // first day on.
    std::optional<int> weekdays;
    std::optional<int> everyDays;
    Date from;
    std::optional<Date> until; // the last day that may be one of its days
    bool operator==(const Repeat&) const = default;
};

// What was answered to one of its days.
enum class RepeatAnswer
{
    Sown,
    Skipped
};
[[nodiscard]] const char* toText(RepeatAnswer answer); // sown, skipped
bool fromText(std::string_view text, RepeatAnswer& answer);

struct RepeatDay
{
    RepeatDayId id;
    RepeatId repeat;
    Date on; // the day of the rhythm, whenever the trays were sown
    RepeatAnswer answer = RepeatAnswer::Sown;
    bool operator==(const RepeatDay&) const = default;
};

} // namespace plumule
