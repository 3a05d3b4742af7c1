#include "app/commands/compare_output.h"
#include "app/commands/compare_trials.h"
#include "app/commands/table_input.h"

#include <algorithm>

namespace plumule::app {
namespace {

using stats::CompareRequest;

std::vector<std::string> namesOf(const QStringList& values)
{
    std::vector<std::string> names;
    for (const QString& value : values) {
        names.push_back(value.toStdString());
    }
    return names;
}

bool isAmong(const std::vector<std::string>& names, const std::string& name)
{
    return std::find(names.begin(), names.end(), name) != names.end();
}

// The terms as their options follow one another; a medium that is named among the factors has its
// place there.
std::vector<std::string> termOrder(const QCommandLineParser& parser, const CompareRequest& request)
{
    std::vector<std::string> order;
    std::size_t factor = 0;
    std::size_t covariate = 0;
    for (const QString& option : parser.optionNames()) {
        if (option == QLatin1String("factor")) {
            order.push_back(request.factors[factor++]);
        } else if (option == QLatin1String("covariate")) {
            order.push_back(request.covariates[covariate++]);
        } else if (option == QLatin1String("medium") && !isAmong(request.factors, request.medium) &&
                   !isAmong(order, request.medium)) {
            order.push_back(request.medium);
        }
    }
    return order;
}

// "A=0.5,B=0.5,C=-1"; nullopt where it is not of that form.
std::optional<stats::LevelWeights> weightsFrom(const QString& text)
{
    stats::LevelWeights weights;
    for (const QString& part : text.split(',')) {
        const auto sign = part.lastIndexOf('=');
        const auto weight = numberFrom(part.mid(sign + 1));
        const QString level = part.left(std::max<qsizetype>(sign, 0)).trimmed();
        if (level.isEmpty() || !weight) {
            return std::nullopt;
        }
        weights.emplace_back(level.toStdString(), *weight);
    }
    return weights;
}

bool takeContrasts(const QCommandLineParser& parser, CompareRequest& request)
{
    for (const QString& text : parser.values("contrast")) {
        const auto weights = weightsFrom(text);
        if (!weights) {
            badCall(QStringLiteral("--contrast wants LEVEL=WEIGHT,LEVEL=WEIGHT..., not \"%1\".")
                        .arg(text));
            return false;
        }
        request.contrasts.push_back(*weights);
    }
    return true;
}

// Margin, level and contrasts; false, and a line said, where one is not as it should be.
bool takeNumbers(const QCommandLineParser& parser, CompareRequest& request)
{
    std::optional<double> level;
    const bool isGood =
        takeNumber(
            parser, "margin", "a number above 0", [](double x) { return x > 0; }, request.margin) &&
        takeNumber(
            parser, "level", "a number between 0 and 1", [](double x) { return x > 0 && x < 1; },
            level) &&
        takeContrasts(parser, request);
    request.level = level.value_or(request.level);
    return isGood;
}

// The column that is given two parts to play, if any.
std::optional<std::string> playsTwoParts(const CompareRequest& request)
{
    std::vector<std::string> seen{request.response};
    if (!isAmong(request.factors, request.medium)) {
        seen.push_back(request.medium);
    }
    seen.insert(seen.end(), request.factors.begin(), request.factors.end());
    seen.insert(seen.end(), request.covariates.begin(), request.covariates.end());
    for (const stats::TermColumns& columns : request.random) {
        seen.insert(seen.end(), columns.begin(), columns.end());
    }
    std::sort(seen.begin(), seen.end());
    const auto twice = std::adjacent_find(seen.begin(), seen.end());
    return twice == seen.end() ? std::nullopt : std::optional(*twice);
}

std::optional<CompareRequest> requestOf(const QCommandLineParser& parser)
{
    const auto response = neededOption(parser, "response");
    const auto medium = response ? neededOption(parser, "medium") : std::nullopt;
    if (!medium) {
        return std::nullopt;
    }
    CompareRequest request;
    request.response = *response;
    request.medium = *medium;
    request.factors = namesOf(parser.values("factor"));
    request.covariates = namesOf(parser.values("covariate"));
    request.order = termOrder(parser, request);
    if (parser.values("random").size() > 1) {
        badCall("--random may stand once only.");
        return std::nullopt;
    }
    if (parser.isSet("random")) {
        request.random = {{parser.value("random").toStdString()}};
    }
    if (parser.isSet("control")) {
        request.control = parser.value("control").toStdString();
    }
    if (!takeNumbers(parser, request)) {
        return std::nullopt;
    }
    if (const auto name = playsTwoParts(request)) {
        badCall(QStringLiteral("\"%1\" is given two parts to play.")
                    .arg(QString::fromStdString(*name)));
        return std::nullopt;
    }
    return request;
}

// The models' options have no place in the verdict by trials.
int compareByTrials(const QCommandLineParser& parser, const QString& path)
{
    for (const char* option : {"factor", "covariate", "random", "control", "contrast", "level"}) {
        if (parser.isSet(option)) {
            return badCall(QStringLiteral("--%1 and --trial don't go together.").arg(option));
        }
    }
    const auto file = readTable(path);
    return file ? runCompareTrials(parser, *file) : int(kBadCall);
}

} // namespace

int runCompare(const QStringList& arguments)
{
    QCommandLineParser parser;
    for (const char* option : {"response", "medium", "factor", "covariate", "random", "control",
                               "margin", "contrast", "level", "trial", "variety", "block"}) {
        parser.addOption({option, "", "value"});
    }
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"FILE.csv"});
    if (given && parser.isSet("trial")) {
        return compareByTrials(parser, given->front());
    }
    const auto request = given ? requestOf(parser) : std::nullopt;
    const auto file = request ? readTable(given->front()) : std::nullopt;
    if (!file) {
        return kBadCall;
    }
    const auto table = stats::tableForRequest(file->table.header, file->table.rows, *request);
    if (!table) {
        return refusedFor(*file, table.error());
    }
    const auto comparison = stats::compareTable(*table, *request);
    if (!comparison) {
        return refusedFor(*file, comparison.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*comparison, *request));
    } else {
        printComparison(*comparison, *request);
    }
    return kDone;
}

} // namespace plumule::app
