#include "core/review/fairness/aspect_counts.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::Pair;

// So many trays of a medium at a level.
void add(std::vector<AspectReading>& readings, AspectReading reading, int trays)
{
    readings.insert(readings.end(), static_cast<std::size_t>(trays), reading);
}

TEST(AspectCounts, MeasureTheDistanceOfShares)
{
    // Three quarters against one quarter at level 1.
    std::vector<AspectReading> readings;
    for (int i = 0; i < 4; ++i) {
        readings.push_back({0, 0, 0, i < 3 ? 1 : 2});
        readings.push_back({0, 0, 1, i < 1 ? 1 : 2});
    }
    const AspectCounts counts(readings);
    const Unlikeness unlike = counts.worstPair(2);
    EXPECT_DOUBLE_EQ(unlike.distance, 0.5);
    EXPECT_EQ(unlike.confounding, Confounding::Partly);
    EXPECT_THAT(counts.fullyIn(2), IsEmpty());
    EXPECT_EQ(counts.levelsOf(0).at(1), 3);
}

TEST(AspectCounts, SayNothingOfMediaThatShareNoStratum)
{
    const AspectCounts counts({{0, 1, 0, 1}, {0, 2, 1, 2}});
    EXPECT_EQ(counts.worstPair(2).confounding, Confounding::Alike);
}

TEST(AspectCounts, APartOfATenthIsAlike)
{
    // 9 of 10 and 8 of 10 at level 1: a tenth apart. Then 9 and 7.
    for (const int second : {8, 7}) {
        std::vector<AspectReading> readings;
        add(readings, {0, 0, 0, 1}, 9);
        add(readings, {0, 0, 0, 2}, 1);
        add(readings, {0, 0, 1, 1}, second);
        add(readings, {0, 0, 1, 2}, 10 - second);
        const Unlikeness unlike = AspectCounts(readings).worstPair(2);
        EXPECT_NEAR(unlike.distance, (9 - second) / 10.0, 1e-12);
        EXPECT_EQ(unlike.confounding, second == 8 ? Confounding::Alike : Confounding::Partly);
    }
}

TEST(AspectCounts, AreFullyConfoundedWhereNoLevelIsShared)
{
    std::vector<AspectReading> readings;
    add(readings, {0, 0, 0, 1}, 4);
    add(readings, {0, 0, 1, 2}, 4);
    add(readings, {0, 0, 2, 1}, 2);
    add(readings, {0, 0, 2, 2}, 2);
    const AspectCounts counts(readings);
    const Unlikeness worst = counts.worstPair(3);
    EXPECT_EQ(worst.confounding, Confounding::Fully);
    EXPECT_EQ(worst.distance, 1);
    EXPECT_EQ(worst.worst, std::pair(std::size_t{1}, std::size_t{0}));
    EXPECT_THAT(counts.fullyPairs(3), ElementsAre(Pair(0u, 1u)));
}

TEST(AspectCounts, ALevelForEachTrayTellsNothing)
{
    std::vector<AspectReading> readings;
    for (int tray = 0; tray < 4; ++tray) {
        readings.push_back({0, 0, 0, tray});
        readings.push_back({0, 0, 1, 10 + tray});
    }
    EXPECT_EQ(AspectCounts(readings).worstPair(2).confounding, Confounding::Partly);
    // Two levels of four trays each are as many as half of them.
    readings.clear();
    for (int tray = 0; tray < 4; ++tray) {
        readings.push_back({0, 0, 0, tray / 2});
        readings.push_back({0, 0, 1, 10 + tray / 2});
    }
    EXPECT_EQ(AspectCounts(readings).worstPair(2).confounding, Confounding::Fully);
    // A single tray each has one level: whatever differs is theirs.
    EXPECT_EQ(AspectCounts({{0, 0, 0, 1}, {0, 0, 1, 2}}).worstPair(2).confounding,
              Confounding::Fully);
}

