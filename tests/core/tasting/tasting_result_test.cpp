#include "core/tasting/tasting_result.h"

#include "core/tasting/tasting_reason.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<Medium> bedsNamed(const std::vector<std::string>& names)
{
    std::vector<Medium> media;
    for (const std::string& name : names) {
        Medium medium;
        medium.id = {static_cast<std::int64_t>(media.size()) + 1};
        medium.name = name;
        medium.marker = static_cast<int>(media.size());
        media.push_back(medium);
    }
    return media;
}

// A closed panel of one attribute; a value of 0 is a score that is missing.
PanelRecord closedPanel(TastingMethod method, const std::vector<std::vector<int>>& values)
{
    PanelRecord record;
    record.panel.name = "Spring tasting";
    record.panel.method = method;
    record.panel.closedOn = date(2026, 3, 12);
    record.attributes = {{{1}, {}, 0, "crunch"}};
    for (std::size_t sample = 0; sample < values.front().size(); ++sample) {
        const auto id = static_cast<std::int64_t>(sample) + 1;
        record.samples.push_back({{id}, {}, static_cast<int>(sample), {id}});
    }
    for (std::size_t taster = 0; taster < values.size(); ++taster) {
        const TasterId id{static_cast<std::int64_t>(taster) + 1};
        record.tasters.push_back(
            {id, {}, static_cast<int>(taster), "Taster " + std::to_string(taster + 1)});
        for (std::size_t sample = 0; sample < values[taster].size(); ++sample) {
            const ServingId serving{static_cast<std::int64_t>(record.servings.size()) + 1};
            record.servings.push_back({serving,
                                       {},
                                       id,
                                       record.samples[sample].id,
                                       static_cast<int>(sample) + 1,
                                       std::to_string(100 + serving.value)});
            if (values[taster][sample] != 0) {
                record.scores.push_back({{serving.value}, serving, {1}, values[taster][sample]});
            }
        }
    }
    return record;
}

// Every taster served A A B; the first `right` named B.
PanelRecord closedTriangle(int tasters, int right, int silent = 0)
{
    PanelRecord record = closedPanel(TastingMethod::Triangle, {{0, 0}});
    record.tasters.clear();
    record.servings.clear();
    for (int taster = 0; taster < tasters + silent; ++taster) {
        const TasterId id{taster + 1};
        record.tasters.push_back({id, {}, taster, "Taster " + std::to_string(taster + 1)});
        for (int turn = 1; turn <= 3; ++turn) {
            const ServingId serving{taster * 3 + turn};
            record.servings.push_back({serving, {}, id, {turn == 3 ? 2 : 1}, turn, "x"});
            const bool isNamed = turn == (taster < right ? 3 : 1) && taster < tasters;
            if (isNamed) {
                record.scores.push_back({{serving.value}, serving, {1}, 1});
            }
        }
    }
    return record;
}

const TastingCaveat* caveatIn(const TastingResult& result, TastingCaveatKind kind)
{
    for (const TastingCaveat& each : result.caveats) {
        if (each.kind == kind) {
            return &each;
        }
    }
    return nullptr;
}

const std::vector<Medium> kThreeBeds = bedsNamed({"Mix", "Mat", "Mesh"});

TEST(TastingResult, AnOpenPanelTellsNothing)
{
    PanelRecord record = closedPanel(TastingMethod::Hedonic, {{5, 6, 7}, {5, 6, 7}});
    record.panel.closedOn.reset();
    const auto result = tastingResult(record, kThreeBeds);
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error(),
              (fail(ErrorKind::Conflict, TastingReason::Open, "Spring tasting").value()));
}

