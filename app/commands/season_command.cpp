#include "app/commands/command.h"

#include "app/commands/comparison_json.h"
#include "app/commands/report_output.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "ui/review/season_report.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

ordered_json jsonOf(const MediumSeason& season)
{
    ordered_json json;
    json["medium"] = season.medium.name;
    json["n"] = season.yield.n;
    const bool hasMean = season.yield.n > 0;
    json["yield"] = {
        {"mean_g", jsonNumber(hasMean ? std::optional(season.yield.mean) : std::nullopt)},
        {"sd_g", jsonNumber(season.yield.sd)},
        {"lower_g", jsonNumber(season.yield.lower)},
        {"upper_g", jsonNumber(season.yield.upper)}};
    ordered_json heights = ordered_json::array();
    for (const HeightMean& mean : season.heights) {
        heights.push_back({{"day", mean.day},
                           {"mean_mm", jsonNumber(mean.height.mean)},
                           {"lower_mm", jsonNumber(mean.height.lower)},
                           {"upper_mm", jsonNumber(mean.height.upper)},
                           {"n", mean.height.n}});
    }
    json["height"] = std::move(heights);
    json["cost_per_g"] = jsonNumber(season.costPerGram);
    ordered_json curve = ordered_json::array();
    for (const CostPoint& point : season.costCurve) {
        curve.push_back({{"uses", point.uses}, {"cost_per_g", jsonNumber(point.costPerGram)}});
    }
    json["cost_curve"] = std::move(curve);
    json["pays_back_at_use"] = jsonOrNull(season.paysBackAt);
    return json;
}

const char* keyOf(LeftOut why)
{
    switch (why) {
    case LeftOut::Discarded:
        return "discarded";
    case LeftOut::StillGrowing:
        return "still_growing";
    case LeftOut::CutAgainLater:
        return "cut_again_later";
    case LeftOut::SetAside:
        return "set_aside";
    case LeftOut::Damaged:
        return "damaged";
    }
    return "";
}

ordered_json jsonOf(const SeasonReview& review)
{
    ordered_json json;
    json["from"] = toIso(review.filter.from);
    json["to"] = toIso(review.filter.to);
    json["currency"] = review.currency;
    json["trays"] = review.trays;
    json["varieties"] = review.varieties;
    json["trials"] = review.trials;
    json["media"] = ordered_json::array();
    for (const MediumSeason& season : review.media) {
        json["media"].push_back(jsonOf(season));
    }
    json["left_out"] = ordered_json::array();
    for (const LeftOutTray& tray : review.leftOut) {
        json["left_out"].push_back({{"code", tray.code},
                                    {"medium", tray.medium},
                                    {"why", keyOf(tray.why)},
                                    {"reason", tray.reason}});
    }
    json["too_few"] = review.tooFew;
    return json;
}

QString intervalText(const MeanInterval& interval)
{
    if (!interval.lower || !interval.upper) {
        return QStringLiteral("no interval from one tray");
    }
    return QStringLiteral("95% interval %1 to %2")
        .arg(ui::numberText(*interval.lower, 1), ui::numberText(*interval.upper, 1));
}

void printReview(const SeasonReview& review, UnitSystem units)
{
    print(
        QStringLiteral("%1 to %2: %3, %4, %5")
            .arg(ui::longDateText(review.filter.from), ui::longDateText(review.filter.to),
                 QCoreApplication::translate("Season", "%n tray(s)", nullptr, review.trays),
                 QCoreApplication::translate("Season", "%n variet(ies)", nullptr, review.varieties),
                 QCoreApplication::translate("Season", "%n trial(s)", nullptr, review.trials)));
    for (const MediumSeason& season : review.media) {
        const QString cost =
            season.costPerGram
                ? ", " + ui::costPerGramText(*season.costPerGram,
                                             QString::fromStdString(review.currency), units)
                : QString();
        print(QStringLiteral("  %1: %2 g a tray (%3; %4)%5")
                  .arg(QString::fromStdString(season.medium.name),
                       ui::numberText(season.yield.mean, 1), intervalText(season.yield))
                  .arg(season.yield.n)
                  .arg(cost));
    }
    for (const std::string& medium : review.tooFew) {
        print(QStringLiteral(
                  "  %1 has fewer than two trays: nothing can be told apart from it, since "
                  "trays of one and the same medium differ too.")
                  .arg(QString::fromStdString(medium)));
    }
}

