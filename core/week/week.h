#pragma once

#include "core/tray/damaged_trays.h"
#include "core/trial/preparation.h"
#include "core/trial/trial_plan.h"
#include "core/week/repeat.h"
#include "core/week/tray_ahead.h"

#include <functional>
#include <map>
#include <set>

namespace plumule {

inline constexpr int kWeekDays = 14;
// Seed and pieces are asked for this long before they run short: our own measure.
inline constexpr int kDaysToDeliver = 7;

// Trays of one sowing that are cut on one day.
struct CutLot
{
    VarietyId variety;
    MediumId medium;
    Date sownOn;
    int trays = 0;
    bool operator==(const CutLot&) const = default;
};

// What they come to, with the interval that 8 in 10 fall into.
struct ExpectedGrams
{
    Mass low;
    Mass mean;
    Mass high;
    bool operator==(const ExpectedGrams&) const = default;
};

// Foretells the sum over all of these; none where it can't be told.
using Forecaster = std::function<std::optional<ExpectedGrams>(const std::vector<CutLot>&)>;

// One line of a day: a task and what it is done with.
struct WeekEntry
{
    WeekTask task = WeekTask::Sow;
    SupplyKind supply = SupplyKind::Seed; // of an order: seed or pieces
    std::int64_t subject = 0;             // the id of the variety; of the medium, of pieces
    std::string name;                     // of the variety; of the medium, of pieces
    Slot slot = Slot::Morning;
    int count = 0;                    // trays or pieces, those proposed included
    int proposed = 0;                 // of them: by repeating sowings
    std::vector<std::string> codes;   // of growing trays
    std::vector<std::string> shelves; // where those stand, rack and shelf
    std::vector<std::string> trials;  // whose plans they are sown by
    int furtherCuts = 0;              // cuts of trays that were cut before
    bool operator==(const WeekEntry&) const = default;
};

struct WeekDay
{
    Date on;
    std::vector<WeekEntry> entries; // by task, then name
    std::vector<CutLot> cuts;       // first cuts alone: those can be foretold
    std::optional<ExpectedGrams> expected;
    int freePlaces = 0; // in the evening, with all that is planned and proposed
    bool operator==(const WeekDay&) const = default;

    [[nodiscard]] std::vector<const WeekEntry*> of(WeekTask task) const;
};

// Why a proposal does not stand on its own day.
enum class ProposalShift
{
    None,
    Late,     // its day was let pass
    Soak,     // its seed has to soak first
    Places,   // too few are free on the days before
    Pieces,   // likewise
    NoPlaces, // not within kWeekDays days: it stands nowhere
    NoPieces
};
[[nodiscard]] const char* toText(ProposalShift shift);

// A day of a repeating sowing that is to be answered.
struct Proposal
{
    RepeatId repeat;
    Date due; // the day of its rhythm
    std::string variety;
    Medium medium;
    int trays = 0;
    ProposalShift shift = ProposalShift::None;
    Moment sowAt;
    std::optional<Moment> soakAt;
    Date cutOn;
    int freeOnDue = 0;  // places through its growth, were it sown on its day
    int freePlaces = 0; // likewise on the day it stands on
    std::optional<Mass> seedNeeded;
    std::optional<Mass> seedLeft; // on the day, before it; none: not known
    bool operator==(const Proposal&) const = default;

    [[nodiscard]] bool standsNowhere() const
    {
        return shift == ProposalShift::NoPlaces || shift == ProposalShift::NoPieces;
    }
    // What can be done for it now: to soak or to sow.
    [[nodiscard]] Date beginsOn() const { return soakAt ? soakAt->date : sowAt.date; }
};

// What comes in the next fourteen days.
struct Week
{
    Date from;
    std::vector<WeekDay> days;
    std::vector<Proposal> proposals;       // by day
    std::optional<ExpectedGrams> expected; // of all days: not the sum of their intervals' ends
    std::vector<DamagedTray> damaged;      // what it does without

    // Over all days; of orders, how many things.
    [[nodiscard]] int total(WeekTask task) const;
};

// Everything a week is worked out from.
struct WeekFacts
{
    Moment now;
    RoomLayout layout;
    std::vector<TrayRecord> growing;
    std::map<TrayId, std::vector<Moment>> cuts; // of trays that were cut and grow on
    std::vector<TrialDraft> plans;              // of trials that are not sown
    std::vector<Repeat> repeats;
    std::map<RepeatId, std::set<Date>> answered;
    std::map<VarietyId, Protocol> protocols;
    std::map<MediumId, Medium> media;
    std::vector<PieceRecord> pieces; // in use
    std::vector<SeedLotStock> seed;  // likewise
    Forecaster forecaster;           // may be empty
};

// Works the week out. Growing trays come first, then trials' plans, then repeating sowings by their
// days: each of them keeps its places through its growth, a place being free again on the day of
// the cut (of trays that stand now, from tomorrow on). A repeating sowing that finds too few goes
// to the first day that has them. Of a variety or medium that is retired nothing is proposed.
[[nodiscard]] Week weekFrom(const WeekFacts& facts);

} // namespace plumule
