#include "core/stats/samples/letter_display.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>
#include <set>

namespace plumule::stats {
namespace {

using Pairs = std::vector<std::pair<std::size_t, std::size_t>>;

bool shareALetter(const std::string& one, const std::string& other)
{
    return std::any_of(one.begin(), one.end(),
                       [&](char letter) { return other.find(letter) != std::string::npos; });
}

TEST(LetterDisplay, GivesAllOneLetterWhereNothingDiffers)
{
    const std::vector<double> means{3, 1, 2};
    EXPECT_EQ(letterDisplay(means, {}), (std::vector<std::string>{"a", "a", "a"}));
    EXPECT_EQ(letterDisplay(std::vector<double>{5}, {}), std::vector<std::string>{"a"});
    EXPECT_TRUE(letterDisplay({}, {}).empty());
}

TEST(LetterDisplay, GivesTheHighestTheFirstLetter)
{
    const std::vector<double> means{1, 3, 2};
    const Pairs all{{0, 1}, {0, 2}, {1, 2}};
    EXPECT_EQ(letterDisplay(means, all), (std::vector<std::string>{"c", "a", "b"}));
}

TEST(LetterDisplay, GivesOneBetweenTwoBothTheirLetters)
{
    const std::vector<double> means{3, 2, 1};
    EXPECT_EQ(letterDisplay(means, {{0, 2}}), (std::vector<std::string>{"a", "ab", "b"}));
    EXPECT_EQ(letterDisplay(means, {{2, 0}}), (std::vector<std::string>{"a", "ab", "b"}))
        << "a pair may be named either way round";
}

// Piepho 2004: "insert and absorb" leaves no letter that another one holds wholly.
TEST(LetterDisplay, UsesNoLetterThatTellsNothing)
{
    const std::vector<double> means{4, 3, 2, 1};
    EXPECT_EQ(letterDisplay(means, {{0, 2}, {0, 3}, {1, 3}}),
              (std::vector<std::string>{"a", "ab", "bc", "c"}));
    EXPECT_EQ(letterDisplay(means, {{0, 3}, {0, 2}, {1, 2}, {1, 3}}),
              (std::vector<std::string>{"a", "a", "b", "b"}));
}

// Seed 2004: whichever pairs differ, two means share a letter exactly when they do not; the letters
// run without a gap.
TEST(LetterDisplay, TellsExactlyThePairsThatDiffer)
{
    std::mt19937 draw(2004);
    for (int round = 0; round < 300; ++round) {
        const std::size_t count = 2 + draw() % 6;
        std::vector<double> means(count);
        for (double& mean : means) {
            mean = static_cast<double>(draw() % 1000);
        }
        Pairs differing;
        for (std::size_t a = 0; a < count; ++a) {
            for (std::size_t b = a + 1; b < count; ++b) {
                if (draw() % 3 == 0) {
                    differing.emplace_back(a, b);
                }
            }
        }
        const std::vector<std::string> letters = letterDisplay(means, differing);
        ASSERT_EQ(letters.size(), count);
        std::set<char> used;
        for (std::size_t a = 0; a < count; ++a) {
            EXPECT_FALSE(letters[a].empty());
            used.insert(letters[a].begin(), letters[a].end());
            for (std::size_t b = a + 1; b < count; ++b) {
                const bool differ = std::find(differing.begin(), differing.end(),
                                              std::pair(a, b)) != differing.end();
                EXPECT_EQ(shareALetter(letters[a], letters[b]), !differ)
                    << letters[a] << ' ' << letters[b];
            }
        }
        EXPECT_EQ(*used.begin(), 'a');
        EXPECT_EQ(*used.rbegin() - 'a' + 1, static_cast<int>(used.size()));
    }
}

TEST(LetterDisplay, DoublesLettersPastTheAlphabet)
{
    std::vector<double> means;
    Pairs all;
    for (std::size_t i = 0; i < 28; ++i) {
        means.push_back(-static_cast<double>(i));
        for (std::size_t j = 0; j < i; ++j) {
            all.emplace_back(j, i);
        }
    }
    const auto letters = letterDisplay(means, all);
    EXPECT_EQ(letters[25], "z");
    EXPECT_EQ(letters[26], "aa");
    EXPECT_EQ(letters[27], "bb");
}

} // namespace
} // namespace plumule::stats
