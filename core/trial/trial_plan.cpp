#include "core/trial/trial_plan.h"

#include "core/base/capped.h"
#include "core/base/enum_text.h"

#include <algorithm>
#include <limits>

namespace plumule {

const char* toText(Design design)
{
    switch (design) {
    case Design::CompletelyRandom:
        return "completely_random";
    case Design::RandomizedBlocks:
        return "randomized_blocks";
    case Design::LatinSquare:
        return "latin_square";
    }
    return "";
}

bool fromText(std::string_view text, Design& design)
{
    return matchText(
        text, std::array{Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare},
        design);
}

bool TrialDraft::isSown() const
{
    return std::any_of(trays.begin(), trays.end(),
                       [](const PlannedTray& tray) { return tray.tray.has_value(); });
}

int TrialDraft::count() const
{
    const std::int64_t all =
        cappedProduct(static_cast<std::int64_t>(treatments.size()), plan.traysEach);
    return static_cast<int>(std::clamp<std::int64_t>(all, 0, std::numeric_limits<int>::max()));
}

} // namespace plumule
