#include "core/review/charts/cost_parts_chart.h"

#include "core/review/answer/costs_answer.h"
#include "tests/core/review/facts/season_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(CostPartsChart, StacksThePartsOfARow)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("B1", kMesh, 200);
    WhatIf whatIf;
    whatIf.plannedUses[kMesh] = 20;
    const CostsAnswer answer =
        costsAnswerOf({season.filter, whatIf}, std::move(season.facts), date(2026, 4, 1)).value();
    const ChartSpec spec = costPartsChart(answer.media, "EUR");
    EXPECT_EQ(spec.rows, std::vector<std::string>{"Mesh"});
    ASSERT_EQ(spec.series.size(), 3U);
    EXPECT_EQ(spec.series[0].name, "medium");
    EXPECT_EQ(spec.series[1].name, "washing");
    EXPECT_EQ(spec.series[1].intervals[0].low, spec.series[0].intervals[0].high);
    EXPECT_NEAR(spec.series[1].intervals[0].high, *answer.media[0].today.perGram(), 1e-15);
    EXPECT_EQ(spec.series[2].form, SeriesForm::Strokes);
    EXPECT_EQ(spec.series[2].intervals[0].mid, *answer.media[0].whatIf->perGram());
}

} // namespace
} // namespace plumule
