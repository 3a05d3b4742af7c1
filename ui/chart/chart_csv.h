#pragma once

#include <string>

namespace plumule {
struct ChartSpec;
}

namespace plumule::ui {

// The numbers behind a chart, a row a point or interval: series, row (its name in a dot plot), x, y
// or low, mid and high, and the point's note. RFC 4180, UTF-8, SI.
[[nodiscard]] std::string chartCsv(const ChartSpec& spec);

} // namespace plumule::ui
