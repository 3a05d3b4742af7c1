#include "core/tasting/tasting_draw.h"

#include "core/tasting/tasting_rules.h"

#include <gtest/gtest.h>
#include <map>
#include <numeric>
#include <set>

namespace plumule {
namespace {

using Rows = std::vector<std::vector<int>>;

// Whether each sample comes equally often at each turn, and follows each other equally often and
// itself never.
bool isBalancedSquare(const Rows& rows, int samples)
{
    std::map<std::pair<int, int>, int> atTurn;
    std::map<std::pair<int, int>, int> follows;
    for (const auto& row : rows) {
        for (std::size_t turn = 0; turn < row.size(); ++turn) {
            ++atTurn[{row[turn], static_cast<int>(turn)}];
            if (turn > 0) {
                ++follows[{row[turn - 1], row[turn]}];
            }
        }
    }
    const int times = static_cast<int>(rows.size()) / samples;
    for (int a = 0; a < samples; ++a) {
        for (int b = 0; b < samples; ++b) {
            const int expected = a == b ? 0 : times;
            if (follows[{a, b}] != expected || atTurn[{a, b}] != times) {
                return false;
            }
        }
    }
    return true;
}

Rows cyclicSquare(int samples)
{
    Rows rows;
    for (int shift = 0; shift < samples; ++shift) {
        std::vector<int> row;
        for (int turn = 0; turn < samples; ++turn) {
            row.push_back((turn + shift) % samples);
        }
        rows.push_back(row);
    }
    return rows;
}

Rows rowsOf(const std::vector<DrawnServing>& servings)
{
    Rows rows;
    for (const DrawnServing& serving : servings) {
        if (serving.turn == 1) {
            rows.emplace_back();
        }
        rows.back().push_back(serving.sample);
    }
    return rows;
}

TEST(TastingDraw, WilliamsSquaresAreBalancedFor2To9Samples)
{
    for (int samples = 2; samples <= 9; ++samples) {
        const Rows rows = williamsSquare(samples);
        EXPECT_EQ(rows.size(), std::size_t(samples % 2 == 0 ? samples : 2 * samples));
        EXPECT_TRUE(isBalancedSquare(rows, samples)) << samples;
        for (const auto& row : rows) {
            EXPECT_EQ(std::set<int>(row.begin(), row.end()).size(), std::size_t(samples));
        }
    }
}

TEST(TastingDraw, TheSameCheckRejectsACyclicSquare)
{
    for (int samples = 3; samples <= 9; ++samples) {
        EXPECT_FALSE(isBalancedSquare(cyclicSquare(samples), samples)) << samples;
    }
    Rows oneRowTwice = williamsSquare(4);
    oneRowTwice[0] = oneRowTwice[1];
    EXPECT_FALSE(isBalancedSquare(oneRowTwice, 4));
}

TEST(TastingDraw, DrawnOrdersStayBalancedOverWholeRoundsOfTasters)
{
    for (int samples = 2; samples <= 9; ++samples) {
        const int round = balancedTasters(TastingMethod::Hedonic, samples);
        for (int rounds = 1; rounds <= 2; ++rounds) {
            const auto drawn =
                drawServings(TastingMethod::Hedonic, samples, rounds * round, 20260312);
            EXPECT_TRUE(isBalancedSquare(rowsOf(drawn), samples)) << samples;
        }
    }
}

TEST(TastingDraw, EveryTasterIsServedEachSampleOnceInOrder)
{
    const auto drawn = drawServings(TastingMethod::Ranking, 5, 7, 11);
    ASSERT_EQ(drawn.size(), 35u);
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        EXPECT_EQ(drawn[i].taster, static_cast<int>(i) / 5);
        EXPECT_EQ(drawn[i].turn, static_cast<int>(i) % 5 + 1);
    }
    for (const auto& row : rowsOf(drawn)) {
        EXPECT_EQ(std::set<int>(row.begin(), row.end()).size(), 5u);
    }
}

TEST(TastingDraw, CodesAreThreeDigitsAndNoTwoAlikeUpToTheLastOne)
{
    const struct
    {
        TastingMethod method;
        int samples;
        int tasters;
    } kCases[] = {{TastingMethod::Hedonic, 4, 6},
                  {TastingMethod::Hedonic, 9, 100},
                  {TastingMethod::Hedonic, 2, 450},
                  {TastingMethod::Triangle, 2, 300},
                  {TastingMethod::Ranking, 7, 128}};
    for (const auto& each : kCases) {
        std::set<std::string> codes;
        std::map<int, std::set<char>> firstDigits;
        const auto drawn = drawServings(each.method, each.samples, each.tasters, 5);
        for (const DrawnServing& serving : drawn) {
            const int code = std::stoi(serving.code);
            EXPECT_TRUE(code >= 100 && code <= 999) << serving.code;
            EXPECT_TRUE(codes.insert(serving.code).second) << serving.code;
            EXPECT_TRUE(firstDigits[serving.taster].insert(serving.code[0]).second)
                << "two codes of one taster begin alike: " << serving.code;
        }
        EXPECT_EQ(codes.size(), drawn.size());
    }
}

TEST(TastingDraw, ACodesFirstDigitTellsNothingOfTheSample)
{
    // Over many draws each of 3 samples has each first digit about equally often; χ² with 16
    // degrees of freedom, 1 in 1000 above 39.25 (from memory).
    std::map<std::pair<int, char>, int> counts;
    int all = 0;
    for (int number = 1; number <= 300; ++number) {
        for (const auto& serving : drawServings(TastingMethod::Hedonic, 3, 6, number)) {
            ++counts[{serving.sample, serving.code[0]}];
            ++all;
        }
    }
    const double expected = all / 27.0;
    double chiSquare = 0;
    for (int sample = 0; sample < 3; ++sample) {
        for (char digit = '1'; digit <= '9'; ++digit) {
            const double off = counts[{sample, digit}] - expected;
            chiSquare += off * off / expected;
        }
    }
    EXPECT_LT(chiSquare, 39.25);
}

TEST(TastingDraw, TheSameNumberDrawsTheSameAndAnotherDoesNot)
{
    const auto codesOf = [](std::int64_t number) {
        std::string text;
        for (const auto& serving : drawServings(TastingMethod::Hedonic, 4, 5, number)) {
            text += serving.code + "/" + std::to_string(serving.sample) + " ";
        }
        return text;
    };
    EXPECT_EQ(codesOf(42), codesOf(42));
    EXPECT_NE(codesOf(42), codesOf(43));
    EXPECT_NE(codesOf(-1), codesOf(1));
}

TEST(TastingDraw, LabelsAreDrawnSoThatAnySampleMayComeFirst)
{
    std::set<int> firstServed;
    for (int number = 0; number < 50; ++number) {
        firstServed.insert(drawServings(TastingMethod::Hedonic, 4, 1, number).front().sample);
    }
    EXPECT_EQ(firstServed.size(), 4u);
}

TEST(TastingDraw, ATriangleTakesItsSixOrdersEquallyOften)
{
    EXPECT_EQ(balancedTasters(TastingMethod::Triangle, 2), 6);
    const auto drawn = drawServings(TastingMethod::Triangle, 2, 12, 3);
    std::map<std::vector<int>, int> times;
    for (const auto& row : rowsOf(drawn)) {
        ++times[row];
    }
    EXPECT_EQ(times.size(), 6u);
    for (const auto& [order, count] : times) {
        EXPECT_EQ(count, 2);
        const int sum = std::accumulate(order.begin(), order.end(), 0);
        EXPECT_TRUE(sum == 1 || sum == 2) << "one of three is odd";
    }
}

} // namespace
} // namespace plumule
