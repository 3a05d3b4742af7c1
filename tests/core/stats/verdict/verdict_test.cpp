#include "core/stats/verdict/verdict.h"

#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

TEST(VerdictOfAPair, FollowsTheIntervalAndTheMargin)
{
    struct Row
    {
        Interval interval;
        Verdict verdict;
    };
    const Row rows[] = {
        {{0.20, 0.10}, Verdict::More},
        {{-0.20, 0.10}, Verdict::Less},
        {{0.06, 0.05}, Verdict::More}, // reaches beyond the margin
        {{0.00, 0.05}, Verdict::SameWithinMargin},
        {{0.04, 0.05}, Verdict::SameWithinMargin},
        {{0.05, 0.04}, Verdict::RealButTooSmall},
        {{-0.05, 0.04}, Verdict::RealButTooSmall},
        {{0.05, 0.06}, Verdict::CantTellYet},
        {{0.10, 0.30}, Verdict::CantTellYet},
        {{0.05, 0.05},
         Verdict::CantTellYet}, // ends on the margin: not within, ends on 0: not clear
    };
    for (const Row& row : rows) {
        EXPECT_EQ(verdictOf(row.interval, 0.1), row.verdict)
            << row.interval.difference << " ± " << row.interval.halfWidth;
    }
}

TEST(VerdictOfAPair, HasItsMarginAlikeEitherWayOnLogs)
{
    EXPECT_NEAR(percentOfLog(logMargin(10)), 10, 1e-12);
    EXPECT_NEAR(percentOfLog(-logMargin(10)), -100.0 / 11, 1e-12);
}

} // namespace
} // namespace plumule::stats
