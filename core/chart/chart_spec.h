#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace plumule {

// What a chart shows, without a colour or a pixel: ui/chart draws it, and a test compares it.

// Labels are keys and data, not sentences: `title`, `axis` and `unit` are keys that ui words.
struct ChartPoint
{
    double x = 0;
    double y = 0;
    std::string note;                   // for the read-out: a tray's code
    std::optional<std::int64_t> target; // id of the tray it stands for
    bool isHollow = false;              // not counted, or still open
    bool isWarned = false;              // not as it was to be
    bool operator==(const ChartPoint&) const = default;
};

struct ChartInterval
{
    double x = 0; // or the row in a dot plot
    double low = 0;
    double mid = 0;
    double high = 0;
    bool operator==(const ChartInterval&) const = default;
};

enum class SeriesForm
{
    Dots, // y is the value, row by row
    Line,
    Band,      // intervals joined, with the mid line
    Intervals, // a bar from low to high with the mid marked
    Bars,      // faint, from low to high, behind the dots of curves
    Pooled,    // the same of all rows together, under a line
    Parts,     // a part of a row's bar from low to high; the marker is the part's number
    Strokes    // a mark across a row's bar
};

struct ChartSeries
{
    std::string name; // a medium's name
    int marker = 0;   // the medium's marker, -1 for none
    SeriesForm form = SeriesForm::Dots;
    std::vector<ChartPoint> points;
    std::vector<ChartInterval> intervals;
    bool isDashed = false;
    bool operator==(const ChartSeries&) const = default;
};

struct ChartAxis
{
    std::string key;  // "yield", "day", "height", "cost_per_gram", "uses"
    std::string unit; // "g", "mm", "EUR/g", ""
    std::optional<double> low;
    std::optional<double> high;
    bool isWhole = false; // whole numbers only
    bool operator==(const ChartAxis&) const = default;
};

// A line across the chart with a few words' key and its value ("pays_back", 8).
struct ChartMark
{
    std::string key;
    std::string name;
    double at = 0;
    bool isVertical = true;
    bool operator==(const ChartMark&) const = default;
};

// Words that stand at the right of a dot plot, a cell a row; ui has worded them.
struct ChartColumn
{
    std::string heading;
    std::vector<std::string> cells;
    bool operator==(const ChartColumn&) const = default;
};

enum class ChartForm
{
    DotRows, // one row a medium, the value along x
    Curves   // x against y
};

struct ChartSpec
{
    std::string key; // "yield_adjusted", "height_by_day", "cost_by_uses", "trial_so_far"
    ChartForm form = ChartForm::DotRows;
    std::vector<std::string> rows; // DotRows: names, from the top
    std::vector<ChartColumn> columns;
    int seriesARow = 1; // that stand one below another within it
    std::vector<ChartSeries> series;
    ChartAxis x;
    ChartAxis y;
    std::vector<ChartMark> marks;
    bool operator==(const ChartSpec&) const = default;
};

} // namespace plumule
