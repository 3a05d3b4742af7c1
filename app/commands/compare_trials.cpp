#include "app/commands/compare_trials.h"

#include "app/commands/compare_verdict.h"
#include "app/commands/comparison_json.h"
#include "core/stats/verdict/advice.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

constexpr double kUsualMargin = 10; // percent
constexpr int kFewestForNext = 3;   // trials

// Which column plays which part.
struct TrialColumns
{
    std::size_t response = 0;
    std::size_t medium = 0;
    std::size_t trial = 0;
    std::optional<std::size_t> variety;
    std::optional<std::size_t> block;
};

std::optional<std::size_t> columnNamed(const TableFile& file, const std::string& name)
{
    const auto& header = file.table.header;
    const auto found = std::find(header.begin(), header.end(), name);
    if (found == header.end()) {
        badCall(QStringLiteral("%1 has no column \"%2\".")
                    .arg(file.name, QString::fromStdString(name)));
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - header.begin());
}

std::optional<TrialColumns> columnsAsked(const QCommandLineParser& parser, const TableFile& file)
{
    TrialColumns columns;
    const std::pair<const char*, std::size_t*> needed[] = {
        {"response", &columns.response}, {"medium", &columns.medium}, {"trial", &columns.trial}};
    for (const auto& [option, column] : needed) {
        const auto name = neededOption(parser, option);
        const auto found = name ? columnNamed(file, *name) : std::nullopt;
        if (!found) {
            return std::nullopt;
        }
        *column = *found;
    }
    const std::pair<const char*, std::optional<std::size_t>*> extra[] = {
        {"variety", &columns.variety}, {"block", &columns.block}};
    for (const auto& [option, column] : extra) {
        if (parser.isSet(option)) {
            *column = columnNamed(file, parser.value(option).toStdString());
            if (!*column) {
                return std::nullopt;
            }
        }
    }
    return columns;
}

// Levels in the order in which they first appear.
class Levels
{
public:
    std::size_t numberOf(const std::string& name)
    {
        const auto [found, isNew] = m_numbers.try_emplace(name, m_names.size());
        if (isNew) {
            m_names.push_back(name);
        }
        return found->second;
    }
    [[nodiscard]] const std::string& name(std::size_t number) const { return m_names[number]; }

private:
    std::map<std::string, std::size_t> m_numbers;
    std::vector<std::string> m_names;
};

struct TraysOfTable
{
    Levels media;
    Levels trials;
    Levels varieties;
    Levels blocks;
    std::vector<stats::SownTray> trays;
};

// nullopt, and a line said, where a response is no number above 0.
std::optional<TraysOfTable> traysOf(const TableFile& file, const TrialColumns& columns)
{
    TraysOfTable table;
    for (std::size_t row = 0; row < file.table.rows.size(); ++row) {
        const auto& cells = file.table.rows[row];
        stats::SownTray tray;
        tray.medium = table.media.numberOf(cells.at(columns.medium));
        tray.sowing = table.trials.numberOf(cells.at(columns.trial));
        if (columns.variety) {
            tray.variety = table.varieties.numberOf(cells.at(*columns.variety));
        }
        if (columns.block) {
            tray.block = table.blocks.numberOf(cells.at(*columns.block));
        }
        const std::string& text = cells.at(columns.response);
        if (!text.empty() && text != "NA") {
            tray.value = numberFrom(QString::fromStdString(text));
            if (!tray.value || *tray.value <= 0) {
                badCall(QStringLiteral("%1, row %2: \"%3\" is no number above 0.")
                            .arg(file.name)
                            .arg(row + 2)
                            .arg(QString::fromStdString(text)));
                return std::nullopt;
            }
        }
        table.trays.push_back(tray);
    }
    return table;
}

std::optional<double> percentOf(std::optional<double> log)
{
    return log ? std::optional(stats::percentOfLog(*log)) : std::nullopt;
}

std::optional<double> spreadPercent(std::optional<double> variance)
{
    return variance ? std::optional(100 * std::sqrt(std::expm1(*variance))) : std::nullopt;
}

bool wouldMoreHelp(const stats::PairAnswer& pair)
{
    return pair.verdict == stats::Verdict::CantTellYet ||
           pair.why == stats::NoVerdictReason::FewSowings ||
           pair.why == stats::NoVerdictReason::OneTrayEach;
}

// The one with more first.
std::vector<stats::PairAnswer> turnedPairs(const stats::MediaAnswer& answer)
{
    std::vector<stats::PairAnswer> pairs;
    for (const stats::PairAnswer& pair : answer.pairs) {
        pairs.push_back(pair.difference.value_or(0) < 0 ? stats::reversed(pair) : pair);
    }
    return pairs;
}

struct TrialsAnswer
{
    stats::MediaAnswer answer;
    std::optional<stats::Advice> advice;
    int traysEach = 0;
    double marginPercent = kUsualMargin;
};

