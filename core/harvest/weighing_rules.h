#pragma once

#include "core/harvest/harvest.h"

namespace plumule {

// What is known of a tray when a weight comes in.
struct WeighingFacts
{
    ExpectedRange expected; // of the whole tray's yield
    Mass cutBefore;         // sum of the tray's cuts so far
    bool isLastCutWeighed = false;
    bool isResidueWeighed = false;
    bool isInTheDark = false;
    std::vector<Mass> lastTares; // of the bowls before this one
};

// The doubts in the order of the enum. The tray's cuts so far and this one together are held
// against the expected range, which has no lower end while more cuts are to come; residues have no
// range.
[[nodiscard]] std::vector<Doubt> doubtsAbout(const WeighingDraft& draft, const WeighingFacts& facts,
                                             bool isResidue);

// The first doubt that the draft has not accepted.
[[nodiscard]] std::optional<Doubt> firstOpenDoubt(const WeighingDraft& draft,
                                                  const std::vector<Doubt>& doubts);

// Missing bowls; Invalid: a negative tare, a gross beyond 50 kg, a net of nothing or less.
[[nodiscard]] Done checkBowls(const std::vector<BowlDraft>& bowls);

[[nodiscard]] Mass netOf(const std::vector<BowlDraft>& bowls);

// Whether light is still ahead of this tray.
[[nodiscard]] bool isBeforeLight(const std::vector<TrayStage>& stages);

// Still to cut on that day: the harvest is due by then and no cut was made since it fell due.
[[nodiscard]] bool isCutDue(Moment harvestDue, const std::vector<Harvest>& cuts, Date on);

} // namespace plumule
