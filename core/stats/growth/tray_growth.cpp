#include "core/stats/growth/tray_growth.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace plumule::stats {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kAsGood = 4; // of AICc

struct Points
{
    std::vector<double> x;
    std::vector<double> y;
};

// Where the interval of one number of a report is kept; nowhere for a height never reached.
struct Place
{
    double* se = nullptr;
    double* lower = nullptr;
    double* upper = nullptr;
};

Place placeOf(CurveEstimate& of)
{
    return {&of.se, &of.lower, &of.upper};
}

// Those that all curves have, full height first; then the parameters of this one.
std::vector<Place> placesOf(GrowthReport& report)
{
    std::vector<Place> places{placeOf(report.parameters.front().value)};
    for (CurvePoint& point : report.at) {
        places.push_back({&point.se, &point.lower, &point.upper});
    }
    for (TimeToHeight& time : report.toHeight) {
        places.push_back(time.x ? placeOf(*time.x) : Place());
    }
    places.push_back(placeOf(report.topRate));
    places.push_back(placeOf(report.xAt90pct));
    for (std::size_t i = 1; i < report.parameters.size(); ++i) {
        places.push_back(placeOf(report.parameters[i].value));
    }
    return places;
}

// What stands in those places, by another fit of the same curve.
std::vector<double> numbersOf(const CurveFit& fit, const GrowthReport& report)
{
    std::vector<double> numbers{fit.estimates.front()};
    for (const CurvePoint& point : report.at) {
        numbers.push_back(fit.model->value(point.x, fit.estimates, {}));
    }
    for (const TimeToHeight& time : report.toHeight) {
        const auto x = xAtHeight(fit, time.height);
        numbers.push_back(x ? x->estimate : kUnknown);
    }
    numbers.push_back(fit.model->topRate(fit.estimates, {}));
    numbers.push_back(fit.model->xAtFraction(0.9, fit.estimates, {}));
    numbers.insert(numbers.end(), fit.estimates.begin() + 1, fit.estimates.end());
    return numbers;
}

// Trays or sowings that are left out in turn. What differs between strata is no noise.
struct Groups
{
    explicit Groups(std::span<const TrayReading> readings)
    {
        std::map<std::size_t, std::set<std::size_t>> traysOf;
        for (const TrayReading& reading : readings) {
            traysOf[reading.sowing].insert(reading.tray);
        }
        sowings = traysOf.size();
        replicate = sowings < 3 ? GrowthReplicate::Tray : GrowthReplicate::Sowing;
        std::vector<std::size_t> numbers;
        for (const auto& [sowing, ofSowing] : traysOf) {
            trays += ofSowing.size();
            numbers.push_back(sowing);
            if (replicate == GrowthReplicate::Tray) {
                strata.emplace_back(ofSowing.begin(), ofSowing.end());
            }
        }
        if (replicate == GrowthReplicate::Sowing) {
            strata.push_back(std::move(numbers));
        }
    }

    [[nodiscard]] int df() const
    {
        std::size_t count = 0;
        for (const auto& stratum : strata) {
            count += stratum.size() - 1;
        }
        return static_cast<int>(count);
    }

    [[nodiscard]] Points without(std::size_t group, std::span<const TrayReading> readings) const
    {
        Points points;
        for (const TrayReading& reading : readings) {
            const bool isOfSowing = replicate == GrowthReplicate::Sowing;
            if ((isOfSowing ? reading.sowing : reading.tray) != group) {
                points.x.push_back(reading.x);
                points.y.push_back(reading.y);
            }
        }
        return points;
    }

    std::size_t trays = 0;
    std::size_t sowings = 0;
    GrowthReplicate replicate = GrowthReplicate::Tray;
    std::vector<std::vector<std::size_t>> strata;
};

void addSpread(std::vector<double>& variances, const std::vector<std::vector<double>>& without)
{
    const auto groups = static_cast<double>(without.size());
    for (std::size_t i = 0; i < variances.size() && !without.empty(); ++i) {
        double mean = 0;
        for (const auto& numbers : without) {
            mean += numbers[i] / groups;
        }
        for (const auto& numbers : without) {
            variances[i] += (groups - 1) / groups * std::pow(numbers[i] - mean, 2);
        }
    }
}

