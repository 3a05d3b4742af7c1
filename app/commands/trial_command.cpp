#include "app/commands/command.h"
#include "app/commands/compare_verdict.h"
#include "app/commands/comparison_json.h"
#include "app/commands/report_output.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/trial/trial_entries.h"

#include "ui/review/verdict_text.h"
#include "ui/text/text.h"
#include "ui/trial/plan_text.h"
#include "ui/trial/trial_report.h"
#include "ui/watering/round_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

const char* keyOfState(TrialState state)
{
    switch (state) {
    case TrialState::Planned:
        return "planned";
    case TrialState::Growing:
        return "growing";
    case TrialState::Ended:
        return "ended";
    }
    return "";
}

const char* keyOfPart(const ModelTerm& term, const ComparisonModel& model)
{
    switch (term.part) {
    case ModelPart::Medium:
        return "medium";
    case ModelPart::Feeding:
        return "feeding";
    case ModelPart::Variety:
        return "variety";
    case ModelPart::Trial:
        return "trial";
    case ModelPart::Block:
        return model.block == BlockKind::Shelf ? "shelf" : "block";
    case ModelPart::Column:
        return "column";
    case ModelPart::SeedDensity:
        return "seed_density";
    }
    return "";
}

const char* keyOfPlace(TermPlace place)
{
    return place == TermPlace::Fixed ? "fixed" : place == TermPlace::Random ? "random" : "left_out";
}

std::optional<double> gramsOf(const std::optional<Mass>& mass)
{
    return mass ? std::optional(inGrams(*mass)) : std::nullopt;
}

ordered_json traysJson(const TrialProgress& progress)
{
    ordered_json trays = ordered_json::array();
    for (const TrialTray& tray : progress.trays) {
        const Tray& sown = tray.record.tray;
        ordered_json place = nullptr;
        if (tray.spot) {
            place = tray.spot->rack + tray.spot->shelf + "." + std::to_string(tray.spot->number);
        }
        trays.push_back({{"code", sown.code},
                         {"block", tray.block},
                         {"position", tray.position},
                         {"medium", tray.record.medium.name},
                         {"feeding", toText(tray.feeding)},
                         {"place", place},
                         {"state", toText(sown.state)},
                         {"yield_g", jsonNumber(gramsOf(tray.yield))},
                         {"residue_g", jsonNumber(gramsOf(tray.residue))}});
    }
    return trays;
}

ordered_json termsJson(const ComparisonModel& model)
{
    ordered_json terms = ordered_json::array();
    for (const ModelTerm& term : model.terms) {
        terms.push_back({{"term", keyOfPart(term, model)},
                         {"place", keyOfPlace(term.place)},
                         {"f", jsonNumber(term.f)},
                         {"df1", jsonNumber(term.df1)},
                         {"df2", jsonNumber(term.df2)},
                         {"p", jsonNumber(term.p)}});
    }
    return terms;
}

// The verdict that the pair's media have, whichever way it is read.
const char* verdictOf(const ModelPair& pair, const SeasonComparison& yield)
{
    for (const MediaPair& one : yield.pairs) {
        if (one.a == pair.a && one.b == pair.b) {
            return verdictKey(one.verdict);
        }
        if (one.a == pair.b && one.b == pair.a) {
            const stats::Verdict turned = one.verdict == stats::Verdict::More ? stats::Verdict::Less
                                          : one.verdict == stats::Verdict::Less
                                              ? stats::Verdict::More
                                              : one.verdict;
            return verdictKey(turned);
        }
    }
    return verdictKey(stats::Verdict::NoVerdict);
}

// All trays in one linear or mixed model.
ordered_json yieldJson(const SeasonComparison& yield)
{
    const TrayModel& model = yield.model;
    ordered_json json;
    json["n"] = yield.n;
    json["mean_g"] = jsonNumber(yield.n > 0 ? std::optional(yield.grandMean) : std::nullopt);
    json["spread_g"] = jsonNumber(model.sd > 0 ? std::optional(model.sd) : std::nullopt);
    json["spread_df"] = jsonNumber(model.df);
    json["variation_percent"] = jsonNumber(ui::variationPercent(yield));
    json["margin_g"] = jsonNumber(yield.margin.percent / 100 * yield.grandMean);
    json["tukey_difference_g"] = jsonNumber(ui::leastRealDifference(yield));
    json["terms"] = termsJson(model.model);
    json["means"] = ordered_json::array();
    for (const AdjustedMean& mean : model.means) {
        json["means"].push_back({{"medium", mean.medium.name},
                                 {"n", mean.n},
                                 {"mean_g", jsonNumber(mean.mean)},
                                 {"se_g", jsonNumber(mean.se)},
                                 {"lower_g", jsonNumber(mean.lower)},
                                 {"upper_g", jsonNumber(mean.upper)}});
    }
    json["pairs"] = ordered_json::array();
    for (const ModelPair& pair : model.pairs) {
        json["pairs"].push_back({{"a", model.means[pair.a].medium.name},
                                 {"b", model.means[pair.b].medium.name},
                                 {"difference_g", jsonNumber(pair.difference)},
                                 {"lower_g", jsonNumber(pair.lower)},
                                 {"upper_g", jsonNumber(pair.upper)},
                                 {"p_tukey", jsonNumber(pair.p)},
                                 {"verdict", verdictOf(pair, yield)}});
    }
    return json;
}