TEST(TastingResult, FullAgreementOfFiveIsShown)
{
    const auto result =
        tastingResult(closedPanel(TastingMethod::Hedonic,
                                  {{4, 6, 8}, {3, 5, 9}, {2, 6, 7}, {5, 6, 8}, {1, 5, 7}}),
                      kThreeBeds);
    ASSERT_TRUE(result);
    const AttributeResult& crunch = result->attributes[0];
    EXPECT_EQ(crunch.samples[0].rankSum, 5);
    EXPECT_EQ(crunch.samples[2].rankSum, 15);
    EXPECT_DOUBLE_EQ(crunch.samples[0].mean, 3.0);
    EXPECT_DOUBLE_EQ(crunch.samples[2].median, 8.0);
    EXPECT_DOUBLE_EQ(crunch.friedman->kendallW, 1);
    // 6 of 6⁵ orders agree so.
    EXPECT_NEAR(crunch.p(), 6 / std::pow(6.0, 5), 1e-12);
    EXPECT_TRUE(crunch.isShown());
    EXPECT_FALSE(crunch.tastersWanted);
    // q(0.05; 3, ∞) = 3.314: 3.314·√(5·3·4/12) = 7.41 (Newell and MacFarlane's table: 8).
    EXPECT_EQ(crunch.criticalDifference, 8);
    EXPECT_EQ(bestFirst(crunch, TastingMethod::Hedonic), (std::vector<std::size_t>{2, 1, 0}));
    EXPECT_EQ(bestFirst(crunch, TastingMethod::Ranking), (std::vector<std::size_t>{0, 1, 2}));
}

TEST(TastingResult, DisagreementIsNotShownAndSaysWhoWouldBeNeeded)
{
    // Rank sums 9, 12, 15 of six tasters: χ² = 3.0, W = 0.25, mean correlation (6·0.25 − 1)/5 =
    // 0.1; χ²(0.95; 2)/2 = 2.9957, so 1 + 1.9957/0.1 = 20.96 tasters.
    const auto result = tastingResult(
        closedPanel(TastingMethod::Ranking,
                    {{1, 2, 3}, {1, 2, 3}, {1, 2, 3}, {1, 3, 2}, {2, 1, 3}, {3, 2, 1}}),
        kThreeBeds);
    ASSERT_TRUE(result);
    const AttributeResult& crunch = result->attributes[0];
    EXPECT_EQ(crunch.friedman->rankSums, (std::vector<double>{9, 12, 15}));
    EXPECT_NEAR(crunch.friedman->kendallW, 0.25, 1e-12);
    EXPECT_FALSE(crunch.isShown());
    EXPECT_EQ(crunch.tastersWanted, 21);
    // Where they contradict one another no number would do.
    const auto contrary = tastingResult(
        closedPanel(TastingMethod::Ranking, {{1, 2, 3}, {3, 2, 1}, {2, 1, 3}, {2, 3, 1}}),
        kThreeBeds);
    EXPECT_FALSE(contrary->attributes[0].tastersWanted);
    EXPECT_FALSE(contrary->attributes[0].isShown());
}

TEST(TastingResult, TastersWithoutAllScoresAreLeftOutAndNamed)
{
    const auto result = tastingResult(
        closedPanel(TastingMethod::Hedonic, {{4, 6, 8}, {0, 5, 9}, {2, 6, 7}}), kThreeBeds);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->attributes[0].tasters, 2);
    EXPECT_DOUBLE_EQ(result->attributes[0].samples[0].mean, 3.0);
    const TastingCaveat* incomplete = caveatIn(*result, TastingCaveatKind::Incomplete);
    ASSERT_NE(incomplete, nullptr);
    EXPECT_EQ(incomplete->names, std::vector<std::string>{"Taster 2"});
    // What that taster did say is drawn, hollow.
    int hollow = 0;
    for (const ChartSeries& series : result->charts[0].series) {
        for (const ChartPoint& point : series.points) {
            hollow += point.isHollow ? 1 : 0;
            EXPECT_EQ(point.isHollow, point.note == "Taster 2");
        }
    }
    EXPECT_EQ(hollow, 2);
}

