#include "core/stats/verdict/group_contrast.h"

#include "core/stats/verdict/answer_frame.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {
namespace {

class GroupsSums
{
public:
    GroupsSums(const MediaAnswer& answer, const std::vector<std::vector<std::size_t>>& groups,
               double margin)
        : m_answer(answer)
        , m_margin(margin)
    {
        for (const std::vector<std::size_t>& group : groups) {
            std::vector<std::size_t>& members = m_groups.emplace_back();
            std::copy_if(group.begin(), group.end(), std::back_inserter(members),
                         [&](std::size_t medium) { return meanOf(medium) != nullptr; });
        }
    }

    [[nodiscard]] GroupAnswer answer() const
    {
        GroupAnswer result;
        for (const std::vector<std::size_t>& members : m_groups) {
            result.groups.push_back(groupOf(members));
        }
        for (std::size_t a = 0; a < m_groups.size(); ++a) {
            for (std::size_t b = a + 1; b < m_groups.size(); ++b) {
                result.pairs.push_back(pairOf(a, b));
            }
        }
        return result;
    }

private:
    // None without trays.
    [[nodiscard]] const MediumMean* meanOf(std::size_t medium) const
    {
        const auto found =
            std::find_if(m_answer.means.begin(), m_answer.means.end(), [&](const MediumMean& mean) {
                return mean.medium == medium && mean.trays > 0;
            });
        return found == m_answer.means.end() ? nullptr : &*found;
    }

    // a over b, whichever is numbered first.
    [[nodiscard]] PairAnswer across(std::size_t a, std::size_t b) const
    {
        for (const PairAnswer& pair : m_answer.pairs) {
            if (pair.a == a && pair.b == b) {
                return pair;
            }
            if (pair.a == b && pair.b == a) {
                return reversed(pair);
            }
        }
        return {};
    }

    [[nodiscard]] GroupMean groupOf(const std::vector<std::size_t>& members) const
    {
        GroupMean group;
        double sum = 0;
        for (std::size_t i = 0; i < members.size(); ++i) {
            sum += meanOf(members[i])->onScale.value_or(0);
            for (std::size_t j = i + 1; j < members.size(); ++j) {
                const PairAnswer pair = across(members[i], members[j]);
                if (pair.difference) {
                    group.widest = std::max(group.widest.value_or(0), std::abs(*pair.difference));
                    const auto interval = pair.interval();
                    group.areToldApart |=
                        !pair.why && interval && (interval->lower() > 0 || interval->upper() < 0);
                }
            }
        }
        if (!members.empty()) {
            group.onScale = sum / static_cast<double>(members.size());
            group.value = isLog(m_answer.scale) ? std::exp(*group.onScale) : *group.onScale;
        }
        return group;
    }

    [[nodiscard]] GroupContrast pairOf(std::size_t a, std::size_t b) const
    {
        GroupContrast result;
        result.a = a;
        result.b = b;
        if (m_groups[a].empty() || m_groups[b].empty()) {
            result.why = NoVerdictReason::NothingHarvested;
            return result;
        }
        double difference = 0;
        double halfWidth = 0;
        bool hasAllDifferences = true;
        bool hasAllIntervals = true;
        for (const std::size_t ofA : m_groups[a]) {
            for (const std::size_t ofB : m_groups[b]) {
                const PairAnswer pair = across(ofA, ofB);
                difference += pair.difference.value_or(0);
                halfWidth += pair.halfWidth.value_or(0);
                hasAllDifferences = hasAllDifferences && pair.difference;
                hasAllIntervals = hasAllIntervals && pair.halfWidth;
                takeReason(result, pair);
            }
        }
        const auto pairs = static_cast<double>(m_groups[a].size() * m_groups[b].size());
        if (hasAllDifferences) {
            result.difference = difference / pairs;
        }
        if (hasAllIntervals) {
            result.halfWidth = halfWidth / pairs;
        }
        if (!result.why) {
            result.verdict = verdictOf(*result.interval(), m_margin);
        }
        return result;
    }

    static void takeReason(GroupContrast& group, const PairAnswer& pair)
    {
        if (pair.why && !group.why) {
            group.why = pair.why;
            group.verdict = pair.verdict;
        }
    }

    const MediaAnswer& m_answer;
    double m_margin;
    std::vector<std::vector<std::size_t>> m_groups;
};

} // namespace

std::optional<Interval> GroupContrast::interval() const
{
    return difference && halfWidth ? std::optional(Interval{*difference, *halfWidth})
                                   : std::nullopt;
}

GroupAnswer groupsOf(const MediaAnswer& answer, const std::vector<std::vector<std::size_t>>& groups,
                     double margin)
{
    return GroupsSums(answer, groups, margin).answer();
}

} // namespace plumule::stats
