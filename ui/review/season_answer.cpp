#include "ui/review/season_answer.h"

#include "core/base/work_reason.h"
#include "core/journal/review/review_answers.h"
#include "core/review/answer/trial_answer.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"

namespace plumule::ui {
namespace {

bool isOfYield(Response response)
{
    return response == Response::YieldPerTray || response == Response::YieldPerTraySown ||
           response == Response::YieldPerArea || response == Response::YieldPerSeed ||
           response == Response::YieldPerDay;
}

// Runs `ask` on a journal of the worker's own.
template <class Answer, class Ask>
void askElsewhere(const Services& services, const QString& name, const Journal& journal, Ask ask,
                  QObject* receiver, std::function<void(const Result<Answer>&)> done)
{
    services.tasks.run(
        name,
        [path = journal.path(), &clock = journal.clock(),
         ask](const Progress& progress) -> Result<Answer> {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            if (!opened) {
                return passOn(opened);
            }
            return ask((*opened)->review(), progress);
        },
        receiver, std::move(done));
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
    askElsewhere<SeasonAnswer>(
        services, QObject::tr("Reviewing the season"), journal,
        [question](ReviewAnswers& review, const Progress& progress) {
            return review.season(question, progress);
        },
        receiver, std::move(done));
}

void askTrial(const Services& services, const Journal& journal, const TrialQuestion& question,
              QObject* receiver, std::function<void(const Result<TrialAnswer>&)> done)
{
    askElsewhere<TrialAnswer>(
        services, QObject::tr("Reviewing the trial"), journal,
        [question](ReviewAnswers& review, const Progress& progress) {
            return review.trial(question, progress);
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
