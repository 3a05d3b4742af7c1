#include "core/trial/draw.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/steady_draw.h"
#include "core/tray/tray_reason.h"
#include "core/trial/trial_reason.h"
#include "tests/core/trial/draft_samples.h"

#include <gmock/gmock.h>
#include <map>
#include <set>

namespace plumule {
namespace {

using testing::ElementsAre;

constexpr int kDraws = 10'000; // numbers 1 to 10 000

std::vector<int> treatmentsOf(const std::vector<PlannedTray>& layout)
{
    std::vector<int> treatments;
    for (const PlannedTray& tray : layout) {
        treatments.push_back(tray.treatment);
    }
    return treatments;
}

// How often each treatment came to each place, over all draws.
using PairCounts = std::map<std::pair<std::int64_t, int>, int>;

template <class Draw>
PairCounts pairsOver(Draw draw)
{
    PairCounts pairs;
    for (int number = 1; number <= kDraws; ++number) {
        for (const PlannedTray& tray : draw(number)) {
            ++pairs[{tray.place->value, tray.treatment}];
        }
    }
    return pairs;
}

// Pearson's χ² of all place–treatment pairs against equal counts. In each group of places that is
// shuffled by itself the counts of k places by t treatments, of which rows and columns both add up,
// have (k − 1)(t − 1) degrees of freedom. Each shuffle puts one treatment a place, without
// replacement: the variance of a count is n·(1/t)(1 − 1/t) as it would be were places independent,
// but places of one shuffle are correlated −1/(k − 1), which makes Σ(O − E)²/E of a group
// (k/(k − 1)) times a χ² of that many degrees. It is divided out.
double pOfEqualPairs(const PairCounts& pairs, int treatments, int groups, int placesInGroup)
{
    const double expected = static_cast<double>(kDraws) / treatments;
    double sum = 0;
    for (const auto& [pair, count] : pairs) {
        sum += (count - expected) * (count - expected) / expected;
    }
    const double k = placesInGroup;
    return stats::chiSquareUpper(sum * (k - 1) / k, groups * (k - 1) * (treatments - 1));
}

TEST(DrawInBlocks, PutsEveryTreatmentOnceInEveryBlockWhateverTheNumber)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 4, 5, 5);
    const auto free = shelvesOf({4, 4, 6, 4, 4});
    for (int number = 1; number <= kDraws; ++number) {
        const auto layout = drawn(draft, number, free);
        ASSERT_EQ(layout.size(), 20U);
        std::set<std::pair<int, int>> inBlock;
        std::set<PlaceId> places;
        for (const PlannedTray& tray : layout) {
            inBlock.emplace(tray.block, tray.treatment);
            places.insert(*tray.place);
            ASSERT_EQ(tray.place->value / 100, tray.block) << "a block stands on one shelf";
        }
        ASSERT_EQ(inBlock.size(), 20U) << number;
        ASSERT_EQ(places.size(), 20U) << number;
    }
}

TEST(DrawInBlocks, PutsEveryTreatmentEquallyOftenInLargerBlocks)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 3, 4, 2);
    const auto free = shelvesOf({6, 7});
    for (int number = 1; number <= kDraws; ++number) {
        std::map<std::pair<int, int>, int> counts;
        for (const PlannedTray& tray : drawn(draft, number, free)) {
            ++counts[{tray.block, tray.treatment}];
        }
        ASSERT_EQ(counts.size(), 6U);
        for (const auto& [cell, count] : counts) {
            ASSERT_EQ(count, 2) << number;
        }
    }
}

TEST(DrawInBlocks, BringsEveryTreatmentToEveryPlaceEquallyOften)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 4, 4, 4);
    const auto free = shelvesOf({4, 4, 4, 4});
    const PairCounts pairs = pairsOver([&](int number) { return drawn(draft, number, free); });
    EXPECT_EQ(pairs.size(), 16U * 4U);
    const double p = pOfEqualPairs(pairs, 4, 4, 4);
    RecordProperty("p", std::to_string(p));
    EXPECT_GT(p, 0.001);
    EXPECT_LT(p, 0.999) << "more equal than chance";
}

// The same check must see a draw that is not fair: the shuffle that changes every item about with
// any item at all, which favours some orders.
TEST(DrawInBlocks, IsHeldToACheckThatSeesAnUnfairShuffle)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 4, 4, 4);
    const auto free = shelvesOf({4, 4, 4, 4});
    const PairCounts pairs = pairsOver([&](int number) {
        auto layout = drawn(draft, 1, free);
        stats::SteadyDraw draw(static_cast<std::uint64_t>(number));
        for (std::size_t block = 0; block < 4; ++block) {
            for (std::size_t i = 0; i < 4; ++i) {
                layout[block * 4 + i].treatment = static_cast<int>(i);
            }
            for (std::size_t i = 0; i < 4; ++i) {
                std::swap(layout[block * 4 + i].treatment,
                          layout[block * 4 + draw.below(4)].treatment);
            }
        }
        return layout;
    });
    EXPECT_LT(pOfEqualPairs(pairs, 4, 4, 4), 1e-12);
}

