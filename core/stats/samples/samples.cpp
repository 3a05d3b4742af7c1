#include "core/stats/samples/samples.h"

#include "core/stats/probability/plain_checks.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

struct Moments
{
    double mean = 0;
    double squares = 0;
};

// Two passes, the second correcting what rounding left in the first.
Moments momentsOf(std::span<const double> values, double shift)
{
    const auto n = static_cast<long double>(values.size());
    long double sum = 0;
    for (const double x : values) {
        sum += x - shift;
    }
    const long double mean = sum / n;
    long double squares = 0;
    long double left = 0;
    for (const double x : values) {
        const long double off = x - shift - mean;
        squares += off * off;
        left += off;
    }
    return {static_cast<double>(mean), static_cast<double>(squares - left * left / n)};
}

} // namespace

double medianOf(std::span<const double> values)
{
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    const std::size_t half = sorted.size() / 2;
    return sorted.size() % 2 == 1 ? sorted[half]
                                  : sorted[half - 1] + (sorted[half] - sorted[half - 1]) / 2;
}

bool haveNoSpread(Groups groups)
{
    return std::all_of(groups.begin(), groups.end(),
                       [](const std::vector<double>& group) { return allAlike(group); });
}

Result<GroupSummary> summarize(std::span<const double> values)
{
    if (values.empty()) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewValues);
    }
    if (!allFinite(values)) {
        return fail(ErrorKind::Invalid, GroupsReason::NotFinite);
    }
    GroupSummary summary;
    summary.n = values.size();
    const double shift = values.front();
    const Moments moments = momentsOf(values, shift);
    summary.mean = shift + moments.mean;
    if (values.size() > 1) {
        summary.sd = allAlike(values)
                         ? 0
                         : std::sqrt(moments.squares / (static_cast<double>(values.size()) - 1));
    }
    return summary;
}

Result<GroupSums> sumGroups(Groups groups)
{
    if (groups.size() < 2) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewGroups);
    }
    std::vector<double> all;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        if (groups[g].empty()) {
            return fail(ErrorKind::TooFew, GroupsReason::EmptyGroup, g + 1);
        }
        all.insert(all.end(), groups[g].begin(), groups[g].end());
    }
    if (!allFinite(all)) {
        return fail(ErrorKind::Invalid, GroupsReason::NotFinite);
    }
    // A middle value that is itself in the data: subtracting it is exact for its neighbours.
    const auto middle = all.begin() + static_cast<std::ptrdiff_t>(all.size() / 2);
    std::nth_element(all.begin(), middle, all.end());
    const double shift = *middle;

    GroupSums sums;
    sums.total = all.size();
    const double grand = momentsOf(all, shift).mean;
    for (const auto& group : groups) {
        const Moments moments = momentsOf(group, shift);
        const double squares = allAlike(group) ? 0 : moments.squares;
        sums.n.push_back(group.size());
        sums.meanLessShift.push_back(moments.mean);
        sums.squares.push_back(squares);
        sums.within += squares;
        const double off = moments.mean - grand;
        sums.between += static_cast<double>(group.size()) * off * off;
    }
    return sums;
}

} // namespace plumule::stats
