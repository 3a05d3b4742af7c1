#include "core/forecast/foretelling.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

// So little is left of the distribution that no day is likelier than another.
constexpr double kNothingLeft = 1e-9;
constexpr int kLongestWait = 400; // days

// The chance of each whole day, given that the cut comes after `now`.
class DayChances
{
public:
    DayChances(const stats::NestedPrediction& next, Moment planned, Moment now)
        : m_next(next)
        , m_planned(planned)
        , m_now(now)
        , m_left(after(now))
    {}

    [[nodiscard]] bool isNothingLeft() const { return m_left < kNothingLeft; }
    [[nodiscard]] double of(Date day) const
    {
        const Moment begins = std::max(Moment{day, 0}, m_now);
        return day < m_now.date ? 0 : (after(begins) - after({day + 1, 0})) / m_left;
    }

private:
    [[nodiscard]] double after(Moment moment) const
    {
        const double days = static_cast<double>(moment - m_planned) / kMinutesPerDay;
        return stats::tUpper((days - m_next.mean) / std::sqrt(m_next.variance()),
                             m_next.degreesOfFreedom);
    }

    const stats::NestedPrediction& m_next;
    Moment m_planned;
    Moment m_now;
    double m_left;
};

// The distribution has one summit.
Date likeliestFrom(const DayChances& chances, Date near)
{
    while (chances.of(near + 1) > chances.of(near)) {
        near = near + 1;
    }
    while (chances.of(near - 1) > chances.of(near)) {
        near = near - 1;
    }
    return near;
}

} // namespace

YieldForecast yieldFrom(const CellPrediction& prediction)
{
    const stats::NestedPrediction& next = prediction.next;
    const double half = stats::tQuantile((1 + kForecastLevel) / 2, next.degreesOfFreedom) *
                        std::sqrt(next.variance());
    return {grams(std::exp(next.mean - half)), grams(std::exp(next.mean)),
            grams(std::exp(next.mean + half)), prediction.basis};
}

CutPlan cutPlan(const std::vector<StageFact>& stages, Moment sownAt, Moment now)
{
    std::size_t current = 0;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        current = stages[i].started ? i : current;
    }
    const StageFact& stage = stages[current];
    const Moment started = stage.started.value_or(sownAt);
    std::int64_t later = 0;
    for (std::size_t i = current + 1; i < stages.size(); ++i) {
        later += stages[i].lengthMinutes;
    }
    CutPlan plan;
    plan.from = stage.stage;
    plan.planned = started + (stage.lengthMinutes + later);
    plan.notBefore = now;
    plan.asPlanned = plan.planned.date;
    const Moment ends = started + (std::int64_t{stage.lengthMinutes} + stage.delayMinutes);
    const bool isLast = current + 1 == stages.size();
    if (stage.delayMinutes != 0 && !isLast) {
        plan.from = stages[current + 1].stage;
        plan.planned = std::max(ends, now) + later;
    } else if (stage.delayMinutes != 0) {
        plan.planned = ends;
    } else if (now > ends) {
        plan.notBefore = now + later;
    }
    return plan;
}

DayForecast dayFrom(const CellPrediction& prediction, const CutPlan& plan)
{
    DayForecast forecast;
    forecast.asPlanned = plan.asPlanned;
    forecast.basis = prediction.basis;
    const Moment now = plan.notBefore;
    const DayChances chances(prediction.next, plan.planned, now);
    if (chances.isNothingLeft()) {
        forecast.low = forecast.middle = forecast.high = now.date;
        forecast.chance = 1;
        return forecast;
    }
    const auto late = std::llround(prediction.next.mean * kMinutesPerDay);
    forecast.middle = likeliestFrom(chances, std::max(now, plan.planned + late).date);
    forecast.low = forecast.high = forecast.middle;
    forecast.chance = chances.of(forecast.middle);
    for (int day = 0; day < kLongestWait && forecast.chance < kForecastLevel; ++day) {
        const double before = chances.of(forecast.low - 1);
        const double after = chances.of(forecast.high + 1);
        if (before > after) {
            forecast.low = forecast.low - 1;
        } else {
            forecast.high = forecast.high + 1;
        }
        forecast.chance += std::max(before, after);
    }
    return forecast;
}

CellPrediction widened(CellPrediction prediction, double times)
{
    if (prediction.basis.from == ForecastSource::OwnPast && times > 1) {
        prediction.next = prediction.next.widened(times);
        prediction.basis.widened = times;
    }
    return prediction;
}

TrayForecast foretell(const KnownPast& past, const TrayFact& tray, Moment now, Widening widening)
{
    const ForecastCell cell{tray.variety, tray.medium};
    TrayForecast forecast;
    forecast.tray = tray.tray;
    forecast.code = tray.code;
    forecast.variety = tray.variety;
    forecast.medium = tray.medium;
    forecast.sownOn = tray.sownAt.date;
    forecast.yield = yieldFrom(widened(past.yield(cell), widening.yield));
    if (!tray.stages.empty()) {
        const CutPlan plan = cutPlan(tray.stages, tray.sownAt, now);
        forecast.day = dayFrom(widened(past.days(cell, plan.from), widening.day), plan);
    }
    return forecast;
}

} // namespace plumule
