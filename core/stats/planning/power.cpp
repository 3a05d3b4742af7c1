#include "core/stats/planning/power.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/root.h"

#include <cmath>
#include <functional>

namespace plumule::stats {

namespace {

constexpr double kMostTrays = 1e7;

Done checkCommon(double sd, double alpha)
{
    if (!(sd > 0) || !std::isfinite(sd)) {
        return fail(ErrorKind::Invalid, PowerReason::Spread);
    }
    if (!(alpha > 0 && alpha < 1)) {
        return fail(ErrorKind::Invalid, PowerReason::Risk);
    }
    return {};
}

Done checkWanted(double power, double alpha)
{
    if (!(power > alpha && power < 1)) {
        return fail(ErrorKind::Invalid, PowerReason::Power);
    }
    return {};
}

// Of both tails of the two-sided test.
double twoTailPower(double shift, double df, double alpha)
{
    const double critical = -tQuantile(alpha / 2, df);
    return noncentralTUpper(critical, df, std::abs(shift)) +
           noncentralTCdf(-critical, df, std::abs(shift));
}

double tPowerAt(const TPlan& plan, double n, double difference)
{
    return twoTailPower(difference / plan.sd * std::sqrt(n / 2), 2 * (n - 1), plan.alpha);
}

double fDf2(const FPlan& plan, double n)
{
    return plan.design == FDesign::RandomizedBlocks ? (n - 1) * (plan.groups - 1)
                                                    : (n - 1) * plan.groups;
}

double fPowerAt(const FPlan& plan, double n, double squares)
{
    const double df1 = plan.groups - 1;
    const double df2 = fDf2(plan, n);
    return noncentralFUpper(fQuantile(1 - plan.alpha, df1, df2), df1, df2,
                            n * squares / (plan.sd * plan.sd));
}

Done checkF(const FPlan& plan)
{
    if (plan.groups < 2) {
        return fail(ErrorKind::Invalid, PowerReason::OneGroup);
    }
    return checkCommon(plan.sd, plan.alpha);
}

Done checkCount(double n)
{
    if (std::isnan(n) || std::isinf(n)) {
        return fail(ErrorKind::Invalid, PowerReason::Count);
    }
    if (!(n > 1)) {
        return fail(ErrorKind::TooFew, PowerReason::TooFewEach);
    }
    return {};
}

// The x above `least` where the power, which rises with x, meets what is wanted.
Result<double> whereReached(const std::function<double(double)>& powerAt, double least, double most,
                            double start, double wanted)
{
    // Past `most` the search is given up.
    const auto rising = [&](double logX) {
        const double x = least + std::exp(logX);
        return x > most ? std::nan("") : powerAt(x) - wanted;
    };
    const Result<double> logX = risingRoot(rising, std::log(start), 0.5);
    if (!logX) {
        return fail(ErrorKind::NoConvergence, PowerReason::OutOfReach);
    }
    return least + std::exp(*logX);
}

Result<int> wholeCount(const Result<double>& exact, const std::function<double(double)>& powerAt,
                       double wanted)
{
    if (!exact) {
        return tl::unexpected(exact.error());
    }
    int n = std::max(2, static_cast<int>(std::ceil(*exact - 1e-9)));
    while (powerAt(n) < wanted) {
        ++n;
    }
    return n;
}

} // namespace

Result<double> tPower(const TPlan& plan, double n, double difference)
{
    if (const Done good = checkCommon(plan.sd, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkCount(n); !good) {
        return tl::unexpected(good.error());
    }
    if (!std::isfinite(difference)) {
        return fail(ErrorKind::Invalid, PowerReason::Difference);
    }
    return tPowerAt(plan, n, difference);
}

Result<double> tCountFor(const TPlan& plan, double difference, double power)
{
    if (const Done good = checkCommon(plan.sd, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkWanted(power, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (!std::isfinite(difference) || difference == 0) {
        return fail(ErrorKind::Invalid, PowerReason::Difference);
    }
    return whereReached([&](double n) { return tPowerAt(plan, n, difference); }, 1, kMostTrays, 8,
                        power);
}

Result<int> tWholeCountFor(const TPlan& plan, double difference, double power)
{
    // Where two do, the search for the exact count would run into vanishing degrees of freedom.
    const Result<double> atTwo = tPower(plan, 2, difference);
    if (atTwo && *atTwo >= power && checkWanted(power, plan.alpha)) {
        return 2;
    }
    return wholeCount(
        tCountFor(plan, difference, power), [&](double n) { return tPowerAt(plan, n, difference); },
        power);
}

Result<double> tSmallestDifference(const TPlan& plan, double n, double power)
{
    if (const Done good = checkCommon(plan.sd, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkWanted(power, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkCount(n); !good) {
        return tl::unexpected(good.error());
    }
    // Found in units of the standard error, which puts the answer near 3 for common designs.
    const double se = plan.sd / std::sqrt(n / 2);
    const Result<double> shift =
        whereReached([&](double x) { return tPowerAt(plan, n, x * se); }, 0, 1e4, 3, power);
    if (!shift) {
        return shift;
    }
    return *shift * se;
}

Result<double> tPowerOfShift(double shift, double df, double alpha)
{
    if (const Done good = checkCommon(1, alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (!std::isfinite(shift)) {
        return fail(ErrorKind::Invalid, PowerReason::Difference);
    }
    if (!(df >= 1)) {
        return fail(ErrorKind::TooFew, PowerReason::TooFewEach);
    }
    return twoTailPower(shift, df, alpha);
}

Result<double> tShiftFor(double power, double df, double alpha)
{
    if (const Done good = checkCommon(1, alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkWanted(power, alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (!(df >= 1)) {
        return fail(ErrorKind::TooFew, PowerReason::TooFewEach);
    }
    const auto powerAt = [&](double shift) { return twoTailPower(shift, df, alpha); };
    return whereReached(powerAt, 0, 1e4, 3, power);
}

Result<double> fPowerForVariance(const FPlan& plan, double n, double variance)
{
    if (const Done good = checkF(plan); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkCount(n); !good) {
        return tl::unexpected(good.error());
    }
    if (!(variance >= 0) || std::isinf(variance)) {
        return fail(ErrorKind::Invalid, PowerReason::Difference);
    }
    return fPowerAt(plan, n, variance * (plan.groups - 1));
}

Result<double> fCountForVariance(const FPlan& plan, double variance, double power)
{
    if (const Done good = checkF(plan); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkWanted(power, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (!(variance > 0) || std::isinf(variance)) {
        return fail(ErrorKind::Invalid, PowerReason::Difference);
    }
    return whereReached([&](double n) { return fPowerAt(plan, n, variance * (plan.groups - 1)); },
                        1, kMostTrays, 8, power);
}

Result<int> fWholeCountForVariance(const FPlan& plan, double variance, double power)
{
    const Result<double> atTwo = fPowerForVariance(plan, 2, variance);
    if (atTwo && *atTwo >= power && checkWanted(power, plan.alpha)) {
        return 2;
    }
    return wholeCount(
        fCountForVariance(plan, variance, power),
        [&](double n) { return fPowerAt(plan, n, variance * (plan.groups - 1)); }, power);
}

double varianceOfExtremes(int groups, double difference)
{
    return difference * difference / 2 / (groups - 1);
}

Result<double> fSmallestDifference(const FPlan& plan, double n, double power)
{
    if (const Done good = checkF(plan); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkWanted(power, plan.alpha); !good) {
        return tl::unexpected(good.error());
    }
    if (const Done good = checkCount(n); !good) {
        return tl::unexpected(good.error());
    }
    const double unit = plan.sd * std::sqrt(2 / n);
    const Result<double> difference = whereReached(
        [&](double x) { return fPowerAt(plan, n, x * x * unit * unit / 2); }, 0, 1e3, 3, power);
    if (!difference) {
        return difference;
    }
    return *difference * unit;
}

} // namespace plumule::stats
