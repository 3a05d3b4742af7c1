#include "app/commands/comparison_json.h"

#include "app/commands/compare_verdict.h"
#include "app/commands/table_input.h"
#include "ui/review/verdict_sentence.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <QCoreApplication>

#include <cmath>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;
using stats::NoVerdictReason;

const char* keyOfUnit(const SeasonComparison& comparison)
{
    switch (comparison.ask.response) {
    case Response::YieldPerTray:
    case Response::YieldPerTraySown:
    case Response::Residue:
        return "g";
    case Response::YieldPerArea:
        return "g/m2";
    case Response::YieldPerSeed:
        return "g/g";
    case Response::YieldPerDay:
        return "g/d";
    case Response::CostPerGram:
        return nullptr; // the room's currency a gram
    case Response::HeightOnDay:
        return "mm";
    case Response::DaysToHarvest:
        return "d";
    case Response::Evenness:
        return "%";
    case Response::Work:
        return "min";
    }
    return "";
}

const char* keyOfAspect(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return "feeding";
    case Aspect::Variety:
        return "variety";
    case Aspect::Trial:
        return "trial";
    case Aspect::SeedLot:
        return "seed_lot";
    case Aspect::SeedDensity:
        return "seed_density";
    case Aspect::Shelf:
        return "shelf";
    case Aspect::Season:
        return "month";
    case Aspect::DaysGrown:
        return "days_grown";
    case Aspect::PieceUses:
        return "piece_uses";
    case Aspect::Person:
        return "person";
    case Aspect::Temperature:
        return "temperature_c";
    case Aspect::Vpd:
        return "vpd_kpa";
    case Aspect::DailyLight:
        return "dli_mol_m2_d";
    }
    return "";
}

const char* keyOfConfounding(Confounding confounding)
{
    return confounding == Confounding::Fully    ? "fully"
           : confounding == Confounding::Partly ? "partly"
                                                : "alike";
}

ordered_json whyJson(const MediaPair& pair)
{
    if (pair.mixedWith) {
        return keyOfAspect(*pair.mixedWith);
    }
    return pair.why ? ordered_json(whyKey(*pair.why)) : ordered_json(nullptr);
}

using NameOf = std::function<std::string(std::size_t)>;

ordered_json pairsJson(const std::vector<MediaPair>& pairs, const NameOf& nameOf)
{
    ordered_json list = ordered_json::array();
    for (const MediaPair& pair : pairs) {
        list.push_back(
            {{"a", nameOf(pair.a)},
             {"b", nameOf(pair.b)},
             {"difference_percent", jsonNumber(pair.percent)},
             {"lower_percent", jsonNumber(pair.lowerPercent)},
             {"upper_percent", jsonNumber(pair.upperPercent)},
             {"difference", jsonNumber(pair.difference)},
             {"trials_shared", pair.trialsShared},
             {"compared_as", pair.as == ComparedAs::AsFed ? "as_fed" : "media"},
             {"verdict", verdictKey(pair.verdict)},
             {"why", whyJson(pair)},
             {"more_trials", pair.more ? jsonOrNull(pair.more->trials) : ordered_json(nullptr)},
             {"more_trays_each",
              pair.more ? ordered_json(pair.more->traysEach) : ordered_json(nullptr)}});
    }
    return list;
}

ordered_json byTrialJson(const SeasonComparison& comparison, const NameOf& mediumName)
{
    ordered_json list = ordered_json::array();
    for (const TrialPart& part : comparison.byTrial) {
        const Sowing& sowing = comparison.sowings[part.sowing];
        list.push_back({{"trial", sowing.trial ? ordered_json(sowing.code) : ordered_json(nullptr)},
                        {"sown_on", toIso(sowing.sownOn)},
                        {"varieties", sowing.varieties},
                        {"pairs", pairsJson(part.pairs, mediumName)}});
    }
    return list;
}

ordered_json groupsJson(const SeasonComparison& comparison, const NameOf& mediumName)
{
    ordered_json list = ordered_json::array();
    for (const GroupOfMedia& group : comparison.groups) {
        ordered_json media = ordered_json::array();
        for (const std::size_t member : group.members) {
            media.push_back(mediumName(member));
        }
        list.push_back({{"name", group.name},
                        {"media", std::move(media)},
                        {"mean", jsonNumber(group.mean)},
                        {"widest_percent", jsonNumber(group.widestPercent)},
                        {"told_apart", group.areToldApart}});
    }
    return list;
}

ordered_json fairnessJson(const SeasonComparison& comparison, const NameOf& mediumName)
{
    ordered_json list = ordered_json::array();
    for (const Finding& finding : comparison.fairness) {
        ordered_json media = ordered_json::array();
        for (const AspectOfMedium& each : finding.media) {
            ordered_json levels = ordered_json::array();
            for (const AspectLevel& level : each.levels) {
                levels.push_back({{"name", level.name}, {"trays", level.trays}});
            }
            ordered_json one = {{"medium", mediumName(each.medium)}, {"levels", std::move(levels)}};
            if (each.numbers) {
                one["mean"] = jsonNumber(each.numbers->mean);
                one["low"] = jsonNumber(each.numbers->low);
                one["high"] = jsonNumber(each.numbers->high);
            }
            one["unknown"] = each.unknown;
            media.push_back(std::move(one));
        }
        list.push_back({{"aspect", keyOfAspect(finding.aspect)},
                        {"confounding", keyOfConfounding(finding.confounding)},
                        {"in_model", finding.isInModel},
                        {"media", std::move(media)}});
    }
    return list;
}