TEST(TastingResult, SaysWhyThereIsNoTest)
{
    const auto one = tastingResult(closedPanel(TastingMethod::Hedonic, {{4, 6, 8}}), kThreeBeds);
    ASSERT_TRUE(one);
    EXPECT_FALSE(one->attributes[0].friedman);
    EXPECT_EQ(one->attributes[0].noTest->kind, ErrorKind::TooFew);
    EXPECT_EQ(one->attributes[0].p(), 1);
    const auto alike =
        tastingResult(closedPanel(TastingMethod::Hedonic, {{5, 5, 5}, {7, 7, 7}}), kThreeBeds);
    EXPECT_EQ(alike->attributes[0].noTest->kind, ErrorKind::Invalid);
    const auto none =
        tastingResult(closedPanel(TastingMethod::Hedonic, {{5, 0, 5}, {0, 7, 7}}), kThreeBeds);
    EXPECT_TRUE(none->attributes[0].samples.empty());
    EXPECT_TRUE(none->charts[0].series.empty());
}

TEST(TastingResult, AFewTastersShowLargeDifferencesOnly)
{
    const auto five =
        tastingResult(closedPanel(TastingMethod::Hedonic,
                                  {{4, 6, 8}, {3, 5, 9}, {2, 6, 7}, {5, 6, 8}, {1, 5, 7}}),
                      kThreeBeds);
    const TastingCaveat* few = caveatIn(*five, TastingCaveatKind::FewTasters);
    ASSERT_NE(few, nullptr);
    EXPECT_EQ(few->count, 5);
    EXPECT_EQ(few->limit, 8);
    EXPECT_EQ(few->most, 10);
    // Two tasters can never show it: 5 is needed, 4 is the most.
    const auto two =
        tastingResult(closedPanel(TastingMethod::Hedonic, {{4, 6, 8}, {3, 5, 9}}), kThreeBeds);
    EXPECT_EQ(caveatIn(*two, TastingCaveatKind::FewTasters)->limit, 0);
    const auto nine = tastingResult(
        closedPanel(TastingMethod::Hedonic, std::vector<std::vector<int>>(9, {4, 6, 8})),
        kThreeBeds);
    EXPECT_EQ(caveatIn(*nine, TastingCaveatKind::FewTasters), nullptr);
    EXPECT_NE(caveatIn(*nine, TastingCaveatKind::NotBuyers), nullptr);
}

TEST(TastingResult, OrdersAreBalancedByWholeRoundsOnly)
{
    const auto with = [](std::size_t tasters) {
        return tastingResult(closedPanel(TastingMethod::Hedonic,
                                         std::vector<std::vector<int>>(tasters, {4, 6, 8})),
                             kThreeBeds)
            .value();
    };
    EXPECT_EQ(caveatIn(with(6), TastingCaveatKind::OrderUnbalanced), nullptr);
    const TastingResult seven = with(7);
    const TastingCaveat* unbalanced = caveatIn(seven, TastingCaveatKind::OrderUnbalanced);
    ASSERT_NE(unbalanced, nullptr);
    EXPECT_EQ(unbalanced->limit, 6);
    EXPECT_EQ(caveatIn(with(50), TastingCaveatKind::NotBuyers), nullptr);
    EXPECT_NE(caveatIn(with(50), TastingCaveatKind::OneSampleEach), nullptr);
}

TEST(TastingResult, ManyAttributesLowerThePThatIsSafe)
{
    PanelRecord record = closedPanel(TastingMethod::Hedonic, {{4, 6, 8}, {3, 5, 9}, {2, 6, 7}});
    record.attributes.push_back({{2}, {}, 1, "flavour"});
    const std::size_t scored = record.scores.size();
    for (std::size_t i = 0; i < scored; ++i) {
        Score score = record.scores[i];
        score.id.value += 100;
        score.attribute = {2};
        record.scores.push_back(score);
    }
    const auto result = tastingResult(record, kThreeBeds);
    ASSERT_EQ(result->attributes.size(), 2u);
    const TastingCaveat* many = caveatIn(*result, TastingCaveatKind::ManyAttributes);
    ASSERT_NE(many, nullptr);
    EXPECT_EQ(many->count, 2);
    EXPECT_DOUBLE_EQ(many->level, 0.025);
}

