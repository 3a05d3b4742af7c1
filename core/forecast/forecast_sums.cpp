#include "core/forecast/forecast_sums.h"

#include "core/forecast/foretelling.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

// Common practice, no source; it weighs as much as that many trays.
constexpr double kUsualDiscards = 0.05;
constexpr double kUsualWeight = 8;
// The room's rate beside what is known of one variety on one medium.
constexpr double kRoomWeight = 10;

const VarietyScore* scoreIn(const std::vector<VarietyScore>& scores, VarietyId variety)
{
    const auto found = std::find_if(scores.begin(), scores.end(), [&](const VarietyScore& score) {
        return score.variety == variety;
    });
    return found == scores.end() ? nullptr : &*found;
}

std::vector<VarietyScore> scoresByName(const ForecastFacts& facts,
                                       const std::vector<ScoredForecast>& scored)
{
    std::set<std::pair<std::string, VarietyId>> varieties;
    for (const ScoredForecast& one : scored) {
        if (one.isYieldScored() || one.isDayScored()) {
            const VarietyId variety = one.forecast.variety;
            varieties.insert({facts.varieties.at(variety), variety});
        }
    }
    std::vector<VarietyScore> scores;
    scores.reserve(varieties.size());
    for (const auto& [name, variety] : varieties) {
        scores.push_back(scoreOf(scored, variety));
    }
    return scores;
}

} // namespace

double ForecastReport::yieldWidened(VarietyId variety) const
{
    const VarietyScore* own = scoreIn(scores, variety);
    return own && own->harvests >= kFewestForOwnPast ? own->yieldWidened : all.yieldWidened;
}

double ForecastReport::dayWidened(VarietyId variety) const
{
    const VarietyScore* own = scoreIn(scores, variety);
    return own && own->days >= kFewestForOwnPast ? own->dayWidened : all.dayWidened;
}

ForecastReport forecastReport(const ForecastFacts& facts)
{
    ForecastReport report;
    report.scored = latestForecasts(facts);
    report.scores = scoresByName(facts, report.scored);
    report.all = scoreOf(report.scored, std::nullopt);
    report.unscored = static_cast<int>(report.scored.size()) - report.all.harvests;
    const KnownPast past(facts);
    for (const TrayFact& tray : facts.trays) {
        if (tray.isGrowing()) {
            report.growing.push_back(
                foretell(past, tray, facts.now,
                         {report.yieldWidened(tray.variety), report.dayWidened(tray.variety)}));
        }
    }
    const auto dayOf = [](const TrayForecast& one) {
        return one.day ? one.day->middle : Date{std::numeric_limits<std::int32_t>::max()};
    };
    std::stable_sort(report.growing.begin(), report.growing.end(),
                     [&](const TrayForecast& a, const TrayForecast& b) {
                         return std::pair(dayOf(a), a.code) < std::pair(dayOf(b), b.code);
                     });
    return report;
}

YieldModels::YieldModels(const ForecastFacts& facts, const ForecastReport& report)
    : m_report(report)
    , m_past(facts)
{}

const YieldModel& YieldModels::of(VarietyId variety, MediumId medium)
{
    const ForecastCell cell{variety, medium};
    const auto found = m_models.find(cell);
    return found != m_models.end() ? found->second
                                   : m_models.emplace(cell, made(cell)).first->second;
}

YieldModel YieldModels::made(const ForecastCell& cell) const
{
    const auto [variety, medium] = cell;
    const CellPrediction prediction = widened(m_past.yield(cell), m_report.yieldWidened(variety));
    const CellEnds room = m_past.endsOfRoom();
    const CellEnds own = m_past.ends(cell);
    const double ofRoom =
        (room.discarded + kUsualDiscards * kUsualWeight) / (room.ended + kUsualWeight);
    YieldModel model;
    model.variety = variety;
    model.medium = medium;
    model.basis = prediction.basis;
    model.logMean = prediction.next.mean;
    model.meanVariance = prediction.next.meanVariance;
    model.sowingVariance = prediction.next.groupVariance;
    model.trayVariance = prediction.next.valueVariance;
    model.degreesOfFreedom = prediction.next.degreesOfFreedom;
    model.discarded = own.discarded;
    model.ended = own.ended;
    model.discardWeight = own.ended + kRoomWeight;
    model.discardRate = (own.discarded + kRoomWeight * ofRoom) / model.discardWeight;
    return model;
}

YieldForecast yieldOf(const YieldModel& model)
{
    CellPrediction prediction;
    prediction.next = {model.logMean, model.meanVariance, model.sowingVariance, model.trayVariance,
                       model.degreesOfFreedom};
    prediction.basis = model.basis;
    return yieldFrom(prediction);
}

} // namespace plumule
