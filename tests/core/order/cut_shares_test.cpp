#include "core/order/cut_shares.h"
#include "tests/core/order/order_samples.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;

const Date kDay = date(2026, 12, 10);

WeighedCut cutOf(std::int64_t id, double net, Date on, std::int64_t variety = 1)
{
    return {{id}, "RD" + std::to_string(id), {variety}, on, 480, grams(net), std::nullopt};
}

WeighedCut byHand(WeighedCut cut, std::optional<PromiseKey> to)
{
    cut.byHand = OrderCut{{cut.id.value}, cut.id, {}, {}};
    if (to) {
        cut.byHand->order = to->order;
        cut.byHand->day = to->day;
    }
    return cut;
}

Mass given(const SharesByPromise& shares, const Promise& promise)
{
    const auto found = shares.find(promise.key());
    return found == shares.end() ? Mass{} : sumOf(found->second);
}

class CutShares : public testing::Test
{
protected:
    const Promise first{orderOf(1, 500, kDay), kDay};
    const Promise second{orderOf(2, 300, kDay), kDay};
    const Promise later{orderOf(3, 400, kDay + 2), kDay + 2};
    const std::vector<Promise> all{later, second, first};
};

TEST_F(CutShares, FillTheOldestPromiseFirstAndLeaveWhatIsOverWithTheLast)
{
    const auto shares = shareCuts({second, first}, {cutOf(1, 450, kDay), cutOf(2, 450, kDay)});
    EXPECT_EQ(given(shares, first), grams(500));
    EXPECT_EQ(given(shares, second), grams(400));
    EXPECT_THAT(shares.at(first.key()), ElementsAre(CutShare{{1}, "RD1", kDay, grams(450), false},
                                                    CutShare{{2}, "RD2", kDay, grams(50), false}));
}

TEST_F(CutShares, ReachPromisesOfTheirOwnDayAndTheTwoAfterIt)
{
    const auto shares = shareCuts(all, {cutOf(1, 1000, kDay)});
    EXPECT_EQ(given(shares, first), grams(500));
    EXPECT_EQ(given(shares, second), grams(300));
    EXPECT_EQ(given(shares, later), grams(200));
    EXPECT_TRUE(shareCuts({first}, {cutOf(1, 600, kDay - 3)}).empty());
    EXPECT_TRUE(shareCuts({first}, {cutOf(1, 600, kDay + 1)}).empty());
    EXPECT_EQ(given(shareCuts({first}, {cutOf(1, 600, kDay - 2)}), first), grams(600));
}

TEST_F(CutShares, AreOfTheirVarietyAlone)
{
    EXPECT_TRUE(shareCuts(all, {cutOf(1, 600, kDay, 2)}).empty());
}

TEST_F(CutShares, StayWithTheFirstWhereNothingIsLeftToFill)
{
    const auto shares =
        shareCuts({first, later}, {cutOf(1, 900, kDay), cutOf(2, 70, kDay), cutOf(3, 5, kDay)});
    EXPECT_EQ(given(shares, first), grams(575));
    EXPECT_EQ(given(shares, later), grams(400));
}

TEST_F(CutShares, GoWhereTheGrowerPutThemWhole)
{
    const auto shares =
        shareCuts(all, {byHand(cutOf(1, 450, kDay), second.key()),
                        byHand(cutOf(2, 450, kDay), std::nullopt), cutOf(3, 510, kDay)});
    EXPECT_EQ(given(shares, second), grams(450));
    EXPECT_EQ(given(shares, first), grams(500));
    EXPECT_EQ(given(shares, later), grams(10));
    EXPECT_TRUE(shares.at(second.key()).front().isByHand);
}

// Whatever the promises and cuts, no gram is made or lost but those of cuts without a promise.
TEST_F(CutShares, AddUpToTheCuts)
{
    std::vector<WeighedCut> cuts;
    Mass sum;
    for (int i = 1; i <= 40; ++i) {
        cuts.push_back(cutOf(i, 10.5 * i, kDay - i % 3));
        sum += cuts.back().net;
    }
    Mass shared;
    for (const auto& [key, list] : shareCuts(all, cuts)) {
        shared += sumOf(list);
    }
    EXPECT_EQ(shared, sum);
}

} // namespace
} // namespace plumule
