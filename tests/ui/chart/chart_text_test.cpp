#include "ui/chart/chart_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

ChartSpec specOf(const char* key)
{
    ChartSpec spec;
    spec.key = key;
    return spec;
}

TEST(ChartText, TitlesAreFoundByKeyOrByWhatItEndsWith)
{
    EXPECT_EQ(chartTitle(specOf("power_curve")), "Chance of telling two media apart");
    EXPECT_EQ(chartTitle(specOf("yield_by_trial")), "Do the trials agree?");
    EXPECT_EQ(chartTitle(specOf("work_by_trial")), "Do the trials agree?");
    EXPECT_EQ(chartTitle(specOf("yield_by_block")), "Block by block, each dot a tray");
    EXPECT_TRUE(chartTitle(specOf("cost_differences")).startsWith("Differences between media"));
    EXPECT_EQ(chartTitle(specOf("never_heard_of")), "never heard of") << "at least in words";
}

TEST(ChartText, AxesNameTheirUnit)
{
    EXPECT_EQ(axisTitle({"yield", "g", {}, {}, false}), "g per tray");
    EXPECT_EQ(axisTitle({"cost_per_gram", "EUR/kg", {}, {}, false}), "cost, EUR/kg");
    EXPECT_EQ(axisTitle({"day", "", {}, {}, true}), "day of growth");
    EXPECT_EQ(axisTitle({"new_key", "g", {}, {}, false}), "new key");
}

TEST(ChartText, MarksAreSaidInWords)
{
    EXPECT_EQ(markText({"pays_back", "Steel mesh", 8, true}), "Steel mesh pays back at use 8");
    EXPECT_EQ(markText({"power_wanted", "", 80, false}), "80%, four times in five");
    EXPECT_EQ(markText({"anything", "as named", 3, true}), "as named");
}

TEST(ChartText, TheMarginIsSaidOnceAndAsExactlyAsElsewhere)
{
    EXPECT_EQ(markText({"margin", "", 10, true}), QString::fromUtf8("your margin, ±10 %"));
    EXPECT_EQ(markText({"margin", "", 2.5, true}), QString::fromUtf8("your margin, ±2.5 %"));
    EXPECT_EQ(markText({"margin", "", -9.0909, true}), "");
}

TEST(ChartText, DescribesRowsByTheirMeans)
{
    ChartSpec spec = specOf("yield_adjusted");
    ChartSeries mesh;
    mesh.name = "Steel mesh";
    mesh.form = SeriesForm::Intervals;
    mesh.intervals = {{0, 120, 140, 161.256}};
    ChartSeries alone = mesh;
    alone.name = "Felt";
    alone.intervals = {{1, 99, 99, 99}};
    ChartSeries dots = mesh;
    dots.name = "Dots";
    dots.form = SeriesForm::Dots;
    ChartSeries empty = mesh;
    empty.name = "Empty";
    empty.intervals.clear();
    spec.series = {mesh, alone, dots, empty};
    spec.marks = {{"margin", "", -9.09, true}, {"margin", "", 10, true}};
    EXPECT_EQ(chartDescription(spec),
              QString::fromUtf8("Yield by medium, each dot a tray; adjusted means. Steel mesh: "
                                "mean 140.00, 120.00 to 161.26. Felt: mean 99.00. your margin, "
                                "±10 %."));
    spec.form = ChartForm::Curves;
    spec.marks.clear();
    EXPECT_EQ(chartDescription(spec), "Yield by medium, each dot a tray; adjusted means.");
}

} // namespace
} // namespace plumule::ui
