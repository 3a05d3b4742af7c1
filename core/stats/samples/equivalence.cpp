#include "core/stats/samples/equivalence.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/samples/oneway.h"

#include <algorithm>

namespace plumule::stats {

Result<Equivalence> equivalence(double difference, double se, double df, double lowerMargin,
                                double upperMargin, double alpha)
{
    if (!(lowerMargin < upperMargin)) {
        return fail(ErrorKind::Invalid, "margin");
    }
    if (!(alpha > 0 && alpha < 0.5)) {
        return fail(ErrorKind::Invalid, "alpha");
    }
    const Result<TEstimate> test = tEstimate(difference, se, df, 1 - 2 * alpha);
    if (!test) {
        return tl::unexpected(test.error());
    }
    Equivalence result;
    result.pAboveLower = tUpper((difference - lowerMargin) / se, df);
    result.pBelowUpper = tCdf((difference - upperMargin) / se, df);
    result.p = std::max(result.pAboveLower, result.pBelowUpper);
    result.lower = test->lower;
    result.upper = test->upper;
    result.isWithin = result.p < alpha;
    return result;
}

} // namespace plumule::stats
