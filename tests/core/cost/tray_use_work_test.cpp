#include "core/cost/tray_use.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Seconds of each task, so unlike that no two sums of them are the same.
std::vector<LabourTask> allTasks()
{
    return {{{1}, LabourKind::Sowing, 1},        {{2}, LabourKind::Watering, 10},
            {{3}, LabourKind::StageMove, 100},   {{4}, LabourKind::Harvesting, 1000},
            {{5}, LabourKind::Packing, 10'000},  {{6}, LabourKind::ClearingOut, 100'000},
            {{7}, LabourKind::PieceWashing, 120}};
}

std::vector<LabourTask> without(LabourKind kind)
{
    std::vector<LabourTask> tasks = allTasks();
    std::erase_if(tasks, [&](const LabourTask& task) { return task.kind == kind; });
    return tasks;
}

// Watered seven times, moved twice, cut three times.
TrayUse harvestedTray(const Medium& medium)
{
    TrayUse use;
    use.medium = &medium;
    use.waterings = 7;
    use.stageMoves = 2;
    use.cuts = 3;
    use.isHarvested = true;
    use.hasEnded = true;
    return use;
}

TEST(TrayUseWork, IsEachTaskAsOftenAsItWasDone)
{
    const Medium mix;
    EXPECT_DOUBLE_EQ(tendingMinutes(harvestedTray(mix), allTasks()).value(), 113'271.0 / 60);
    TrayUse grows = harvestedTray(mix);
    grows.isHarvested = false;
    grows.hasEnded = false;
    grows.cuts = 1;
    EXPECT_DOUBLE_EQ(tendingMinutes(grows, allTasks()).value(), 1271.0 / 60);
    TrayUse discarded = harvestedTray(mix);
    discarded.isHarvested = false;
    discarded.cuts = 0;
    EXPECT_DOUBLE_EQ(tendingMinutes(discarded, allTasks()).value(), 100'271.0 / 60)
        << "cleared out, not packed";
}

TEST(TrayUseWork, IsUnknownWhereATaskThatWasDoneHasNoMinutes)
{
    const Medium mix;
    for (const LabourKind kind :
         {LabourKind::Sowing, LabourKind::Watering, LabourKind::StageMove, LabourKind::Harvesting,
          LabourKind::Packing, LabourKind::ClearingOut}) {
        EXPECT_FALSE(tendingMinutes(harvestedTray(mix), without(kind))) << toText(kind);
    }
    EXPECT_TRUE(tendingMinutes(harvestedTray(mix), without(LabourKind::PieceWashing)));
}

TEST(TrayUseWork, IsKnownWhereATaskWithoutMinutesWasNotDone)
{
    const Medium mix;
    TrayUse use = harvestedTray(mix);
    use.stageMoves = 0;
    EXPECT_DOUBLE_EQ(tendingMinutes(use, without(LabourKind::StageMove)).value(), 113'071.0 / 60);
}

TEST(TrayUseWork, IsUnknownWhereNobodyKnowsHowOftenUnlessItTakesNoTime)
{
    const Medium mix;
    TrayUse use = harvestedTray(mix);
    use.waterings.reset();
    EXPECT_FALSE(tendingMinutes(use, allTasks()));
    std::vector<LabourTask> byItself = allTasks();
    byItself[1].seconds = 0; // watered by a timer
    EXPECT_DOUBLE_EQ(tendingMinutes(use, byItself).value(), 113'201.0 / 60);
}

TEST(TrayUseWork, WashingIsOfReusableMediaAlone)
{
    Medium mesh;
    mesh.isReusable = true;
    const Medium mix;
    EXPECT_EQ(washingMinutes(mix, {}), 0.0);
    EXPECT_EQ(washingMinutes(mesh, allTasks()), 2.0);
    EXPECT_EQ(washingMinutes(mesh, without(LabourKind::PieceWashing)), std::nullopt);
    EXPECT_DOUBLE_EQ(workMinutes(harvestedTray(mesh), allTasks()).value(), 113'391.0 / 60);
    EXPECT_DOUBLE_EQ(workMinutes(harvestedTray(mix), allTasks()).value(), 113'271.0 / 60);
    EXPECT_FALSE(workMinutes(harvestedTray(mesh), without(LabourKind::PieceWashing)));
    EXPECT_FALSE(workMinutes(harvestedTray(mix), {}));
}

} // namespace
} // namespace plumule
