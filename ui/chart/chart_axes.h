#pragma once

#include "core/chart/chart_spec.h"

class QAbstractSeries;
class QChart;

namespace plumule::ui {

// The axes of a dot plot: values along x, the rows' names at the left.
void addRowAxes(QChart& chart, QAbstractSeries& carrier, const ChartSpec& spec);
// The axes of curves, attached to every series of the chart.
void addCurveAxes(QChart& chart, const ChartSpec& spec);

} // namespace plumule::ui
