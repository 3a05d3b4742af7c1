#include "ui/chart/chart_csv.h"

#include "core/chart/chart_spec.h"
#include "core/exchange/csv.h"

#include <QString>

#include <cmath>

namespace plumule::ui {
namespace {

std::string csvNumber(double value)
{
    return QString::number(value, 'g', 10).toStdString();
}

std::string rowName(const ChartSpec& spec, double row)
{
    const auto index = static_cast<std::size_t>(std::lround(std::max(0.0, row)));
    return index < spec.rows.size() ? spec.rows[index] : std::string();
}

} // namespace

std::string chartCsv(const ChartSpec& spec)
{
    const bool isRows = spec.form == ChartForm::DotRows;
    std::string text = csvLine({"series", isRows ? "row" : "x", "value", "low", "high", "note"});
    for (const ChartSeries& series : spec.series) {
        for (const ChartPoint& point : series.points) {
            text += csvLine({series.name, isRows ? rowName(spec, point.x) : csvNumber(point.x),
                             csvNumber(point.y), "", "", point.note});
        }
        for (const ChartInterval& each : series.intervals) {
            text += csvLine({series.name, isRows ? rowName(spec, each.x) : csvNumber(each.x),
                             csvNumber(each.mid), csvNumber(each.low), csvNumber(each.high), ""});
        }
    }
    return text;
}

} // namespace plumule::ui
