#pragma once

#include "core/base/date.h"
#include "core/exchange/table_form.h"

namespace plumule {

// A day's three numbers as they stand, and which orders they may be in: the one that fits, or
// Unclear where the day may be the month.
struct DayParts
{
    int first = 0;
    int second = 0;
    int third = 0;
    DateOrder order = DateOrder::Unclear;
};

// "2026-03-12", "12.3.2026", "3/12/2026": a year of four figures first or last. None otherwise.
// With points the day stands first, as wherever days are written so.
[[nodiscard]] std::optional<DayParts> dayPartsIn(std::string_view text);

// Reads a day in that order; one with its year first, or that fits one order only, needs none.
// Invalid, Ambiguous.
[[nodiscard]] Result<Date> dayFromText(std::string_view text, DateOrder order);

} // namespace plumule