ordered_json discardsJson(const SeasonComparison& comparison, const NameOf& mediumName)
{
    ordered_json list = ordered_json::array();
    for (const DiscardsOfMedium& each : comparison.discards) {
        list.push_back({{"medium", mediumName(each.medium)},
                        {"sown", each.sown},
                        {"discarded", each.discarded},
                        {"p", jsonNumber(each.p)},
                        {"differs", each.differs}});
    }
    return list;
}

ordered_json headJson(const SeasonComparison& comparison)
{
    const char* unit = keyOfUnit(comparison);
    ordered_json json;
    json["metric"] = toText(comparison.ask.response);
    json["side_metric"] = comparison.isSideMetric;
    json["unit"] = unit != nullptr ? std::string(unit) : comparison.currency + "/g";
    json["scale"] = stats::isLog(comparison.scale) ? "log" : "linear";
    json["day"] = jsonOrNull(comparison.day);
    json["trays"] = comparison.n;
    json["trials"] = comparison.trials;
    json["planned_trials"] = jsonOrNull(comparison.series.plannedTrials);
    json["scope"] =
        comparison.scope == stats::AnswerScope::NextSowing ? "next_sowing" : "these_trials";
    json["level"] = jsonNumber(comparison.level);
    json["unlike_spread"] = comparison.unlike.isUnlike;
    json["margin_percent"] = jsonNumber(comparison.margin.percent);
    json["spread_percent"] = jsonNumber(comparison.spreadPercent);
    json["trial_spread_percent"] = jsonNumber(comparison.trialSpreadPercent);
    return json;
}

} // namespace

const char* whyKey(NoVerdictReason why)
{
    switch (why) {
    case NoVerdictReason::NeverMet:
        return "never_met";
    case NoVerdictReason::Confounded:
        return "confounded";
    case NoVerdictReason::NothingHarvested:
        return "nothing_harvested";
    case NoVerdictReason::FewSowings:
        return "few_trials";
    case NoVerdictReason::OneTrayEach:
        return "one_tray_each";
    case NoVerdictReason::FewDegrees:
        return "few_degrees";
    case NoVerdictReason::NoSpread:
        return "no_spread";
    case NoVerdictReason::SurvivorsOnly:
        return "survivors_only";
    case NoVerdictReason::PlanRunning:
        return "plan_running";
    case NoVerdictReason::Filtered:
        return "filtered";
    case NoVerdictReason::VarietiesAlike:
        return "varieties_alike";
    }
    return "";
}

ordered_json comparisonJson(const SeasonComparison& comparison)
{
    const NameOf mediumName = [&](std::size_t medium) {
        return comparison.means[medium].medium.name;
    };
    ordered_json json = headJson(comparison);
    json["means"] = ordered_json::array();
    for (const ComparedMedium& mean : comparison.means) {
        json["means"].push_back({{"medium", mean.medium.name},
                                 {"trays", mean.trays},
                                 {"trials", mean.trials},
                                 {"mean", jsonNumber(mean.mean)}});
    }
    json["pairs"] = pairsJson(comparison.pairs, mediumName);
    json["by_trial"] = byTrialJson(comparison, mediumName);
    json["by_variety"] = ordered_json::array();
    for (const VarietyPart& part : comparison.byVariety) {
        json["by_variety"].push_back({{"variety", part.variety},
                                      {"trials", part.trials},
                                      {"pairs", pairsJson(part.pairs, mediumName)}});
    }
    json["groups"] = groupsJson(comparison, mediumName);
    json["group_pairs"] = pairsJson(
        comparison.groupPairs, [&](std::size_t group) { return comparison.groups[group].name; });
    json["discards"] = discardsJson(comparison, mediumName);
    json["fairness"] = fairnessJson(comparison, mediumName);
    return json;
}

void printSeasonComparison(const SeasonComparison& comparison)
{
    const ui::VerdictWords words = ui::verdictWords(comparison);
    QStringList lines = words.discards;
    lines << words.headline << words.detail << ui::cautionWords(comparison)
          << ui::varietyWords(comparison) << ui::fairnessWords(comparison);
    for (const QString& line : lines) {
        if (!line.isEmpty()) {
            print(line);
        }
    }
    for (const ComparedMedium& mean : comparison.means) {
        print(
            QStringLiteral("  %1: %2 (%3, %4)")
                .arg(QString::fromStdString(mean.medium.name),
                     mean.mean ? ui::responseText(*mean.mean, comparison) : QStringLiteral("–"),
                     QCoreApplication::translate("Season", "%n tray(s)", nullptr, mean.trays),
                     QCoreApplication::translate("Season", "%n sowing(s)", nullptr, mean.trials)));
    }
}

void addComparisonOptions(QCommandLineParser& parser)
{
    parser.addOption({"metric", "", "name"});
    parser.addOption({"groups", "", "name"});
    parser.addOption({"margin", "", "percent"});
}

std::optional<ComparisonAsk> comparisonAsk(const QCommandLineParser& parser)
{
    ComparisonAsk ask;
    const std::string metric = parser.value("metric").toStdString();
    if (parser.isSet("metric") && !fromText(metric, ask.response)) {
        QStringList names;
        for (const Response each : kResponses) {
            names << toText(each);
        }
        badCall(QStringLiteral("--metric wants one of %1.").arg(names.join(", ")));
        return std::nullopt;
    }
    Grouping grouping = Grouping::Form;
    if (parser.isSet("groups")) {
        if (!fromText(parser.value("groups").toStdString(), grouping)) {
            badCall("--groups wants one of form, nutrients, reuse, own.");
            return std::nullopt;
        }
        ask.groups = grouping;
    }
    if (parser.isSet("margin")) {
        ask.marginPercent = numberFrom(parser.value("margin"));
        if (!ask.marginPercent || *ask.marginPercent <= 0) {
            badCall("--margin wants a percentage above 0.");
            return std::nullopt;
        }
    }
    return ask;
}

} // namespace plumule::app
