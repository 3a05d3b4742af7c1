#include "core/review/season/height_fits.h"

#include "core/stats/growth/growth_report.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

FittedNumber fittedNumber(const stats::CurveEstimate& estimate)
{
    return {estimate.estimate, estimate.lower, estimate.upper};
}

// Every half day between the first and the last reading.
std::vector<double> daysAlong(const std::vector<double>& days)
{
    const auto [first, last] = std::minmax_element(days.begin(), days.end());
    std::vector<double> along;
    for (double day = *first; day <= *last; day += 0.5) {
        along.push_back(day);
    }
    return along;
}

constexpr double kGrown = 0.9;
constexpr double kStep = 10; // mm

std::optional<stats::CurveFit> fitCurveTo(HeightFit& fit)
{
    std::vector<double> days;
    std::vector<double> heights;
    for (const HeightReading& reading : fit.readings) {
        days.push_back(reading.day);
        heights.push_back(reading.height);
    }
    const auto report = stats::growthReport(days, heights, {{}, daysAlong(days), {}});
    if (!report) {
        fit.why = report.error();
        return std::nullopt;
    }
    fit.curve = report->curveName;
    for (const stats::CurvePoint& point : report->at) {
        fit.band.push_back({point.x, point.fit, point.lower, point.upper});
    }
    // The first parameter of all three curves is the full height.
    fit.fullHeight = fittedNumber(report->parameters.front().value);
    fit.topRate = fittedNumber(report->topRate);
    fit.dayAt90 = fittedNumber(report->xAt90pct);
    fit.isFullHeightSeen = report->fullHeightSeen;
    return report->fit;
}

// `curves` stand beside the fits.
void timeSharedHeights(std::vector<HeightFit>& fits,
                       const std::vector<std::optional<stats::CurveFit>>& curves)
{
    std::map<VarietyId, double> least;
    for (const HeightFit& fit : fits) {
        if (!fit.curve.empty()) {
            double& lowest = least.try_emplace(fit.varietyId, fit.fullHeight.value).first->second;
            lowest = std::min(lowest, fit.fullHeight.value);
        }
    }
    for (std::size_t i = 0; i < fits.size(); ++i) {
        if (!curves[i]) {
            continue;
        }
        const double height = kStep * std::floor(kGrown * least.at(fits[i].varietyId) / kStep);
        if (const auto day = stats::xAtHeight(*curves[i], height)) {
            fits[i].sharedHeight = DayOfHeight{height, fittedNumber(*day)};
        }
    }
}

} // namespace

std::vector<HeightFit> heightFits(const SeasonFacts& facts, const SeasonFilter& filter)
{
    std::map<std::pair<VarietyId, MediumId>, HeightFit> fits;
    for (const SeasonRecord& record : facts.trays) {
        if (record.heights.empty() || !isCounted(record, filter)) {
            continue;
        }
        const auto heights = dailyHeights(record);
        if (heights.empty()) {
            continue;
        }
        HeightFit& fit = fits[{record.tray.variety, record.tray.medium}];
        ++fit.trays;
        for (const auto& [day, height] : heights) {
            fit.readings.push_back({record.tray.id, record.tray.code, day, height});
        }
    }
    std::vector<HeightFit> result;
    std::vector<std::optional<stats::CurveFit>> curves;
    for (auto& [key, fit] : fits) {
        const auto variety = facts.varieties.find(key.first);
        fit.varietyId = key.first;
        fit.variety = variety == facts.varieties.end() ? std::string() : variety->second;
        fit.medium = facts.media.at(key.second);
        curves.push_back(fitCurveTo(fit));
        result.push_back(std::move(fit));
    }
    timeSharedHeights(result, curves);
    return result;
}

} // namespace plumule