TEST(DrawInBlocks, GoesToAsManyShelvesAsHaveRoomInWalkingOrder)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 3, 4, 4);
    const auto onShelves = [&](const std::vector<int>& places) {
        std::vector<std::int64_t> shelves;
        for (const PlannedTray& tray : drawn(draft, 1, shelvesOf(places))) {
            if (tray.position == 1) {
                shelves.push_back(tray.place->value / 100);
            }
        }
        return shelves;
    };
    EXPECT_THAT(onShelves({4, 4, 4, 4, 4}), ElementsAre(1, 2, 3, 4));
    EXPECT_THAT(onShelves({2, 4, 0, 4, 4, 3}), ElementsAre(2, 4, 5, 6));
    EXPECT_THAT(onShelves({6, 2, 6}), ElementsAre(1, 1, 3, 3));
    EXPECT_THAT(onShelves({9, 3}), ElementsAre(1, 1, 1, 2));
}

TEST(DrawAnywhere, BringsEveryTreatmentToEveryPlaceEquallyOften)
{
    const TrialDraft draft = draftOf(Design::CompletelyRandom, 3, 3);
    const auto free = shelvesOf({4, 3, 4});
    const PairCounts pairs = pairsOver([&](int number) { return drawn(draft, number, free); });
    EXPECT_EQ(pairs.size(), 9U * 3U);
    EXPECT_GT(pOfEqualPairs(pairs, 3, 1, 9), 0.001);
    for (const PlannedTray& tray : drawn(draft, 5, free)) {
        EXPECT_EQ(tray.block, 1);
    }
}

TEST(DrawnSquare, HasEveryTreatmentOnceOnEachShelfAndOnceAtEachPlaceAlong)
{
    for (const int size : {2, 3, 4, 5}) {
        const TrialDraft draft = draftOf(Design::LatinSquare, size, size);
        const auto free = shelvesOf(std::vector<int>(5, 5));
        for (int number = 1; number <= kDraws / 10; ++number) {
            std::set<std::pair<int, int>> rows;
            std::set<std::pair<std::int64_t, int>> columns;
            for (const PlannedTray& tray : drawn(draft, number, free)) {
                rows.emplace(tray.block, tray.treatment);
                columns.emplace(tray.place->value % 100, tray.treatment);
                EXPECT_EQ(tray.place->value / 100, tray.block);
            }
            ASSERT_EQ(rows.size(), static_cast<std::size_t>(size * size)) << number;
            ASSERT_EQ(columns.size(), static_cast<std::size_t>(size * size)) << number;
        }
    }
}

// Rows and columns of a square both depend on each other, so each place is judged by itself: its
// count of treatments is multinomial over independent draws, χ² with 3 degrees of freedom, and 16
// of them are judged at 0.001 together.
TEST(DrawnSquare, BringsEveryTreatmentToEveryPlaceEquallyOften)
{
    const TrialDraft draft = draftOf(Design::LatinSquare, 4, 4);
    const auto free = shelvesOf({4, 4, 4, 4});
    const PairCounts pairs = pairsOver([&](int number) { return drawn(draft, number, free); });
    ASSERT_EQ(pairs.size(), 64U);
    std::map<std::int64_t, double> byPlace;
    for (const auto& [pair, count] : pairs) {
        byPlace[pair.first] += (count - 2500.0) * (count - 2500.0) / 2500.0;
    }
    for (const auto& [place, sum] : byPlace) {
        EXPECT_GT(stats::chiSquareUpper(sum, 3), 0.001 / 16) << place;
    }
}

TEST(DrawnSquare, FindsShelvesThatShareFreePlaces)
{
    const TrialDraft draft = draftOf(Design::LatinSquare, 3, 3);
    auto free = shelvesOf({5, 2, 5, 5, 5});
    std::erase_if(free[0].places, [](const Place& place) { return place.number < 4; });
    std::erase_if(free[2].places, [](const Place& place) { return place.number == 2; });
    std::erase_if(free[3].places, [](const Place& place) { return place.number == 3; });
    // Shelves 3, 4 and 5 share places 1, 4 and 5.
    std::set<std::int64_t> places;
    for (const PlannedTray& tray : drawn(draft, 1, free)) {
        places.insert(tray.place->value);
    }
    EXPECT_THAT(places, ElementsAre(301, 304, 305, 401, 404, 405, 501, 504, 505));
}

TEST(Draw, DrawsTheSameAgainFromTheSameNumber)
{
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        const TrialDraft draft = draftOf(design, 4, 4, 4);
        const auto free = shelvesOf({5, 5, 5, 5});
        EXPECT_EQ(drawn(draft, 77, free), drawn(draft, 77, free)) << toText(design);
        std::set<std::vector<int>> layouts;
        for (int number = 1; number <= 100; ++number) {
            layouts.insert(treatmentsOf(drawn(draft, number, free)));
        }
        // There are but 432 squares of order 4 to be drawn: a dozen come twice.
        EXPECT_GT(layouts.size(), design == Design::LatinSquare ? 75U : 95U) << toText(design);
    }
}

