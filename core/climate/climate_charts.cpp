#include "core/climate/climate_charts.h"

#include <algorithm>

namespace plumule {
namespace {

struct LineWords
{
    const char* key;
    const char* axis;
    const char* unit;
};

LineWords wordsOf(ClimateLine line)
{
    switch (line) {
    case ClimateLine::Temperature:
        return {"climate_temperature", "temperature", "°C"};
    case ClimateLine::Humidity:
        return {"climate_humidity", "humidity", "%"};
    case ClimateLine::Vpd:
        return {"climate_vpd", "vpd", "kPa"};
    case ClimateLine::DailyLight:
        return {"climate_dli", "dli", "mol/m²"};
    }
    return {"", "", ""};
}

std::optional<DayMean> valueOf(const ClimateDay& day, ClimateLine line)
{
    const auto alone = [](const std::optional<double>& value) {
        return value ? std::optional(DayMean{*value, *value, *value}) : std::nullopt;
    };
    switch (line) {
    case ClimateLine::Temperature:
        return day.temperature;
    case ClimateLine::Humidity:
        return day.humidity;
    case ClimateLine::Vpd:
        return alone(day.vpd);
    case ClimateLine::DailyLight:
        return alone(day.dli);
    }
    return std::nullopt;
}

bool hasRange(ClimateLine line)
{
    return line == ClimateLine::Temperature || line == ClimateLine::Humidity;
}

// Cuts a track into runs of days that follow each other.
class Runs
{
public:
    explicit Runs(SeriesForm form)
        : m_form(form)
    {}

    void add(int day, const std::optional<DayMean>& value)
    {
        if (!value) {
            return;
        }
        if (m_series.empty() || day != m_last + 1) {
            m_series.emplace_back();
            m_series.back().marker = -1;
            m_series.back().form = m_form;
        }
        m_last = day;
        ChartSeries& run = m_series.back();
        if (m_form == SeriesForm::Band) {
            run.intervals.push_back({double(day), value->low, value->mean, value->high});
        } else {
            run.points.push_back({double(day), value->mean, "", std::nullopt, false});
        }
    }

    // The name stands at the last run's end; a run of one day is a dot.
    [[nodiscard]] std::vector<ChartSeries> named(const std::string& name) &&
    {
        for (ChartSeries& run : m_series) {
            if (run.intervals.size() == 1) {
                run.points.push_back({run.intervals[0].x, run.intervals[0].mid, "", {}, false});
                run.intervals.clear();
            }
            if (run.points.size() == 1) {
                run.form = SeriesForm::Dots;
            }
        }
        if (!m_series.empty()) {
            m_series.back().name = name;
        }
        return std::move(m_series);
    }

private:
    SeriesForm m_form;
    std::vector<ChartSeries> m_series;
    int m_last = 0;
};

} // namespace

ChartSpec climateChart(ClimateLine line, const std::vector<ClimateTrack>& tracks, Date sownOn)
{
    const LineWords words = wordsOf(line);
    ChartSpec spec;
    spec.key = words.key;
    spec.form = ChartForm::Curves;
    spec.x.key = "day";
    spec.x.isWhole = true;
    spec.x.low = 0;
    spec.y.key = words.axis;
    spec.y.unit = words.unit;
    if (!hasRange(line)) {
        spec.y.low = 0;
    }
    const bool isBand = tracks.size() == 1 && hasRange(line);
    int lastDay = 1;
    for (const ClimateTrack& track : tracks) {
        Runs runs(isBand ? SeriesForm::Band : SeriesForm::Line);
        for (const ClimateDay& day : track.days) {
            runs.add(dayCount(sownOn, day.on), valueOf(day, line));
            lastDay = std::max(lastDay, dayCount(sownOn, day.on));
        }
        for (ChartSeries& run : std::move(runs).named(track.name)) {
            spec.series.push_back(std::move(run));
        }
    }
    spec.x.high = lastDay;
    return spec;
}

bool isEmpty(const ChartSpec& spec)
{
    return std::all_of(spec.series.begin(), spec.series.end(), [](const ChartSeries& series) {
        return series.points.empty() && series.intervals.empty();
    });
}

} // namespace plumule
