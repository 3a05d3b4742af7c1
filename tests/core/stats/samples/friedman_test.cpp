#include "core/stats/samples/friedman.h"

#include "core/stats/probability/steady_draw.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numeric>
#include <stdexcept>

using namespace plumule;
using namespace plumule::stats;

namespace {

using JudgedBlocks = std::vector<std::vector<double>>;

JudgedBlocks columnsAsBlocks(const reference::Table& table, const std::vector<std::string>& columns)
{
    JudgedBlocks blocks(table.rows());
    for (const std::string& column : columns) {
        const auto values = table.numbers(column);
        for (std::size_t row = 0; row < values.size(); ++row) {
            blocks[row].push_back(values[row]);
        }
    }
    return blocks;
}

JudgedBlocks grassBlocks()
{
    const reference::Table table("handbook/stat_data/conover_grass_friedman.csv");
    JudgedBlocks blocks(12);
    const auto judge = table.numbers("judge");
    const auto value = table.numbers("evaluation");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        blocks.at(static_cast<std::size_t>(judge[row]) - 1).push_back(value[row]);
    }
    return blocks;
}

// Judges who all rank alike.
JudgedBlocks agreeing(std::size_t judges, std::size_t samples)
{
    std::vector<double> order;
    for (std::size_t i = 0; i < samples; ++i) {
        order.push_back(static_cast<double>(i));
    }
    return JudgedBlocks(judges, order);
}

double chiSquareOf(const JudgedBlocks& ranked)
{
    const auto n = static_cast<double>(ranked.size());
    const auto k = static_cast<double>(ranked.front().size());
    double squares = 0;
    for (std::size_t i = 0; i < ranked.front().size(); ++i) {
        double sum = 0;
        for (const auto& block : ranked) {
            sum += block[i];
        }
        squares += sum * sum;
    }
    return 12 / (n * k * (k + 1)) * squares - 3 * n * (k + 1);
}

// Rankings whose χ² is the printed one. Small steps from full agreement, so that rare values are
// met as well.
JudgedBlocks drawnWith(double chiSquare, std::size_t judges, std::size_t samples, SteadyDraw& draw)
{
    std::vector<double> order(samples);
    std::iota(order.begin(), order.end(), 1.0);
    JudgedBlocks ranked(judges, order);
    for (int tries = 0; tries < 1000000; ++tries) {
        if (std::abs(chiSquareOf(ranked) - chiSquare) < 0.006) {
            return ranked;
        }
        if (tries % 50 == 0) {
            ranked.assign(judges, order);
        }
        auto& block = ranked[draw.below(judges)];
        std::swap(block[draw.below(samples)], block[draw.below(samples)]);
    }
    throw std::runtime_error("no rankings with this chi-square");
}

} // namespace

TEST(Friedman, AgreesWithHollanderAndWolfesBaseRunners)
{
    // Hollander and Wolfe 1973, p. 140: χ² 11.143, p 0.003805.
    const reference::Table table("handbook/stat_data/hollander_wolfe_rounding_friedman.csv");
    const auto result =
        friedman(columnsAsBlocks(table, {"round_out", "narrow_angle", "wide_angle"}));
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->chiSquare, 11.143, 0.0005);
    EXPECT_NEAR(result->p, 0.003805, 5e-7);
    // Near the χ² approximation, since there are 22 players.
    EXPECT_NEAR(result->pExact.value(), result->p, 0.002);
}

TEST(Friedman, AgreesWithConoversGrassWithTies)
{
    // Conover 1999, p. 372: rank sums 38, 23.5, 24.5, 34; χ² 8.0973, p 0.044; F 3.19, p 0.036.
    const JudgedBlocks grass = grassBlocks();
    const auto result = friedman(grass);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->rankSums, (std::vector<double>{38, 23.5, 24.5, 34}));
    EXPECT_NEAR(result->chiSquare, 8.0973, 0.00005);
    EXPECT_NEAR(result->p, 0.04404, 0.000005);
    EXPECT_NEAR(result->imanDavenportF, 3.19, 0.005);
    EXPECT_NEAR(result->pF, 0.036, 0.0005);
    EXPECT_EQ(result->fDf2, 33);
}

TEST(Friedman, AgreesWithTheIsoStyleRankingExample)
{
    // ISO 8587, Annex A, read second-hand: 8 assessors, 5 samples; rank sums 17, 31, 32, 23, 17 and
    // F 10.6. The rankings with these sums are ours.
    const JudgedBlocks ranked = {{1, 3, 5, 2, 4}, {1, 3, 4, 5, 2}, {2, 5, 3, 4, 1},
                                 {2, 5, 3, 1, 4}, {3, 5, 4, 2, 1}, {1, 3, 5, 4, 2},
                                 {5, 4, 3, 1, 2}, {2, 3, 5, 4, 1}};
    const auto result = friedman(ranked);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->rankSums, (std::vector<double>{17, 31, 32, 23, 17}));
    EXPECT_NEAR(result->chiSquare, 10.6, 1e-9);
    // A student's exercise: 7 judges, 6 samples, rank sums 7, 14, 21, 28, 36, 41; 34.51.
    JudgedBlocks exercise(7, {1, 2, 3, 4, 5, 6});
    exercise.back() = {1, 2, 3, 4, 6, 5};
    EXPECT_NEAR(friedman(exercise)->chiSquare, 34.51, 0.005);
}