// Written down once: another layout on another platform would be another draw under the same
// number. What std::mt19937_64 gives from a seed is fixed by the standard ([rand.predef]).
TEST(Draw, DrawsTheLayoutsThatAreWrittenDown)
{
    const auto free = shelvesOf({4, 4, 4, 4});
    const auto layoutOf = [&](Design design) {
        return treatmentsOf(drawn(draftOf(design, 4, 4, 4), 2026, free));
    };
    EXPECT_THAT(layoutOf(Design::RandomizedBlocks),
                ElementsAre(2, 3, 0, 1, 0, 1, 3, 2, 1, 2, 3, 0, 3, 1, 2, 0));
    EXPECT_THAT(layoutOf(Design::LatinSquare),
                ElementsAre(3, 0, 2, 1, 0, 1, 3, 2, 1, 2, 0, 3, 2, 3, 1, 0));
    EXPECT_THAT(layoutOf(Design::CompletelyRandom),
                ElementsAre(3, 3, 1, 2, 0, 2, 1, 2, 3, 1, 1, 0, 2, 0, 0, 3));
}

TEST(Draw, TakesOnlyPlacesThatAreFree)
{
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        const TrialDraft draft = draftOf(design, 3, 3, 3);
        auto free = shelvesOf({6, 6, 6, 6});
        std::set<PlaceId> offered;
        for (FreeShelf& shelf : free) {
            std::erase_if(shelf.places, [](const Place& place) { return place.number % 3 == 1; });
            for (const Place& place : shelf.places) {
                offered.insert(place.id);
            }
        }
        for (const PlannedTray& tray : drawn(draft, 3, free)) {
            EXPECT_EQ(offered.erase(*tray.place), 1U) << toText(design);
        }
    }
}

TEST(Draw, SaysWhichPlacesItLacks)
{
    const auto refusal = [](const TrialDraft& draft, const std::vector<int>& places) {
        const auto layout = drawLayout(draft, shelvesOf(places));
        return layout ? Error{} : layout.error();
    };
    const TrialDraft blocks = draftOf(Design::RandomizedBlocks, 4, 2, 2);
    EXPECT_EQ(refusal(blocks, {4, 3}),
              (fail(ErrorKind::Conflict, TrialReason::TooFewPlaces, 7, 8).value()));
    EXPECT_EQ(refusal(blocks, {3, 3, 3}),
              (fail(ErrorKind::Conflict, TrialReason::BlockPlaces, 0, 4).value()));
    EXPECT_EQ(refusal(blocks, {4, 3, 3}),
              (fail(ErrorKind::Conflict, TrialReason::BlockPlaces, 1, 4).value()));
    const TrialDraft square = draftOf(Design::LatinSquare, 3, 3);
    EXPECT_TRUE(refusal(square, {2, 2, 2, 2}).is(TrialReason::TooFewPlaces));
    EXPECT_EQ(refusal(square, {6, 6}),
              (fail(ErrorKind::Conflict, TrialReason::SquarePlaces, 3).value()));
    const TrialDraft anywhere = draftOf(Design::CompletelyRandom, 2, 5);
    EXPECT_EQ(refusal(anywhere, {}),
              (fail(ErrorKind::Conflict, TrialReason::TooFewPlaces, 0, 10).value()));
}

TEST(Draw, IsDoneBeforeTheTrialHasAName)
{
    TrialDraft draft = draftOf(Design::CompletelyRandom, 2, 2);
    draft.trial.name.clear();
    EXPECT_TRUE(drawLayout(draft, shelvesOf({4})));
    EXPECT_EQ(checkDraft(draft).error(),
              (fail(ErrorKind::Missing, TrialReason::NameMissing).value()));
}

TEST(MoveByHand, PutsATrayElsewhereAndMarksIt)
{
    const TrialDraft draft = draftOf(Design::CompletelyRandom, 2, 2);
    const auto before = drawn(draft, 1, shelvesOf({6}));
    auto trays = before;
    ASSERT_TRUE(moveByHand(trays, 1, {106}));
    EXPECT_EQ(trays[1].place, PlaceId{106});
    EXPECT_TRUE(trays[1].isMoved);
    trays[1] = before[1];
    EXPECT_EQ(trays, before) << "the others stay";
    ASSERT_TRUE(moveByHand(trays, 1, *before[1].place));
    EXPECT_EQ(trays, before) << "where it stands already it is not moved";
}

TEST(MoveByHand, ChangesTwoTraysAbout)
{
    const TrialDraft draft = draftOf(Design::RandomizedBlocks, 2, 2, 2);
    const auto before = drawn(draft, 1, shelvesOf({2, 2}));
    auto trays = before;
    ASSERT_TRUE(moveByHand(trays, 0, *before[3].place));
    EXPECT_EQ(trays[0].place, before[3].place);
    EXPECT_EQ(trays[3].place, before[0].place);
    EXPECT_TRUE(trays[0].isMoved && trays[3].isMoved);
    EXPECT_FALSE(trays[1].isMoved || trays[2].isMoved);
    EXPECT_EQ(moveByHand(trays, 4, {101}).error().kind, ErrorKind::NotFound);
}

} // namespace
} // namespace plumule