// Nothing where the curve can't be fitted without one of the groups.
std::optional<std::vector<double>> variancesOf(const GrowthReport& report, const Groups& groups,
                                               std::span<const TrayReading> readings)
{
    std::vector<double> variances(numbersOf(report.fit, report).size());
    for (const auto& stratum : groups.strata) {
        std::vector<std::vector<double>> without;
        for (const std::size_t group : stratum) {
            if (stratum.size() < 2) {
                continue;
            }
            const Points points = groups.without(group, readings);
            // From the curve of all it is never far.
            const auto fit =
                fitCurve(report.fit.model, points.x, points.y, std::array{report.fit.estimates});
            if (!fit) {
                return std::nullopt;
            }
            without.push_back(numbersOf(*fit, report));
        }
        addSpread(variances, without);
    }
    return variances;
}

// Where groups repeat less well than readings do.
bool widenIntervals(GrowthReport& report, const Groups& groups,
                    std::span<const TrayReading> readings, double level)
{
    const auto variances = groups.trays < 3 ? std::nullopt : variancesOf(report, groups, readings);
    const double reach = variances ? tQuantile(0.5 + level / 2, groups.df()) : kUnknown;
    const std::vector<Place> places = placesOf(report);
    const std::vector<double> numbers = numbersOf(report.fit, report);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double se = variances ? std::sqrt((*variances)[i]) : kUnknown;
        if (places[i].se == nullptr || reach * se < *places[i].upper - numbers[i]) {
            continue;
        }
        *places[i].se = se;
        *places[i].lower = numbers[i] - reach * se;
        *places[i].upper = numbers[i] + reach * se;
    }
    return variances.has_value();
}

// In the numbers that all curves have.
void holdAlso(GrowthReport& report, GrowthReport& rival)
{
    const std::vector<Place> places = placesOf(report);
    const std::vector<Place> others = placesOf(rival);
    const std::size_t shared = places.size() + 1 - report.parameters.size();
    for (std::size_t i = 0; i < shared; ++i) {
        if (places[i].se == nullptr) {
            continue;
        }
        if (others[i].se == nullptr) {
            *places[i].upper = kNever;
            continue;
        }
        *places[i].lower = std::min(*places[i].lower, *others[i].lower);
        *places[i].upper = std::max(*places[i].upper, *others[i].upper);
    }
}

Points pointsOf(std::span<const TrayReading> readings)
{
    Points points;
    for (const TrayReading& reading : readings) {
        points.x.push_back(reading.x);
        points.y.push_back(reading.y);
    }
    return points;
}

void holdRivals(GrowthReport& report, const Groups& groups, std::span<const TrayReading> readings,
                GrowthAsk ask)
{
    const Points points = pointsOf(readings);
    for (const GrowthCurve curve : {GrowthCurve::Logistic, GrowthCurve::Gompertz}) {
        if (curve == report.curve) {
            continue;
        }
        ask.curve = curve;
        auto rival = growthReport(points.x, points.y, ask);
        if (rival && rival->aicc && report.aicc && *rival->aicc - *report.aicc < kAsGood &&
            widenIntervals(*rival, groups, readings, ask.level)) {
            holdAlso(report, *rival);
        }
    }
}

} // namespace

Result<TrayGrowth> trayGrowth(std::span<const TrayReading> readings, const GrowthAsk& ask)
{
    const Points points = pointsOf(readings);
    auto report = growthReport(points.x, points.y, ask);
    if (!report) {
        return passOn(report);
    }
    const Groups groups(readings);
    TrayGrowth growth{*std::move(report), groups.trays, groups.sowings, groups.replicate, false};
    growth.hasIntervals = widenIntervals(growth.report, groups, readings, ask.level);
    if (growth.hasIntervals && !ask.curve) {
        holdRivals(growth.report, groups, readings, ask);
    }
    return growth;
}

} // namespace plumule::stats