// Some sentences name the trial themselves.
std::string namedHeadline(const Trial& trial, const SeasonComparison& comparison)
{
    const QString said = ui::verdictWords(comparison).headline;
    const QString code = QString::fromStdString(trial.code);
    return (said.contains(code) ? said : code + QStringLiteral(": ") + said).toStdString();
}

ordered_json jsonOf(const TrialAnswer& answer)
{
    const Trial& trial = answer.progress.trial;
    const auto& draft = answer.progress.draft;
    ordered_json json;
    json["code"] = trial.code;
    json["name"] = trial.name;
    json["question"] = trial.question;
    json["state"] = keyOfState(answer.progress.state);
    json["design"] = draft ? ordered_json(toText(draft->plan.design)) : ordered_json(nullptr);
    json["draw_number"] = draft ? ordered_json(draft->plan.drawNumber) : ordered_json(nullptr);
    json["trays"] = traysJson(answer.progress);
    json["lacks"] = ordered_json::array();
    for (const TrialLack& lack : answer.progress.lacks) {
        json["lacks"].push_back({{"code", lack.code},
                                 {"what", lack.gap == TrialGap::NoHeight ? "height" : "weight"},
                                 {"date", toIso(lack.on)}});
    }
    json["yield"] = yieldJson(answer.season.comparison(Response::YieldPerTray));
    const SeasonComparison& asked = answer.season.comparisons.back();
    json["headline"] = namedHeadline(trial, asked);
    json["comparison"] = comparisonJson(asked);
    return json;
}

void printTrial(const TrialAnswer& answer)
{
    const Trial& trial = answer.progress.trial;
    print(QStringLiteral("%1 %2: %3, %4")
              .arg(QString::fromStdString(trial.code), QString::fromStdString(trial.name),
                   ui::nameOf(answer.progress.state),
                   ui::trayCount(static_cast<int>(answer.progress.trays.size()))));
    if (answer.progress.draft) {
        print(QStringLiteral("%1, draw %2")
                  .arg(ui::nameOf(answer.progress.draft->plan.design))
                  .arg(answer.progress.draft->plan.drawNumber));
    }
    printSeasonComparison(answer.season.comparisons.back());
    for (const QString& line : ui::lackWords(answer.progress)) {
        print(line);
    }
}

// The trial with that code, whatever its letter case; none, and a line said, where there is none.
std::optional<TrialId> trialWithCode(Journal& journal, const QString& code)
{
    const auto trials = journal.trials().all();
    if (!trials) {
        refused(trials.error());
        return std::nullopt;
    }
    for (const Trial& trial : *trials) {
        if (QString::fromStdString(trial.code).compare(code, Qt::CaseInsensitive) == 0) {
            return trial.id;
        }
    }
    badCall(QStringLiteral("No trial has the code \"%1\".").arg(code));
    return std::nullopt;
}

int answerTrial(const QCommandLineParser& parser, Journal& journal, const QString& code)
{
    const auto trial = trialWithCode(journal, code);
    if (!trial) {
        return kBadCall;
    }
    const auto ask = comparisonAsk(parser);
    if (!ask) {
        return kBadCall;
    }
    const bool isReport = !reportFile(parser).isEmpty();
    TrialQuestion question = ui::reportQuestion(*trial, isReport ? *ask : ComparisonAsk());
    question.asks.push_back(*ask);
    const auto answer = journal.review().trial(question);
    if (!answer) {
        return refused(answer.error());
    }
    if (isReport) {
        const QString photos = QString::fromStdString(journal.photoFolder().string());
        return writeAskedReport(parser, ui::trialReport(*answer, photos), answer->season.units);
    }
    if (parser.isSet("json")) {
        print(jsonOf(*answer));
    } else {
        printTrial(*answer);
    }
    return kDone;
}

} // namespace

int runTrial(const QStringList& arguments)
{
    QCommandLineParser parser;
    addReportOptions(parser);
    addComparisonOptions(parser);
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "CODE"});
    if (!given) {
        return kBadCall;
    }
    if (const auto clash = clashOfReportOptions(parser)) {
        return *clash;
    }
    const SystemClock clock;
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    return answerTrial(parser, **opened, given->at(1));
}

} // namespace plumule::app
