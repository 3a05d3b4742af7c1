#pragma once

#include "core/week/week.h"

namespace plumule {

class Ledger;

// A repeating sowing as a list shows it.
struct RepeatRow
{
    Repeat repeat;
    std::string variety;
    Medium medium;
    std::optional<Date> next; // day to be answered; none: it has ended, or what it needs is retired
};

// What comes in the next fourteen days, and repeating sowings.
class WeekEntries
{
public:
    explicit WeekEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // From today on.
    [[nodiscard]] Result<Week> week();

    // By first day; those that have ended too.
    [[nodiscard]] Result<std::vector<RepeatRow>> repeats();
    // A new one where its id is not stored. Errors as checkRepeat()'s; NotFound for a variety or
    // medium that is gone.
    Result<Repeat> save(const Repeat& repeat);
    // Proposes nothing from now on; one of which no day was ever answered is taken out. NotFound.
    Done end(RepeatId repeat);

    // Sows what is proposed for that day now, with the soak first where the protocol has one: on
    // the first free places that no trial's plan holds, on clean pieces, from the oldest lot that
    // reaches. One intention together with the answer. NotFound; Conflict for a day
    // that is not to be answered, too few places or pieces; else as TrayEntries::sow().
    Result<std::vector<TrayId>> sow(RepeatId repeat, Date due);
    // Skips that day. Errors likewise.
    Done skip(RepeatId repeat, Date due);

private:
    Ledger& m_ledger;
};

} // namespace plumule
