#include "core/chart/chart_spec.h"
#include "core/exchange/csv.h"
#include "ui/chart/chart_csv.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

using Rows = std::vector<std::vector<std::string>>;

TEST(ChartCsv, NamesTheRowsOfADotPlot)
{
    ChartSpec spec;
    spec.form = ChartForm::DotRows;
    spec.rows = {"Mix, coarse", "Mesh"};
    ChartSeries dots{"Mesh", 1, SeriesForm::Dots, {{1, 312.5, "RD007", 7, false}}, {}, false};
    ChartSeries mean{"Mesh", 1, SeriesForm::Intervals, {}, {{1, 300, 310.25, 320}}, false};
    spec.series = {dots, mean};
    const auto read = csvFrom(chartCsv(spec));
    ASSERT_TRUE(read.has_value());
    EXPECT_EQ(read->header,
              (std::vector<std::string>{"series", "row", "value", "low", "high", "note"}));
    EXPECT_EQ(read->rows, (Rows{{"Mesh", "Mesh", "312.5", "", "", "RD007"},
                                {"Mesh", "Mesh", "310.25", "300", "320", ""}}));
}

TEST(ChartCsv, GivesXAndYOfACurve)
{
    ChartSpec spec;
    spec.form = ChartForm::Curves;
    spec.series = {{"Mix",
                    0,
                    SeriesForm::Line,
                    {{1, 0.5, "", {}, false}, {2.5, 0.25, "", {}, false}},
                    {},
                    false}};
    const auto read = csvFrom(chartCsv(spec));
    ASSERT_TRUE(read.has_value());
    EXPECT_EQ(read->header[1], "x");
    EXPECT_EQ(read->rows,
              (Rows{{"Mix", "1", "0.5", "", "", ""}, {"Mix", "2.5", "0.25", "", "", ""}}));
}

} // namespace
} // namespace plumule::ui
