#include "ui/review/season_answer.h"

#include "core/base/work_reason.h"
#include "core/journal/review/review_answers.h"
#include "core/review/answer/trial_answer.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/page/aside.h"

namespace plumule::ui {
namespace {

bool isOfYield(Response response)
{
    return response == Response::YieldPerTray || response == Response::YieldPerTraySown ||
           response == Response::YieldPerArea || response == Response::YieldPerSeed ||
           response == Response::YieldPerDay;
}

} // namespace

std::set<SeasonPart> partsBeside(Response response)
{
    if (isOfYield(response)) {
        return {SeasonPart::Paybacks, SeasonPart::Ageing};
    }
    switch (response) {
    case Response::HeightOnDay:
        return {SeasonPart::HeightFits};
    case Response::CostPerGram:
        return {SeasonPart::Paybacks};
    default:
        return {};
    }
}

void askSeason(const Services& services, const Journal& journal, const SeasonQuestion& question,
               QObject* receiver, std::function<void(const Result<SeasonAnswer>&)> done)
{
    askAside(
        services.tasks, QObject::tr("Reviewing the season"), journal,
        [question](Journal& elsewhere, const Progress& progress) {
            return elsewhere.review().season(question, progress);
        },
        receiver, std::move(done));
}

void askTrial(const Services& services, const Journal& journal, const TrialQuestion& question,
              QObject* receiver, std::function<void(const Result<TrialAnswer>&)> done)
{
    askAside(
        services.tasks, QObject::tr("Reviewing the trial"), journal,
        [question](Journal& elsewhere, const Progress& progress) {
            return elsewhere.review().trial(question, progress);
        },
        receiver, std::move(done));
}

std::optional<ChartSpec> chartBeside(const SeasonAnswer& answer, const SeasonComparison& comparison)
{
    const Response response = comparison.ask.response;
    if (response == Response::HeightOnDay) {
        const auto variety = mostReadVariety(answer.heights);
        return variety ? heightFitChart(answer.heights, *variety) : heightChart(answer.review);
    }
    if (isOfYield(response) || response == Response::CostPerGram) {
        ChartSpec byUses = paybackChart(answer.paybacks, answer.review);
        if (!byUses.series.empty()) {
            return byUses;
        }
    }
    return comparison.byTrial.size() > 1 ? std::optional<ChartSpec>()
                                         : differencesChart(comparison);
}

} // namespace plumule::ui
