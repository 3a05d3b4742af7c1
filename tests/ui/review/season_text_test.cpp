#include "ui/review/season_text.h"

#include "tests/support/enumerators.h"
#include "tests/ui/text/sentence_check.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// So many trays of each, with their mean.
SeasonReview reviewOf(const std::vector<std::tuple<const char*, int, double>>& media)
{
    SeasonReview review;
    review.varieties = 1;
    for (const auto& [name, trays, mean] : media) {
        MediumSeason season;
        season.medium.name = name;
        season.yield.n = trays;
        season.yield.mean = mean;
        if (trays >= 2) {
            season.yield.lower = mean - 12;
            season.yield.upper = mean + 12;
        } else {
            review.tooFew.push_back(name);
        }
        review.trays += trays;
        review.media.push_back(season);
    }
    return review;
}

TEST(SeasonWords, NameTheHighestMeanAndSayThatItIsNoWinner)
{
    const SeasonWords words = wordsFor(reviewOf({{"Coir", 4, 250.4}, {"Mesh", 5, 280}}));
    EXPECT_EQ(words.headline, "Mesh has the highest mean, 280 g a tray (95% interval 268 to 292).");
    EXPECT_TRUE(words.detail.startsWith("The highest mean is not yet a winner"));
    EXPECT_FALSE(words.detail.contains("mixed in these means"));
    SeasonReview mixed = reviewOf({{"Coir", 4, 250.4}, {"Mesh", 5, 280}});
    mixed.varieties = 3;
    EXPECT_TRUE(wordsFor(mixed).detail.contains("3 varieties are mixed in these means"));
}

TEST(SeasonWords, NameMediaOfTooFewTraysHoweverMany)
{
    const SeasonWords words =
        wordsFor(reviewOf({{"Coir", 4, 250}, {"Mesh", 5, 280}, {"Felt", 1, 300}, {"Jute", 1, 90}}));
    EXPECT_TRUE(words.headline.startsWith("Mesh has the highest mean"))
        << "not the felt's one tray";
    EXPECT_TRUE(words.detail.endsWith(
        "Fewer than two trays, too few to be told apart from any: Felt, Jute."))
        << words.detail.toStdString();
}

TEST(SeasonWords, SayWhyNothingIsToBeTold)
{
    EXPECT_EQ(wordsFor(SeasonReview()).headline, "No tray was harvested in this span.");
    EXPECT_TRUE(wordsFor(reviewOf({{"Coir", 4, 250}})).headline.startsWith("Only one medium"));
    EXPECT_EQ(wordsFor(reviewOf({{"Coir", 4, 250}, {"Felt", 1, 90}})).headline,
              "Nothing can be told apart: there are fewer than two trays of Felt.");
    EXPECT_EQ(wordsFor(reviewOf({{"Coir", 1, 250}, {"Felt", 1, 90}})).headline,
              "Nothing can be told apart: there are fewer than two trays of Coir, Felt.");
}

TEST(SeasonWords, SayWhatAMetricLacks)
{
    SeasonComparison comparison;
    for (const auto& [response, name] : enumeratorsOf<Response>()) {
        comparison.ask.response = response;
        EXPECT_EQ(blemish(wordsWithoutPairs(comparison).headline), "") << name;
    }
    comparison.ask.response = Response::Residue;
    EXPECT_EQ(wordsWithoutPairs(comparison).headline,
              "No residue was weighed: there is nothing to compare.");
    comparison.n = 3;
    EXPECT_TRUE(wordsWithoutPairs(comparison).headline.startsWith("Trays of one medium alone"));
}

LeftOutTray leftOut(const char* code, LeftOut why, const char* reason = "")
{
    LeftOutTray tray;
    tray.code = code;
    tray.why = why;
    tray.reason = reason;
    return tray;
}

TEST(LeftOutText, CountsByReasonAndQuotesTheGrower)
{
    SeasonReview review;
    EXPECT_EQ(leftOutText(review), "Every tray of the span is counted.");
    review.leftOut = {leftOut("RC001", LeftOut::StillGrowing),
                      leftOut("RC002", LeftOut::StillGrowing)};
    EXPECT_EQ(leftOutText(review), "Not counted: 2 still growing.");
    review.leftOut.push_back(leftOut("RC014", LeftOut::Discarded, "mould, 50 % of it"));
    review.leftOut.push_back(leftOut("RC015", LeftOut::CutAgainLater));
    review.leftOut.push_back(leftOut("RC016", LeftOut::SetAside, "lamp out %1"));
    EXPECT_EQ(leftOutText(review),
              "Not counted: 1 discarded, 2 still growing, 1 to be cut again, 1 set aside (RC014: "
              "mould, 50 % of it; RC016: lamp out %1).");
    review.leftOut = {leftOut("RC017", LeftOut::Damaged)};
    EXPECT_EQ(leftOutText(review),
              "Not counted: 1 that can't be read (RC017: see “Check for damage” in Set-up).");
}

} // namespace
} // namespace plumule::ui
