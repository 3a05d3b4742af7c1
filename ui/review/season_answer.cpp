#include "ui/review/season_answer.h"

#include "core/base/work_reason.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"

namespace plumule::ui {
namespace {

bool isOfYield(Response response)
{
    return response == Response::YieldPerTray || response == Response::YieldPerArea ||
           response == Response::YieldPerSeed || response == Response::YieldPerDay;
}

Done addBeside(SeasonAnswer& answer, Journal& journal, const SeasonQuestion& question,
               const Progress& progress)
{
    for (const SeasonFilter& filter : question.beside) {
        const auto review = journal.review().season(filter, question.whatIf, progress);
        if (!review) {
            return passOn(review);
        }
        answer.beside.push_back({filter, *review});
    }
    return {};
}

} // namespace

Result<SeasonAnswer> answerTo(Journal& journal, const SeasonQuestion& question,
                              const Progress& progress)
{
    SeasonAnswer answer;
    const Response response = question.ask.response;
    const auto review = journal.review().season(question.filter, question.whatIf, progress);
    if (!review) {
        return passOn(review);
    }
    answer.review = *review;
    progress.report(0.2);
    const auto comparison =
        journal.review().comparison(question.filter, question.ask, question.whatIf, progress);
    if (!comparison) {
        return passOn(comparison);
    }
    answer.comparison = *comparison;
    progress.report(0.5);
    if (response == Response::HeightOnDay) {
        answer.heights = journal.review()
                             .heightFits(question.filter, progress)
                             .value_or(std::vector<HeightFit>());
    }
    if (isOfYield(response) || response == Response::CostPerGram) {
        answer.paybacks = journal.review()
                              .payback(question.filter, question.whatIf, progress)
                              .value_or(std::vector<Payback>());
    }
    if (isOfYield(response)) {
        answer.ageing = journal.review()
                            .pieceAgeing(question.filter, progress)
                            .value_or(std::vector<PieceAgeing>());
    }
    progress.report(0.8);
    if (const auto added = addBeside(answer, journal, question, progress); !added) {
        return passOn(added);
    }
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    return answer;
}

void askSeason(const Services& services, const Journal& journal, const SeasonQuestion& question,
               QObject* receiver, std::function<void(const Result<SeasonAnswer>&)> done)
{
    services.tasks.run(
        QObject::tr("Reviewing the season"),
        [path = journal.path(), &clock = journal.clock(),
         question](const Progress& progress) -> Result<SeasonAnswer> {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            if (!opened) {
                return passOn(opened);
            }
            return answerTo(**opened, question, progress);
        },
        receiver, std::move(done));
}

std::optional<ChartSpec> chartBeside(const SeasonAnswer& answer)
{
    const Response response = answer.comparison.ask.response;
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
    return differencesChart(answer.comparison);
}

} // namespace plumule::ui
