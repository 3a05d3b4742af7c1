#include "core/review/season/height_fits.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace plumule {
namespace {

FittedNumber fittedNumber(const stats::CurveEstimate& estimate)
{
    // An upper end is missing where a curve as good never comes to that height.
    if (!std::isfinite(estimate.lower) || !std::isfinite(estimate.upper)) {
        return {estimate.estimate, {}, {}};
    }
    return {estimate.estimate, estimate.lower, estimate.upper};
}

// Every half day between the first and the last reading.
std::vector<double> daysAlong(const std::vector<HeightReading>& readings)
{
    const auto [first, last] =
        std::minmax_element(readings.begin(), readings.end(),
                            [](const auto& a, const auto& b) { return a.day < b.day; });
    std::vector<double> along;
    for (double day = first->day; day <= last->day; day += 0.5) {
        along.push_back(day);
    }
    return along;
}

constexpr double kGrown = 0.9;
constexpr double kStep = 10; // mm

// A fit with what is needed while it is worked out.
struct FitInWork
{
    HeightFit fit;
    std::vector<stats::TrayReading> readings;
    std::optional<stats::GrowthReport> report;
};

double lastDay(const FitInWork& work)
{
    return std::max_element(work.readings.begin(), work.readings.end(),
                            [](const auto& a, const auto& b) { return a.x < b.x; })
        ->x;
}

void fitCurveTo(FitInWork& work, const stats::GrowthAsk& ask)
{
    HeightFit& fit = work.fit;
    std::set<std::size_t> sowings;
    for (const stats::TrayReading& reading : work.readings) {
        sowings.insert(reading.sowing);
    }
    fit.sowings = static_cast<int>(sowings.size());
    const auto growth = stats::trayGrowth(work.readings, ask);
    if (!growth) {
        fit.why = growth.error();
        return;
    }
    const stats::GrowthReport& report = growth->report;
    fit.replicate = growth->replicate;
    fit.curve = report.curveName;
    for (const stats::CurvePoint& point : report.at) {
        fit.band.push_back({point.x, point.fit, growth->hasIntervals ? point.lower : point.fit,
                            growth->hasIntervals ? point.upper : point.fit});
    }
    fit.topRate = fittedNumber(report.topRate);
    if (report.fullHeightSeen) {
        // The first parameter of all three curves is the full height.
        fit.fullHeight = fittedNumber(report.parameters.front().value);
        fit.dayAt90 = fittedNumber(report.xAt90pct);
    }
    work.report = report;
}

// The height that a medium surely came to, as its curve has it.
double reachedHeight(const FitInWork& work)
{
    const stats::CurveFit& curve = work.report->fit;
    return std::min(kGrown * curve.estimates.front(),
                    curve.model->value(lastDay(work), curve.estimates, {}));
}

void timeSharedHeights(std::vector<FitInWork>& works)
{
    std::map<VarietyId, double> least;
    for (const FitInWork& work : works) {
        if (work.report) {
            const double reached = reachedHeight(work);
            double& lowest = least.try_emplace(work.fit.varietyId, reached).first->second;
            lowest = std::min(lowest, reached);
        }
    }
    for (FitInWork& work : works) {
        if (!work.report) {
            continue;
        }
        const double height = kStep * std::floor(least.at(work.fit.varietyId) / kStep);
        const auto growth = stats::trayGrowth(work.readings, {{}, {}, {height}});
        if (growth && growth->report.toHeight.front().x) {
            work.fit.sharedHeight =
                DayOfHeight{height, fittedNumber(*growth->report.toHeight.front().x)};
        }
    }
}

// Trays outside trials are sown together when they are sown on one day.
class SowingNumbers
{
public:
    std::size_t numberOf(const Tray& tray)
    {
        const std::pair key(tray.trial.value_or(TrialId()), tray.trial ? Date() : tray.sownOn);
        return m_numbers.try_emplace(key, m_numbers.size()).first->second;
    }

private:
    std::map<std::pair<TrialId, Date>, std::size_t> m_numbers;
};

std::map<std::pair<VarietyId, MediumId>, FitInWork> readingsOf(const SeasonFacts& facts,
                                                               const SeasonFilter& filter)
{
    std::map<std::pair<VarietyId, MediumId>, FitInWork> works;
    SowingNumbers sowings;
    for (std::size_t tray = 0; tray < facts.trays.size(); ++tray) {
        const SeasonRecord& record = facts.trays[tray];
        if (record.heights.empty() || !isCounted(record, filter)) {
            continue;
        }
        const auto heights = dailyHeights(record);
        if (heights.empty()) {
            continue;
        }
        FitInWork& work = works[{record.tray.variety, record.tray.medium}];
        ++work.fit.trays;
        for (const auto& [day, height] : heights) {
            work.fit.readings.push_back({record.tray.id, record.tray.code, day, height});
            work.readings.push_back(
                {static_cast<double>(day), height, tray, sowings.numberOf(record.tray)});
        }
    }
    return works;
}

} // namespace

std::vector<HeightFit> heightFits(const SeasonFacts& facts, const SeasonFilter& filter)
{
    std::vector<FitInWork> works;
    auto readings = readingsOf(facts, filter);
    for (auto& [key, work] : readings) {
        const auto variety = facts.varieties.find(key.first);
        work.fit.varietyId = key.first;
        work.fit.variety = variety == facts.varieties.end() ? std::string() : variety->second;
        work.fit.medium = facts.media.at(key.second);
        fitCurveTo(work, {{}, daysAlong(work.fit.readings), {}});
        works.push_back(std::move(work));
    }
    timeSharedHeights(works);
    std::vector<HeightFit> result;
    result.reserve(works.size());
    for (FitInWork& work : works) {
        result.push_back(std::move(work.fit));
    }
    return result;
}

} // namespace plumule