ordered_json pairJson(const stats::PairAnswer& pair, const TrialsAnswer& all, const Levels& media)
{
    const auto interval = pair.interval();
    const bool isAdvised = all.advice && wouldMoreHelp(pair);
    return {
        {"a", media.name(pair.a)},
        {"b", media.name(pair.b)},
        {"difference_percent", jsonNumber(percentOf(pair.difference))},
        {"lower_percent",
         jsonNumber(percentOf(interval ? std::optional(interval->lower()) : std::nullopt))},
        {"upper_percent",
         jsonNumber(percentOf(interval ? std::optional(interval->upper()) : std::nullopt))},
        {"trials_shared", pair.sowingsShared},
        {"verdict", verdictKey(pair.verdict)},
        {"why", pair.why ? ordered_json(whyKey(*pair.why)) : ordered_json(nullptr)},
        {"more_trials", isAdvised ? jsonOrNull(all.advice->moreSowings) : ordered_json(nullptr)},
        {"more_trays_each", isAdvised ? ordered_json(all.traysEach) : ordered_json(nullptr)}};
}

ordered_json trialsJson(const TrialsAnswer& all, const QString& response, const Levels& media)
{
    const stats::MediaAnswer& answer = all.answer;
    ordered_json json;
    json["metric"] = response.toStdString();
    json["scale"] = "log";
    json["trays"] = answer.trays;
    json["trials"] = answer.sowings;
    json["scope"] = answer.scope == stats::AnswerScope::NextSowing ? "next_sowing" : "these_trials";
    json["level"] = jsonNumber(answer.level);
    json["unlike_spread"] = answer.spread.isUnlike;
    json["margin_percent"] = jsonNumber(all.marginPercent);
    json["spread_percent"] = jsonNumber(spreadPercent(answer.trayVariance));
    json["trial_spread_percent"] = jsonNumber(spreadPercent(answer.trialVariance));
    json["means"] = ordered_json::array();
    for (const stats::MediumMean& mean : answer.means) {
        json["means"].push_back({{"medium", media.name(mean.medium)},
                                 {"trays", mean.trays},
                                 {"trials", mean.sowings},
                                 {"mean", jsonNumber(mean.value)}});
    }
    json["pairs"] = ordered_json::array();
    for (const stats::PairAnswer& pair : turnedPairs(answer)) {
        json["pairs"].push_back(pairJson(pair, all, media));
    }
    return json;
}

QString trialCount(int trials)
{
    return QCoreApplication::translate("Season", "%n trial(s)", nullptr, trials);
}

void printTrials(const TrialsAnswer& all, const Levels& media)
{
    const stats::MediaAnswer& answer = all.answer;
    print(
        answer.scope == stats::AnswerScope::NextSowing
            ? QStringLiteral("What to expect of the next trial, from %1 trials (intervals for all "
                             "pairs together, level %2%):")
                  .arg(answer.sowings)
                  .arg(shortNumber(100 * answer.level.value_or(0)))
            : QStringLiteral("What was in %1; of the next that can't say:")
                  .arg(trialCount(answer.sowings)));
    for (const stats::PairAnswer& pair : turnedPairs(answer)) {
        const auto interval = pair.interval();
        print(QStringLiteral("  %1 over %2: %3% (%4 to %5), %6: %7")
                  .arg(QString::fromStdString(media.name(pair.a)),
                       QString::fromStdString(media.name(pair.b)),
                       shortNumber(percentOf(pair.difference)),
                       shortNumber(
                           percentOf(interval ? std::optional(interval->lower()) : std::nullopt)),
                       shortNumber(
                           percentOf(interval ? std::optional(interval->upper()) : std::nullopt)))
                  .arg(trialCount(pair.sowingsShared), verdictWords(pair.verdict)));
    }
}

} // namespace

int runCompareTrials(const QCommandLineParser& parser, const TableFile& file)
{
    const auto columns = columnsAsked(parser, file);
    const auto table = columns ? traysOf(file, *columns) : std::nullopt;
    std::optional<double> margin;
    if (!table ||
        !takeNumber(
            parser, "margin", "a percentage above 0", [](double x) { return x > 0; }, margin)) {
        return kBadCall;
    }
    TrialsAnswer all;
    all.marginPercent = margin.value_or(kUsualMargin);
    stats::VerdictAsk ask;
    ask.margin = stats::logMargin(all.marginPercent);
    all.answer = stats::answerOfSeries(table->trays, ask);
    if (all.answer.sowings > 0 && all.answer.sowings < kFewestForNext) {
        all.answer = stats::answerOfSowings(table->trays, ask);
    }
    all.traysEach = std::max(2, static_cast<int>(std::ceil(all.answer.harmonicTrays)));
    all.advice = stats::adviceFor(all.answer, ask, all.traysEach);
    if (parser.isSet("json")) {
        print(trialsJson(all, parser.value("response"), table->media));
    } else {
        printTrials(all, table->media);
    }
    return kDone;
}

} // namespace plumule::app