// The declared season of that name, whatever its letter case; without one the present season.
std::optional<SeasonFilter> seasonNamed(Journal& journal, const QString& name, Date today)
{
    if (name.isEmpty()) {
        return journal.review().usualSeason();
    }
    const auto seasons = journal.seasons().all();
    if (!seasons) {
        refused(seasons.error());
        return std::nullopt;
    }
    for (const SeasonSpanOfDays& span : *seasons) {
        if (QString::fromStdString(span.season.name).compare(name, Qt::CaseInsensitive) == 0) {
            return filterOf(span, today);
        }
    }
    badCall(QStringLiteral("No season is called \"%1\".").arg(name));
    return std::nullopt;
}

// Of the days asked for, which count as a series of their own, or of a declared season.
std::optional<SeasonQuestion> questionFrom(const QCommandLineParser& parser, Journal& journal,
                                           Date today)
{
    const auto season = seasonNamed(journal, parser.value("season"), today);
    const auto varieties =
        season ? varietiesNamed(journal, parser.values("variety")) : std::nullopt;
    const auto ask = varieties ? comparisonAsk(parser) : std::nullopt;
    if (!ask) {
        return std::nullopt;
    }
    SeasonQuestion question;
    question.filter = *season;
    if (parser.isSet("from") || parser.isSet("to")) {
        const auto from = dateOption(parser, "from", season->from);
        const auto to = from ? dateOption(parser, "to", season->to) : std::nullopt;
        if (!to) {
            return std::nullopt;
        }
        if (*to < *from) {
            badCall("--to is before --from.");
            return std::nullopt;
        }
        question.filter = {*from, *to, {}, {}, {}, {}, {}};
    } else {
        question.series = journal.review().seriesOf(question.filter);
    }
    question.filter.varieties = *varieties;
    question.asks = {*ask};
    return question;
}

// All that a report tells of what was asked.
SeasonQuestion wholeQuestion(const SeasonQuestion& asked)
{
    SeasonQuestion whole = ui::reportQuestion(asked.filter);
    whole.series = asked.series;
    for (ComparisonAsk& ask : whole.asks) {
        ask.groups = asked.asks.front().groups;
        ask.marginPercent = asked.asks.front().marginPercent;
    }
    return whole;
}

ordered_json answerJson(const SeasonAnswer& answer)
{
    const SeasonComparison& comparison = answer.comparisons.front();
    ordered_json json = jsonOf(answer.review);
    json["season"] = answer.series.kind == SeriesKind::Season ? ordered_json(answer.series.name)
                                                              : ordered_json(nullptr);
    json["headline"] = ui::verdictWords(comparison).headline.toStdString();
    json["comparison"] = comparisonJson(comparison);
    return json;
}

int answerSeason(const QCommandLineParser& parser, Journal& journal, Date today)
{
    const auto question = questionFrom(parser, journal, today);
    if (!question) {
        return kBadCall;
    }
    const bool isReport = !reportFile(parser).isEmpty();
    const auto answer = journal.review().season(isReport ? wholeQuestion(*question) : *question);
    if (!answer) {
        return refused(answer.error());
    }
    if (isReport) {
        return writeAskedReport(parser, ui::seasonReport(*answer), answer->units);
    }
    if (parser.isSet("json")) {
        print(answerJson(*answer));
    } else {
        printSeasonComparison(answer->comparisons.front());
        printReview(answer->review, answer->units);
    }
    return kDone;
}

} // namespace

int runSeason(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"from", "", "day"});
    parser.addOption({"to", "", "day"});
    parser.addOption({"variety", "", "name"});
    parser.addOption({"season", "", "name"});
    addComparisonOptions(parser);
    addReportOptions(parser);
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
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
    return answerSeason(parser, **opened, clock.today());
}

} // namespace plumule::app
