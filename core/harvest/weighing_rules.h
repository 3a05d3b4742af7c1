#pragma once

#include "core/harvest/weighing.h"

namespace plumule {

// A weight typed without its decimal point, with it in the wrong place, or read in the other unit
// than the scale's: the bowl it is in, what was likely meant, and the net with it.
struct Slip
{
    std::size_t bowl = 0;
    Mass gross;
    Mass net;
    bool operator==(const Slip&) const = default;
};

// A bowl whose gross, over or times ten, else the grams of an ounce, else a hundred, brings a net
// that is far off into the expected range, and at least twice as near to its middle; the one
// nearest it. None where the net is as expected.
[[nodiscard]] std::optional<Slip> slipIn(const std::vector<BowlDraft>& bowls,
                                         const ExpectedRange& expected);

// The doubts in the order of the enum.
[[nodiscard]] std::vector<Doubt> doubtsAbout(const std::vector<BowlDraft>& bowls,
                                             const WeighingFacts& facts);

// Those that are not accepted, in the same order.
[[nodiscard]] std::vector<Doubt> openDoubts(std::vector<Doubt> doubts,
                                            const std::set<Doubt>& accepted);

// Whether the bowls weigh what was stored of them: nothing then is doubted anew.
[[nodiscard]] bool isAsStored(const std::vector<BowlDraft>& bowls, const std::vector<Bowl>& stored);

// Missing bowls; Invalid: a negative tare, a gross beyond 50 kg, a net of nothing or less.
[[nodiscard]] Done checkBowls(const std::vector<BowlDraft>& bowls);

[[nodiscard]] Mass netOf(const std::vector<BowlDraft>& bowls);

// Whether light is still ahead of this tray.
[[nodiscard]] bool isBeforeLight(const std::vector<TrayStage>& stages);

// Still to cut on that day: the harvest is due by then and no cut was made since it fell due.
[[nodiscard]] bool isCutDue(Moment harvestDue, const std::vector<Harvest>& cuts, Date on);

} // namespace plumule
