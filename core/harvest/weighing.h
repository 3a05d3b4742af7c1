#pragma once

#include "core/harvest/expected_range.h"
#include "core/harvest/harvest.h"

#include <set>

namespace plumule {

// What stands on the scale.
enum class Weighing
{
    Cut,
    Residue
};

// Why a weighing is asked about before it is recorded. The grower may accept any of them.
enum class Doubt
{
    DecimalSlip, // ten or a hundred times what is expected, or a part of it; in place of the next
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
    bool operator==(const BowlDraft&) const = default;
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

// A cut that was weighed as it ought to be: what isn't changed is given as it was.
struct CutCorrection
{
    HarvestId cut;
    std::vector<BowlDraft> bowls;
    bool isLast = true;
    std::set<Doubt> accepted;
};

// What is known of a tray when a weight comes in.
struct WeighingFacts
{
    ExpectedRange expected; // of this cut, from cuts of the same number; or of the residue
    bool isWeighedAlready = false;
    bool isInTheDark = false;
    std::vector<Mass> lastTares; // of the bowls before this one
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

// A tray as the scale page shows it.
struct TrayAtScale
{
    TrayRecord record;
    std::optional<Spot> spot;
    int day = 1;
    std::optional<int> lastDay;  // that its harvest is due on, by the same count
    std::optional<int> pieceUse; // this tray is that many-th use of its piece
    std::vector<Harvest> cuts;
    std::vector<Residue> residues;
    int cut = 1; // the number of the cut that is weighed
    WeighingFacts facts;
    std::optional<TrialSoFar> trial;
};

// A cut that was weighed, put on the scale again to be corrected. Its own weight is not among what
// it is held against.
struct CutAtScale
{
    TrayAtScale tray;
    Harvest harvest;
    std::vector<Bowl> bowls;
};

} // namespace plumule