// For every critical value of the table, rankings that have it are drawn; their exact tail has to
// be the table's. Where it has none, not even full agreement is rare enough.
TEST(Friedman, HasTheExactTailOfTheComputedTable)
{
    const reference::Table table("handbook/friedman_exact_computed.csv");
    const auto k = table.numbers("k");
    const auto n = table.numbers("n");
    SteadyDraw draw(5);
    int checked = 0;
    const auto check = [&](std::size_t row, double alpha, const std::string& value,
                           const std::string& tail) {
        const auto samples = static_cast<std::size_t>(k[row]);
        const auto judges = static_cast<std::size_t>(n[row]);
        const auto critical = table.maybeNumbers(value)[row];
        if (!critical) {
            EXPECT_GT(friedman(agreeing(judges, samples))->pExact.value(), alpha) << "row " << row;
            return;
        }
        ++checked;
        const auto result = friedman(drawnWith(*critical, judges, samples, draw));
        EXPECT_NEAR(result->chiSquare, *critical, 0.006) << "row " << row;
        EXPECT_NEAR(result->pExact.value(), table.maybeNumbers(tail)[row].value(), 0.00006)
            << "row " << row;
    };
    for (std::size_t row = 0; row < table.rows(); ++row) {
        check(row, 0.05, "crit05", "p05");
        check(row, 0.01, "crit01", "p01");
    }
    EXPECT_GT(checked, 10);
}

TEST(Friedman, CountsTheOrdersOfFullAgreement)
{
    // All of 4 judges alike on 3 samples: 6 of 6⁴ orders.
    const auto result = friedman(agreeing(4, 3));
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->kendallW, 1, 1e-14);
    EXPECT_TRUE(std::isinf(result->imanDavenportF));
    EXPECT_EQ(result->pF, 0);
    EXPECT_NEAR(result->pExact.value(), 6.0 / 1296, 1e-14);
}

TEST(Friedman, LeavesTheExactTailOutWhereTheOrdersAreTooMany)
{
    EXPECT_FALSE(friedman(agreeing(5, 9))->pExact);
}

TEST(Friedman, RefusesBlocksThatSayNothing)
{
    const auto kindOf = [](const JudgedBlocks& blocks) {
        const auto result = friedman(blocks);
        return result ? ErrorKind::Cancelled : result.error().kind;
    };
    EXPECT_EQ(kindOf({{1, 2, 3}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{1}, {2}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{1, 2, 3}, {1, 2}}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({{1, 1, 1}, {2, 2, 2}}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({{1, 2, 3}, {1, 2, std::nan("")}}), ErrorKind::Invalid);
}

TEST(Nemenyi, GivesTheCriticalRankSumsOfThePublishedTable)
{
    // Newell and MacFarlane 1987, Table 1. Where print and formula differ it is by 1: exact values
    // for 3 and 4 panellists, rounding, or misread print.
    const reference::Table table("handbook/sensory_rank_sum_5pct.csv");
    const auto n = table.numbers("panellists_n");
    const auto k = table.numbers("samples_k");
    const auto published = table.texts("published_5pct");
    const auto computed = table.maybeNumbers("ceil_q_sqrt(nk(k+1)/12)_computed");
    int same = 0;
    int compared = 0;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const auto got =
            rankSumCriticalDifference(static_cast<int>(n[row]), static_cast<int>(k[row]), 0.05);
        ASSERT_TRUE(got);
        if (published[row].find_first_not_of("0123456789") != std::string::npos ||
            published[row].empty()) {
            continue;
        }
        // Beyond eight samples the print is read too badly to be held against anything.
        if (!computed[row]) {
            continue;
        }
        EXPECT_NEAR(*got, std::stoi(published[row]), 1) << n[row] << ", " << k[row];
        EXPECT_EQ(*got, *computed[row]) << n[row] << ", " << k[row];
        ++compared;
        same += *got == std::stoi(published[row]) ? 1 : 0;
    }
    EXPECT_EQ(compared, 114);
    EXPECT_EQ(same, 99);
}

TEST(Nemenyi, GivesTheCriticalRankSumsOfTheComputedTable)
{
    const reference::Table table("handbook/sensory_rank_sum_computed.csv");
    const auto n = table.numbers("n");
    const auto k = table.numbers("k");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const auto got = [&](double alpha) {
            return rankSumCriticalDifference(static_cast<int>(n[row]), static_cast<int>(k[row]),
                                             alpha)
                .value();
        };
        EXPECT_EQ(got(0.05), table.numbers("crit_5pct")[row]) << n[row] << ", " << k[row];
        EXPECT_EQ(got(0.01), table.numbers("crit_1pct")[row]) << n[row] << ", " << k[row];
    }
}
