#pragma once

#include "core/tray/tray.h"
#include "core/trial/trial.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace plumule {

struct HarvestTag;
struct BowlTag;
struct ResidueTag;
using HarvestId = Id<HarvestTag>;
using BowlId = Id<BowlTag>;
using ResidueId = Id<ResidueTag>;

// One cut of one tray. A tray's yield is the sum of its cuts.
struct Harvest
{
    HarvestId id;
    TrayId tray;
    int cut = 1;
    Date on;
    int minute = 0;
    Mass net;
    bool isLast = true; // else it is cut again later
    std::string note;
    bool operator==(const Harvest&) const = default;
};

// One bowl on the scale.
struct Bowl
{
    BowlId id;
    HarvestId harvest;
    Mass gross;
    Mass tare;
    bool operator==(const Bowl&) const = default;

    [[nodiscard]] Mass net() const { return gross - tare; }
};

// What is left in the tray after cutting, weighed wet.
struct Residue
{
    ResidueId id;
    TrayId tray;
    Date on;
    int minute = 0;
    std::optional<Mass> gross;
    std::optional<Mass> tare;
    Mass net;
    bool operator==(const Residue&) const = default;
};

// What this tray should weigh, from the journal's own harvested trays.
struct ExpectedRange
{
    int trays = 0; // of that variety on that medium; no range under 3
    std::optional<Mass> low;
    std::optional<Mass> high;
};

// Mean ± t·s·√(1 + 1/n): the 95 % prediction interval of one more tray (e.g. NIST/SEMATECH
// e-Handbook, prediction intervals), never below 0. No range under three yields.
[[nodiscard]] ExpectedRange expectedRange(const std::vector<Mass>& yields);

// Why a weighing is asked about before it is recorded. The grower may accept any of them.
enum class Doubt
{
    OutsideExpected,
    AlreadyWeighed, // this tray's last cut, or a residue
    UnstableReading,
    TareForgotten, // tare 0 though the last weighings had one
    NotDueYet      // still in the dark
};

[[nodiscard]] const char* toText(Doubt doubt); // outside_expected, already_weighed, …

struct BowlDraft
{
    Mass gross;
    Mass tare;
    bool isStable = true;
    bool isTaredByScale = false; // the scale sent a net weight, so that tare 0 is no slip
};

// A weighing as typed. Refused whatever is accepted: no bowl, net ≤ 0, an unknown or discarded
// tray.
struct WeighingDraft
{
    TrayId tray;
    std::vector<BowlDraft> bowls;
    Moment at;
    bool isLast = true; // false: "cut again later"
    std::string note;
    std::set<Doubt> accepted;

    [[nodiscard]] Mass net() const;
};

// A tray as the scale page shows it.
struct TrayAtScale
{
    TrayRecord record;
    int day = 1;
    std::optional<int> pieceUse; // this tray is that many-th use of its piece
    std::vector<Harvest> cuts;
    std::vector<Residue> residues;
    ExpectedRange expected; // of a whole tray's yield
    bool isInTheDark = false;
};

struct WeighedRow
{
    Harvest harvest;
    std::string code;
    Medium medium;
    std::string variety;
    std::optional<Mass> seed;
};

struct DueRow
{
    TrayId tray;
    std::string code;
    std::optional<Spot> spot;
    Medium medium;
    std::string variety;
    Moment due;
};

// A trial's yields so far, a dot a tray.
struct TrialSoFar
{
    Trial trial;
    struct Dot
    {
        TrayId tray;
        std::string code;
        Medium medium;
        std::optional<Mass> yield; // none: still to weigh
        std::optional<int> block;
    };
    std::vector<Dot> dots;
};

// The weigh-in page: what is still to cut and weigh that day, and what was weighed.
struct WeighIn
{
    Date date;
    std::vector<DueRow> due;      // by walking order; overdue ones included
    std::vector<WeighedRow> done; // that day, newest first
    std::optional<Mass> lastTare; // of the last bowl that was weighed
};

} // namespace plumule