TEST(TastingResult, TheChartHasADotATasterAndMarksTheMean)
{
    const auto result = tastingResult(
        closedPanel(TastingMethod::Ranking, {{3, 1, 2}, {3, 2, 1}, {2, 1, 3}}), kThreeBeds);
    const ChartSpec& chart = result->charts[0];
    EXPECT_EQ(chart.key, "ratings_by_medium");
    EXPECT_EQ(chart.form, ChartForm::DotRows);
    EXPECT_EQ(chart.rows, (std::vector<std::string>{"Mat", "Mesh", "Mix"})) << "the best first";
    EXPECT_EQ(chart.x.key, "rank");
    EXPECT_EQ(chart.x.high, 3.0);
    ASSERT_EQ(chart.series.size(), 6u);
    EXPECT_EQ(chart.series[0].points.size(), 3u);
    EXPECT_EQ(chart.series[0].marker, 1);
    EXPECT_EQ(chart.series[1].form, SeriesForm::Intervals);
    EXPECT_NEAR(chart.series[1].intervals[0].mid, 4.0 / 3, 1e-12);
    EXPECT_EQ(chart.series[4].points[0], (ChartPoint{2, 3, "Taster 1", std::nullopt, false}));
}

TEST(TastingResult, ATriangleCountsRightAnswersAgainstGuessing)
{
    // Of 5 tasters 4 have to be right at 5 % (FAO V7180E, Appendix A): p = 11/243.
    const auto four = tastingResult(closedTriangle(5, 4), bedsNamed({"Mix", "Mesh"}));
    ASSERT_TRUE(four);
    EXPECT_NEAR(four->triangle->test.p, 11.0 / 243, 1e-12);
    EXPECT_TRUE(four->triangle->isShown());
    // Once a third is taken off for guessing: (0.8 − 1/3)/(2/3).
    EXPECT_NEAR(four->triangle->test.discriminators, 0.7, 1e-12);
    EXPECT_EQ(caveatIn(*four, TastingCaveatKind::FewTasters)->limit, 4);
    const auto three = tastingResult(closedTriangle(5, 3, 1), bedsNamed({"Mix", "Mesh"}));
    EXPECT_FALSE(three->triangle->isShown());
    EXPECT_EQ(three->triangle->test.n, 5);
    EXPECT_EQ(caveatIn(*three, TastingCaveatKind::Incomplete)->names,
              std::vector<std::string>{"Taster 6"});
    EXPECT_EQ(three->triangle->tastersWanted, triangleTastersFor(0.4));
    const auto two = tastingResult(closedTriangle(2, 2), bedsNamed({"Mix", "Mesh"}));
    EXPECT_EQ(caveatIn(*two, TastingCaveatKind::FewTasters)->limit, 0) << "two can show nothing";
    const auto none = tastingResult(closedTriangle(0, 0, 3), bedsNamed({"Mix", "Mesh"}));
    EXPECT_EQ(none.error(), (fail(ErrorKind::TooFew, TastingReason::NoScores).value()));
}

TEST(TastingResult, TastersForATriangleAreTheFewestWithThePower)
{
    // By the definition, summed here term by term.
    const auto powerOf = [](int n, int needed, double right) {
        double power = 0;
        for (int k = needed; k <= n; ++k) {
            power +=
                std::exp(std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0) +
                         k * std::log(right) + (n - k) * std::log(1 - right));
        }
        return power;
    };
    const int half = triangleTastersFor(0.5).value();
    const double right = 1.0 / 3 + 2.0 / 3 * 0.5;
    EXPECT_GE(powerOf(half, stats::fewestRight(half, 1.0 / 3, 0.05).value(), right), 0.8);
    for (int n = 3; n < half; ++n) {
        EXPECT_LT(powerOf(n, stats::fewestRight(n, 1.0 / 3, 0.05).value(), right), 0.8) << n;
    }
    EXPECT_FALSE(triangleTastersFor(0));
    EXPECT_FALSE(triangleTastersFor(0.01));
    EXPECT_EQ(triangleTastersFor(1), 3);
}

} // namespace
} // namespace plumule
