#include "app/commands/command.h"

#include "core/journal/forecast/forecast_answers.h"
#include "core/journal/room/room_entries.h"
#include "ui/forecast/forecast_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

std::string nameOf(const ForecastFacts& facts, VarietyId variety)
{
    const auto found = facts.varieties.find(variety);
    return found == facts.varieties.end() ? std::string() : found->second;
}

std::string nameOf(const ForecastFacts& facts, MediumId medium)
{
    const auto found = facts.media.find(medium);
    return found == facts.media.end() ? std::string() : found->second.name;
}

ordered_json jsonOf(const ForecastBasis& basis)
{
    const bool isOwn = basis.from == ForecastSource::OwnPast;
    return {{"from", toText(basis.from)},
            {"source", isOwn ? ordered_json(nullptr) : ordered_json(basis.source)},
            {"span", isOwn ? ordered_json(toText(basis.span)) : ordered_json(nullptr)},
            {"trays", basis.trays},
            {"sowings", basis.sowings},
            {"widened", jsonNumber(basis.widened)}};
}

ordered_json jsonOf(const YieldForecast& yield)
{
    return {{"middle_g", jsonNumber(inGrams(yield.middle))},
            {"low_g", jsonNumber(inGrams(yield.low))},
            {"high_g", jsonNumber(inGrams(yield.high))},
            {"basis", jsonOf(yield.basis)}};
}

ordered_json jsonOf(const std::optional<DayForecast>& day)
{
    if (!day) {
        return nullptr;
    }
    return {{"middle", toIso(day->middle)},
            {"low", toIso(day->low)},
            {"high", toIso(day->high)},
            {"chance", jsonNumber(day->chance)},
            {"by_protocol", toIso(day->asPlanned)},
            {"basis", jsonOf(day->basis)}};
}

ordered_json jsonOf(const TrayForecast& forecast, const ForecastFacts& facts)
{
    return {{"code", forecast.code},
            {"variety", nameOf(facts, forecast.variety)},
            {"medium", nameOf(facts, forecast.medium)},
            {"sown_on", toIso(forecast.sownOn)},
            {"harvest", jsonOf(forecast.day)},
            {"yield", jsonOf(forecast.yield)}};
}

ordered_json jsonOf(const VarietyScore& score)
{
    return {{"harvests", score.harvests},
            {"yield_inside", score.yieldInside},
            {"days", score.days},
            {"day_inside", score.dayInside},
            {"yield_widened", jsonNumber(score.yieldWidened)},
            {"day_widened", jsonNumber(score.dayWidened)}};
}

ordered_json scoresOf(const ForecastAnswer& answer)
{
    ordered_json list = ordered_json::array();
    for (const VarietyScore& score : answer.report.scores) {
        ordered_json row = {{"variety", nameOf(answer.facts, score.variety)}};
        row.update(jsonOf(score));
        list.push_back(row);
    }
    return list;
}

ordered_json jsonOf(const ForecastAnswer& answer)
{
    ordered_json growing = ordered_json::array();
    for (const TrayForecast& forecast : answer.report.growing) {
        growing.push_back(jsonOf(forecast, answer.facts));
    }
    ordered_json scored = ordered_json::array();
    for (const ScoredForecast& one : answer.report.scored) {
        ordered_json row = jsonOf(one.forecast, answer.facts);
        row["cut_on"] = toIso(one.cutOn);
        row["weighed_g"] = jsonNumber(inGrams(one.weighed));
        row["yield_inside"] =
            one.isYieldScored() ? ordered_json(one.isYieldInside()) : ordered_json(nullptr);
        row["day_inside"] =
            one.isDayScored() ? ordered_json(one.isDayInside()) : ordered_json(nullptr);
        scored.push_back(row);
    }
    ordered_json json;
    json["date"] = toIso(answer.facts.now.date);
    json["level"] = kForecastLevel;
    json["growing"] = growing;
    json["all"] = jsonOf(answer.report.all);
    json["varieties"] = scoresOf(answer);
    json["scored"] = scored;
    return json;
}

void tell(const ForecastAnswer& answer, const ui::UnitText& units)
{
    for (const TrayForecast& forecast : answer.report.growing) {
        const bool isOwn = forecast.yield.basis.from == ForecastSource::OwnPast;
        print(QStringLiteral("%1  %2  %3 %4 (%5)%6")
                  .arg(QString::fromStdString(forecast.code), -8)
                  .arg(ui::dayWords(forecast), -30)
                  .arg(ui::yieldMiddle(forecast.yield, units), units.massUnit(),
                       ui::yieldRange(forecast.yield, units),
                       isOwn ? QString()
                             : "  " + QString::fromStdString(forecast.yield.basis.source)));
    }
    if (answer.report.growing.empty()) {
        print(QStringLiteral("Nothing grows now."));
    }
    print(ui::coverageSentence(answer.report));
    print(ui::coverageDetail(answer.report));
    for (const VarietyScore& score : answer.report.scores) {
        const QString heading =
            ui::badHeading(score, QString::fromStdString(nameOf(answer.facts, score.variety)));
        if (!heading.isEmpty()) {
            print(heading + ". " + ui::badDetail(score));
        }
    }
}

} // namespace

int runForecast(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"date", "", "day"});
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto day = dateOption(parser, "date", clock.today());
    if (!day) {
        return kBadCall;
    }
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    const auto layout = (*opened)->room().layout();
    if (!layout) {
        return refused(layout.error());
    }
    const auto answer = (*opened)->forecast().answer(
        parser.isSet("date") ? std::optional(Moment{*day, layout->room.morningMinute})
                             : std::nullopt);
    if (!answer) {
        return refused(answer.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*answer));
    } else {
        tell(*answer, ui::UnitText(layout->room.units));
    }
    return kDone;
}

} // namespace plumule::app
