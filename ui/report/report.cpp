#include "ui/report/report.h"

#include "ui/chart/chart_view.h"

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kChartWide = 760;

bool isEmpty(const ReportHeading& heading)
{
    return heading.text.isEmpty();
}
bool isEmpty(const ReportWords& words)
{
    return words.text.trimmed().isEmpty();
}
bool isEmpty(const ReportList& list)
{
    return list.items.isEmpty();
}
bool isEmpty(const ReportCaution& caution)
{
    return caution.lines.isEmpty();
}
bool isEmpty(const ReportFigures& figures)
{
    return figures.figures.empty();
}
bool isEmpty(const ReportTable& table)
{
    return table.rows.empty();
}
bool isEmpty(const ReportChart& chart)
{
    return std::all_of(chart.spec.series.begin(), chart.spec.series.end(),
                       [](const ChartSeries& series) {
                           return series.points.empty() && series.intervals.empty();
                       });
}
bool isEmpty(const ReportPictures& pictures)
{
    return pictures.pictures.empty();
}

// Rows want their own room, curves a calm shape.
QSize chartSize(const ChartSpec& spec)
{
    const int rows = static_cast<int>(spec.rows.size());
    return {kChartWide,
            spec.form == ChartForm::DotRows ? std::clamp(70 + 44 * rows, 140, 560) : 290};
}

} // namespace

void Report::add(ReportBlock block)
{
    if (!std::visit([](const auto& each) { return isEmpty(each); }, block)) {
        blocks.push_back(std::move(block));
    }
}

std::vector<DrawnChart> chartsOf(const Report& report)
{
    std::vector<DrawnChart> charts;
    for (const ReportBlock& block : report.blocks) {
        if (const auto* chart = std::get_if<ReportChart>(&block)) {
            ChartView view;
            view.draw(chart->spec);
            const QSize size = chartSize(chart->spec);
            charts.push_back({size, view.toPicture(size), view.toSvg(size)});
        }
    }
    return charts;
}

} // namespace plumule::ui
