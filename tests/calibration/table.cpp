#include "table.h"

#include <cmath>
#include <cstdio>

namespace plumule::calibration {
namespace {

std::string text(const char* format, double value)
{
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, format, value);
    return buffer;
}

std::string shown(std::optional<double> percent)
{
    return percent ? text("%.1f", *percent) : "–";
}

std::string bound(const char* sign, std::optional<double> percent)
{
    return percent ? std::string(" ") + sign + " " + text("%g", *percent) : "";
}

bool isExact(const Line& line, const Tally& tally)
{
    constexpr double kErrors = 3;
    return !line.falseExactly || std::abs(tally.falsePercent() - *line.falseExactly) <=
                                     kErrors * Tally::errorOf(*line.falseExactly, tally.sets);
}

} // namespace

bool holds(const Line& line, const Tally& tally, double errors)
{
    const auto slack = [&](std::optional<double> percent) {
        return percent ? errors * Tally::errorOf(*percent, tally.sets) : 0.0;
    };
    const auto found = tally.foundPercent();
    const auto coverage = tally.coveragePercent();
    return isExact(line, tally) &&
           !(line.falseAtMost &&
             tally.falsePercent() > *line.falseAtMost + slack(line.falseAtMost)) &&
           !(line.foundAtLeast && found.value_or(0) < *line.foundAtLeast - slack(found)) &&
           !(line.coverageAtLeast &&
             coverage.value_or(0) < *line.coverageAtLeast - slack(coverage)) &&
           !(line.coverageAtMost && coverage.value_or(0) > *line.coverageAtMost + slack(coverage));
}

void printHead()
{
    std::puts("| room | sets | false % | ± | trays as replicates: false % | found % | covered % | "
              "holds |");
    std::puts("| --- | --- | --- | --- | --- | --- | --- | --- |");
}

void printSection(const std::string& title)
{
    std::printf("| **%s** | | | | | | | |\n", title.c_str());
}

void printRow(const Line& line, const Tally& tally)
{
    const bool hasBound = line.falseAtMost || line.falseExactly || line.foundAtLeast ||
                          line.coverageAtLeast || line.coverageAtMost;
    std::printf("| %s | %d | %.1f%s | %.1f | %s | %s%s | %s%s%s | %s |\n", line.room.c_str(),
                tally.sets, tally.falsePercent(),
                (bound("≤", line.falseAtMost) + bound("=", line.falseExactly)).c_str(),
                tally.falseError(), shown(tally.oldFalsePercent()).c_str(),
                shown(tally.foundPercent()).c_str(), bound("≥", line.foundAtLeast).c_str(),
                shown(tally.coveragePercent()).c_str(), bound("≥", line.coverageAtLeast).c_str(),
                bound("≤", line.coverageAtMost).c_str(),
                !hasBound            ? "–"
                : holds(line, tally) ? "yes"
                                     : "**no**");
    std::fflush(stdout);
}

} // namespace plumule::calibration
