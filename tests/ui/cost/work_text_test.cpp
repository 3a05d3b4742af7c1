#include "ui/cost/work_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(WorkText, TellsHowLongAsPeopleDo)
{
    EXPECT_EQ(durationText(45), "45 s");
    EXPECT_EQ(durationText(60), "1 min");
    EXPECT_EQ(durationText(3599), "59 min");
    EXPECT_EQ(durationText(3900), "1 h 05 min");
    EXPECT_EQ(minutesText(47), "0.78 min");
}

TEST(WorkText, NamesTheDayOnlyOfAnother)
{
    WorkTime work;
    work.on = date(2026, 11, 27);
    work.minute = 430;
    EXPECT_EQ(begunText(work, date(2026, 11, 27)), "07:10");
    EXPECT_EQ(begunText(work, date(2026, 11, 28)), "27 Nov, 07:10");
}

TEST(WorkText, SaysOnHowMuchAMeanRests)
{
    const QString words = measuredText({LabourKind::Watering, 3, 2700, 60});
    EXPECT_TRUE(words.contains("0.75 min")) << words.toStdString();
    EXPECT_TRUE(words.contains("3 timing"));
    EXPECT_TRUE(words.contains("60 time"));
}

} // namespace
} // namespace plumule::ui