TEST(AspectCounts, StrataAreWeighedByTheirTrays)
{
    // In stratum 1, of eight trays, nothing is shared; in stratum 2, of two, all.
    std::vector<AspectReading> readings;
    add(readings, {0, 1, 0, 1}, 4);
    add(readings, {0, 1, 1, 2}, 4);
    add(readings, {0, 2, 0, 3}, 1);
    add(readings, {0, 2, 1, 3}, 1);
    const Unlikeness unlike = AspectCounts(readings).worstPair(2);
    EXPECT_NEAR(unlike.distance, 0.8, 1e-12);
    EXPECT_EQ(unlike.confounding, Confounding::Partly) << "in one of them they met";
}

TEST(AspectCounts, ATrialMayBeConfoundedWithinItself)
{
    std::vector<AspectReading> readings;
    add(readings, {5, 0, 0, 1}, 2); // trial 5: each medium its own
    add(readings, {5, 0, 1, 2}, 2);
    add(readings, {6, 0, 0, 1}, 2); // trial 6: one for both
    add(readings, {6, 0, 1, 1}, 2);
    add(readings, {0, 0, 0, 1}, 2); // outside any
    add(readings, {0, 0, 1, 2}, 2);
    const AspectCounts counts(readings);
    EXPECT_THAT(counts.fullyIn(2), ElementsAre(5));
    EXPECT_EQ(counts.worstPair(2).confounding, Confounding::Partly);
    EXPECT_THAT(counts.levelsOf(1), ElementsAre(Pair(1, 2), Pair(2, 4)));
}

TEST(AspectCounts, OfNothingAreAlike)
{
    const AspectCounts none({});
    EXPECT_EQ(none.worstPair(3).confounding, Confounding::Alike);
    EXPECT_FALSE(none.worstPair(3).worst);
    EXPECT_THAT(none.fullyPairs(0), IsEmpty());
    EXPECT_THAT(none.levelsOf(0), IsEmpty());
}

constexpr AspectTolerance kHalf = {0, 0.5};

TEST(AspectRanges, AreFullyApartWhereTheyNeverMeet)
{
    AspectRanges days;
    for (const double day : {10.0, 11.0}) {
        days.add(1, 0, day);
        days.add(1, 1, day + 2);
    }
    EXPECT_EQ(days.worstPair(2, kHalf).confounding, Confounding::Fully);
    EXPECT_NEAR(days.worstPair(2, kHalf).distance, 4, 1e-12) << "2 days by half a day";
    days.add(1, 0, 12); // the mesh's earliest
    EXPECT_EQ(days.worstPair(2, kHalf).confounding, Confounding::Partly);
}

TEST(AspectRanges, WithinTheToleranceAreAlike)
{
    AspectRanges days;
    days.add(1, 0, 10);
    days.add(1, 1, 10.5);
    EXPECT_EQ(days.worstPair(2, kHalf).confounding, Confounding::Alike)
        << "though the ranges never meet";
    days.add(2, 0, 10);
    days.add(2, 1, 11);
    EXPECT_EQ(days.worstPair(2, kHalf).confounding, Confounding::Partly) << "in one stratum only";
}

TEST(AspectRanges, AToleranceMayBeAShare)
{
    AspectRanges densities;
    densities.add(1, 0, 100);
    densities.add(1, 1, 102);
    EXPECT_EQ(densities.worstPair(2, {0.02, 1e-9}).confounding, Confounding::Alike);
    EXPECT_EQ(densities.worstPair(2, {0.015, 1e-9}).confounding, Confounding::Fully);
    AspectRanges none;
    none.add(1, 0, 0);
    none.add(1, 1, 0);
    EXPECT_EQ(none.worstPair(2, {0.02, 1e-9}).confounding, Confounding::Alike)
        << "two per cent of nothing";
}

TEST(AspectRanges, OfMediaThatShareNoStratumSayNothing)
{
    AspectRanges days;
    days.add(1, 0, 10);
    days.add(2, 1, 20);
    EXPECT_EQ(days.worstPair(2, kHalf).confounding, Confounding::Alike);
    EXPECT_EQ(days.numbersOf(0), (AspectNumbers{10, 10, 10}));
    days.add(2, 0, 16);
    EXPECT_EQ(days.numbersOf(0), (AspectNumbers{13, 10, 16})) << "over all strata";
    EXPECT_EQ(days.numbersOf(2), std::nullopt);
}

} // namespace
} // namespace plumule
