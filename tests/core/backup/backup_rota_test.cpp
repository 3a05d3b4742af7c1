#include "core/backup/backup_rota.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::Each;
using testing::ElementsAre;
using testing::SizeIs;

std::vector<Moment> dailyFrom(Date first, int days)
{
    std::vector<Moment> moments;
    for (int i = 0; i < days; ++i) {
        moments.push_back({first + i, 7 * 60});
    }
    return moments;
}

// Counted by hand on the calendar of 2025 and 2026: 28 Nov 2026 is a Saturday.
TEST(BackupRota, KeepsFourteenDaysEightWeeksAndTwelveMonthsOfTwoYears)
{
    const Date today = date(2026, 11, 28);
    const auto kept = backupsToKeep(dailyFrom(today - 729, 730));
    std::vector<Date> expected;
    for (int i = 0; i < 14; ++i) {
        expected.push_back(today -
                           i); // 28 to 15 Nov; the weeks that end on 22 and 15 are among them
    }
    for (const auto& [month, day] : {std::pair{11U, 8U},
                                     {11U, 1U},
                                     {10U, 31U},
                                     {10U, 25U},
                                     {10U, 18U},
                                     {10U, 11U},
                                     {9U, 30U},
                                     {8U, 31U},
                                     {7U, 31U},
                                     {6U, 30U},
                                     {5U, 31U},
                                     {4U, 30U},
                                     {3U, 31U},
                                     {2U, 28U},
                                     {1U, 31U}}) {
        expected.push_back(date(2026, month, day));
    }
    expected.push_back(date(2025, 12, 31));
    std::vector<Date> days;
    for (const Moment& at : kept) {
        days.push_back(at.date);
    }
    EXPECT_EQ(days, expected);
}

TEST(BackupRota, KeepsTheNewestOfADay)
{
    const Date day = date(2026, 3, 12);
    EXPECT_THAT(backupsToKeep({{day, 420}, {day, 1080}, {day, 600}}),
                ElementsAre(Moment{day, 1080}));
}

TEST(BackupRota, LetsNothingGoWhileARoomStandsEmpty)
{
    const auto before = dailyFrom(date(2025, 10, 1), 14);
    EXPECT_THAT(backupsToKeep(before), SizeIs(14));
    auto after = before;
    after.push_back({date(2026, 3, 1), 400});
    EXPECT_THAT(backupsToKeep(after), SizeIs(14)) << "the oldest day alone goes";
}

TEST(BackupRota, OfNoneIsNone)
{
    EXPECT_TRUE(backupsToKeep({}).empty());
}

// Whatever there is: what was kept once is kept again, and the newest always is.
TEST(BackupRota, IsAtRestAfterItsFirstRun)
{
    std::vector<Moment> moments;
    for (int i = 0; i < 400; ++i) {
        moments.push_back({date(2024, 1, 1) + (i * i) % 997, (i * 37) % kMinutesPerDay});
    }
    const auto once = backupsToKeep(moments);
    EXPECT_EQ(backupsToKeep(once), once);
    EXPECT_EQ(once.front(), *std::max_element(moments.begin(), moments.end()));
}

} // namespace
} // namespace plumule
