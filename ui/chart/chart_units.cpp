#include "ui/chart/chart_units.h"

#include "core/base/quantity.h"
#include "ui/text/text.h"

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

constexpr double kSquareMetresPerSquareFoot = 0.09290304; // NIST Handbook 44, appendix C

struct ShownUnit
{
    double factor = 1;
    std::string name;
    double offset = 0; // added last: of temperatures

    void turn(double& value) const { value = value * factor + offset; }
};

// The largest value along the axis that has the unit.
double largestOf(const ChartSpec& spec)
{
    double largest = 0;
    for (const ChartSeries& series : spec.series) {
        for (const ChartPoint& point : series.points) {
            largest = std::max(largest, std::abs(point.y));
        }
        for (const ChartInterval& interval : series.intervals) {
            largest = std::max(largest, std::abs(interval.mid));
        }
    }
    return largest;
}

ShownUnit shownUnit(const ChartSpec& spec, const std::string& unit, UnitSystem units)
{
    if (unit.size() > 2 && unit.ends_with("/g") && unit != "g/g") {
        const QString currency = QString::fromStdString(unit.substr(0, unit.size() - 2));
        const CostUnit cost = costUnitOf(largestOf(spec), currency, units);
        return {cost.ofAGram, cost.name.toStdString()};
    }
    if (units == UnitSystem::Metric) {
        return {1, unit};
    }
    const double ouncesAGram = inOunces(grams(1000)) / 1000;
    if (unit == "g") {
        return {ouncesAGram, "oz"};
    }
    if (unit == "g/m²") {
        return {ouncesAGram * kSquareMetresPerSquareFoot, "oz/ft²"};
    }
    if (unit == "g/d") {
        return {ouncesAGram, "oz/d"};
    }
    if (unit == "g/g") {
        return {1, "oz/oz"};
    }
    if (unit == "°C") {
        return {1.8, "°F", 32};
    }
    return unit == "mm" ? ShownUnit{1 / kMillimetresPerInch, "in"} : ShownUnit{1, unit};
}

void turn(ChartAxis& axis, const ShownUnit& unit)
{
    axis.unit = unit.name;
    for (auto* bound : {&axis.low, &axis.high}) {
        if (*bound) {
            unit.turn(**bound);
        }
    }
}

} // namespace

ChartSpec shownIn(ChartSpec spec, UnitSystem units)
{
    // In rows the value is along x, though the points hold it as y.
    ChartAxis& values = spec.form == ChartForm::DotRows ? spec.x : spec.y;
    const ShownUnit unit = shownUnit(spec, values.unit, units);
    if (unit.name == values.unit) {
        return spec;
    }
    turn(values, unit);
    for (ChartSeries& series : spec.series) {
        for (ChartPoint& point : series.points) {
            unit.turn(point.y);
        }
        for (ChartInterval& interval : series.intervals) {
            for (double* value : {&interval.low, &interval.mid, &interval.high}) {
                unit.turn(*value);
            }
        }
    }
    const bool isAcross = spec.form == ChartForm::DotRows;
    for (ChartMark& mark : spec.marks) {
        if (mark.isVertical == isAcross) {
            unit.turn(mark.at);
        }
    }
    return spec;
}

} // namespace plumule::ui
