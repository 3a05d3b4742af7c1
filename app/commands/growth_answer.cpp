#include "app/commands/growth_answer.h"

#include "app/commands/command.h"

#include <cmath>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;
using stats::CurveEstimate;
using stats::GrowthReport;

ordered_json jsonOf(const CurveEstimate& value)
{
    return {{"estimate", jsonNumber(value.estimate)},
            {"se", jsonNumber(value.se)},
            {"lower", jsonNumber(value.lower)},
            {"upper", jsonNumber(value.upper)}};
}

bool isForetold(const GrowthReport& report, const stats::TimeToHeight& time)
{
    return !time.x || report.isForetold(time.x->estimate);
}

const char* replicateOf(const GrowthAnswer& answer)
{
    if (!answer.ofTrays) {
        return "reading";
    }
    return answer.ofTrays->replicate == stats::GrowthReplicate::Tray ? "tray" : "trial";
}

QString estimateText(const CurveEstimate& value)
{
    if (std::isnan(value.lower)) {
        return shortNumber(value.estimate);
    }
    // A curve that fits as well never comes there.
    if (std::isinf(value.upper)) {
        return QStringLiteral("%1 (%2 or later)")
            .arg(shortNumber(value.estimate), shortNumber(value.lower));
    }
    return QStringLiteral("%1 (%2 to %3)")
        .arg(shortNumber(value.estimate), shortNumber(value.lower), shortNumber(value.upper));
}

// Marks what lies beyond the last reading.
QString timeText(const GrowthReport& report, const CurveEstimate& x)
{
    return report.isForetold(x.estimate) ? estimateText(x) + QStringLiteral(", foretold")
                                         : estimateText(x);
}

void printNumbers(const GrowthReport& report)
{
    for (const GrowthReport::Parameter& parameter : report.parameters) {
        print(QStringLiteral("  %1: %2")
                  .arg(QString::fromStdString(parameter.name), estimateText(parameter.value)));
    }
    print(QStringLiteral("  top growth rate: %1").arg(estimateText(report.topRate)));
    print(QStringLiteral("  90% of full height at: %1").arg(timeText(report, report.xAt90pct)));
    for (const stats::CurvePoint& point : report.at) {
        const CurveEstimate height{point.fit, point.se, point.lower, point.upper};
        print(QStringLiteral("  at %1: %2%3")
                  .arg(shortNumber(point.x), estimateText(height),
                       report.isForetold(point.x) ? QStringLiteral(", foretold") : QString()));
    }
    for (const stats::TimeToHeight& time : report.toHeight) {
        print(QStringLiteral("  %1 is reached at: %2")
                  .arg(shortNumber(time.height), time.x ? timeText(report, *time.x)
                                                        : QStringLiteral("never, by this curve")));
    }
}

// Over what the intervals hold.
void printWhatRepeats(const GrowthAnswer& answer)
{
    if (!answer.ofTrays) {
        print(QStringLiteral("Intervals take every reading for independent. Readings of one tray "
                             "are not: name its column with --tray."));
        return;
    }
    const QString counts =
        QStringLiteral("trays: %1, trials: %2")
            .arg(QString::number(answer.ofTrays->trays), QString::number(answer.ofTrays->sowings));
    print(answer.ofTrays->hasIntervals
              ? QStringLiteral("Intervals are over %1 (%2).")
                    .arg(answer.ofTrays->replicate == stats::GrowthReplicate::Tray
                             ? QStringLiteral("trays, in these trials")
                             : QStringLiteral("trials"),
                         counts)
              : QStringLiteral("No intervals: they want three trays (%1).").arg(counts));
}

} // namespace

ordered_json jsonOf(const GrowthAnswer& answer)
{
    const GrowthReport& report = answer.report;
    ordered_json json;
    json["curve"] = report.curveName;
    json["n"] = report.n;
    json["df"] = report.df;
    json["rss"] = jsonNumber(report.rss);
    json["residual_sd"] = jsonNumber(report.residualSd);
    json["aicc"] = jsonNumber(report.aicc);
    json["parameters"] = ordered_json::array();
    for (const GrowthReport::Parameter& parameter : report.parameters) {
        ordered_json row{{"name", parameter.name}};
        row.update(jsonOf(parameter.value));
        json["parameters"].push_back(std::move(row));
    }
    json["at"] = ordered_json::array();
    for (const stats::CurvePoint& point : report.at) {
        json["at"].push_back({{"x", jsonNumber(point.x)},
                              {"fit", jsonNumber(point.fit)},
                              {"se", jsonNumber(point.se)},
                              {"lower", jsonNumber(point.lower)},
                              {"upper", jsonNumber(point.upper)},
                              {"foretold", report.isForetold(point.x)}});
    }
    json["to_height"] = ordered_json::array();
    for (const stats::TimeToHeight& time : report.toHeight) {
        json["to_height"].push_back({{"height", jsonNumber(time.height)},
                                     {"x", time.x ? jsonOf(*time.x) : ordered_json(nullptr)},
                                     {"foretold", isForetold(report, time)}});
    }
    json["top_rate"] = jsonOf(report.topRate);
    json["x_at_90pct"] = jsonOf(report.xAt90pct);
    json["foretold"] = !report.fullHeightSeen;
    json["replicate"] = replicateOf(answer);
    json["trays"] = answer.ofTrays ? ordered_json(answer.ofTrays->trays) : ordered_json(nullptr);
    json["trials"] = answer.ofTrays ? ordered_json(answer.ofTrays->sowings) : ordered_json(nullptr);
    return json;
}

void printGrowth(const GrowthAnswer& answer, const std::string& x, const std::string& y,
                 std::size_t leftOut)
{
    const GrowthReport& report = answer.report;
    print(QStringLiteral("%1 over %2: %3 curve, %4 readings, spread left over (sd) %5")
              .arg(QString::fromStdString(y), QString::fromStdString(x),
                   QString::fromStdString(report.curveName), QString::number(report.n),
                   shortNumber(report.residualSd)));
    printNumbers(report);
    printWhatRepeats(answer);
    if (!report.fullHeightSeen) {
        print(QStringLiteral("Mind: the last reading lies before 90% of full height, which is "
                             "foretold rather than seen."));
    }
    if (leftOut > 0) {
        print(QStringLiteral("Mind: rows with an empty %2 or %3, left out: %1.")
                  .arg(QString::number(leftOut), QString::fromStdString(x),
                       QString::fromStdString(y)));
    }
}

} // namespace plumule::app
