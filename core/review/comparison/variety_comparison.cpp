#include "core/review/comparison/variety_comparison.h"

#include <algorithm>

namespace plumule {
namespace {

bool isGrownAlone(const SeasonComparison& whole, const std::string& variety)
{
    return std::all_of(whole.sowings.begin(), whole.sowings.end(), [&](const Sowing& sowing) {
        return sowing.varieties == std::vector{variety};
    });
}

// The part's pair of the same two media; media are numbered otherwise in it.
const MediaPair* pairIn(const std::vector<MediaPair>& pairs, const SeasonComparison& whole,
                        MediumId a, MediumId b)
{
    const auto found = std::find_if(pairs.begin(), pairs.end(), [&](const MediaPair& pair) {
        const MediumId first = whole.means[pair.a].medium.id;
        const MediumId second = whole.means[pair.b].medium.id;
        return std::minmax(first, second) == std::minmax(a, b);
    });
    return found == pairs.end() ? nullptr : &*found;
}

void takePair(MediaPair& shown, const MediaPair& found, const SeasonComparison& whole,
              const SeasonComparison& alone)
{
    const std::pair numbers(shown.a, shown.b);
    const bool isSameWay = whole.means[found.a].medium.id == alone.means[numbers.first].medium.id;
    shown = found;
    shown.a = isSameWay ? numbers.first : numbers.second;
    shown.b = isSameWay ? numbers.second : numbers.first;
}

} // namespace

SeasonComparison ofOneVariety(const SeasonComparison& whole, SeasonComparison alone,
                              VarietyId variety, const std::string& name)
{
    if (isGrownAlone(whole, name)) {
        SeasonComparison same = whole;
        same.variety = variety;
        same.varietyName = name;
        return same;
    }
    alone.series = whole.series;
    alone.scope = whole.scope;
    alone.level = whole.level;
    alone.gate = whole.gate;
    alone.variety = variety;
    alone.varietyName = name;
    const auto part = std::find_if(whole.byVariety.begin(), whole.byVariety.end(),
                                   [&](const VarietyPart& one) { return one.id == variety; });
    for (MediaPair& pair : alone.pairs) {
        const MediaPair* found = part == whole.byVariety.end()
                                     ? nullptr
                                     : pairIn(part->pairs, whole, alone.means[pair.a].medium.id,
                                              alone.means[pair.b].medium.id);
        if (found != nullptr) {
            takePair(pair, *found, whole, alone);
        } else if (pair.why == stats::NoVerdictReason::Filtered) {
            pair.why = stats::NoVerdictReason::FewSowings;
        }
    }
    return alone;
}

} // namespace plumule
