#include "core/review/comparison/media_groups.h"

#include "core/review/comparison/pair_conversion.h"

#include <algorithm>

namespace plumule {
namespace {

std::string groupOf(const SeasonFacts& facts, const Medium& medium, Grouping by)
{
    switch (by) {
    case Grouping::Form:
        return toText(medium.form);
    case Grouping::Nutrients:
        return medium.isNutrientBearing ? "nutrient_bearing" : "inert";
    case Grouping::Reuse:
        return medium.isReusable ? "reusable" : "single_use";
    case Grouping::Own:
        break;
    }
    const auto own = facts.mediumGroups.find(medium.id);
    return own == facts.mediumGroups.end() ? std::string() : own->second;
}

bool isMember(const GroupOfMedia& group, std::size_t medium)
{
    return std::find(group.members.begin(), group.members.end(), medium) != group.members.end();
}

// The fewest sowings that any two of them share.
int sowingsAcross(const std::vector<MediaPair>& pairs, const GroupOfMedia& a, const GroupOfMedia& b)
{
    std::optional<int> fewest;
    for (const MediaPair& pair : pairs) {
        if ((isMember(a, pair.a) && isMember(b, pair.b)) ||
            (isMember(a, pair.b) && isMember(b, pair.a))) {
            fewest = std::min(fewest.value_or(pair.trialsShared), pair.trialsShared);
        }
    }
    return fewest.value_or(0);
}

void takeMean(GroupOfMedia& group, const stats::GroupMean& mean, stats::CellScale scale)
{
    group.mean = mean.value;
    group.areToldApart = mean.areToldApart;
    if (mean.widest && stats::isLog(scale)) {
        group.widestPercent = stats::percentOfLog(*mean.widest);
    } else if (mean.widest && mean.value && *mean.value > 0) {
        group.widestPercent = 100 * *mean.widest / *mean.value;
    }
}

} // namespace

void answerForGroups(SeasonComparison& comparison, const stats::MediaAnswer& answer, double margin)
{
    std::vector<std::vector<std::size_t>> members;
    for (const GroupOfMedia& group : comparison.groups) {
        members.push_back(group.members);
    }
    const stats::GroupAnswer found = stats::groupsOf(answer, members, margin);
    PairContext context;
    context.scale = comparison.scale;
    for (std::size_t i = 0; i < found.groups.size(); ++i) {
        takeMean(comparison.groups[i], found.groups[i], comparison.scale);
        if (found.groups[i].value) {
            context.means[i] = *found.groups[i].value;
        }
    }
    for (const stats::GroupContrast& pair : found.pairs) {
        comparison.groupPairs.push_back(mediaPair(pair, context));
        comparison.groupPairs.back().trialsShared =
            sowingsAcross(comparison.pairs, comparison.groups[pair.a], comparison.groups[pair.b]);
    }
}

std::vector<GroupOfMedia> groupsAmong(const SeasonFacts& facts,
                                      const std::vector<const Medium*>& media,
                                      std::optional<Grouping> by)
{
    std::vector<GroupOfMedia> groups;
    for (std::size_t i = 0; by && i < media.size(); ++i) {
        const std::string name = groupOf(facts, *media[i], *by);
        if (name.empty()) {
            continue;
        }
        auto group = std::find_if(groups.begin(), groups.end(),
                                  [&](const GroupOfMedia& one) { return one.name == name; });
        if (group == groups.end()) {
            group = groups.insert(groups.end(), GroupOfMedia());
            group->name = name;
        }
        group->members.push_back(i);
    }
    return groups;
}

} // namespace plumule
