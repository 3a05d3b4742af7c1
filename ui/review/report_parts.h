#pragma once

#include "core/review/answer/season_answer.h"
#include "ui/report/report.h"

namespace plumule::ui {

// What reports of a season and of a trial have in common. Numbers are SI and the room's currency.

// What stands before everything else and alone: the verdict, its picture, means, what was thrown
// away and what to do next. No figure of a test.
void addAnswerPage(Report& report, const SeasonComparison& comparison, const SeasonReview& review);

[[nodiscard]] ReportTable meansTable(const SeasonComparison& comparison);
[[nodiscard]] ReportTable pairsTable(const SeasonComparison& comparison);
// Each term's F and p, each after all others, and what was left out and why.
[[nodiscard]] ReportTable modelTable(const TrayModel& model);
[[nodiscard]] ReportTable modelMeansTable(const SeasonComparison& comparison);
// "The sums": how the verdict was come to, and a model of all trays.
void addSums(Report& report, const SeasonComparison& comparison);
// How the trays of each medium were grown: what differed, and what did not.
[[nodiscard]] ReportTable conditionsTable(const SeasonComparison& comparison);
// Mean cost of a tray by its parts, a column a medium.
[[nodiscard]] ReportTable costTable(const SeasonReview& review);
[[nodiscard]] ReportTable heightTable(const std::vector<HeightFit>& fits);
[[nodiscard]] ReportTable protocolTable(const std::vector<Protocol>& protocols);
// Every tray that counts.
[[nodiscard]] ReportTable trayTable(const SeasonReview& review);

// The spread between trays over the mean, in percent; none where no model could be fitted.
[[nodiscard]] std::optional<double> variationPercent(const SeasonComparison& comparison);
// The least difference of two means that Tukey's method calls real; none where it is not the same
// for all pairs.
[[nodiscard]] std::optional<double> leastRealDifference(const SeasonComparison& comparison);

// The pair that the verdict leads with; 0 where there is none.
[[nodiscard]] std::size_t leadingPair(const SeasonComparison& comparison);
// Sowing by sowing, and all together.
[[nodiscard]] ChartSpec sowingsChart(const SeasonComparison& comparison, std::size_t pair);
// That not all sowings are drawn there; empty where they are.
[[nodiscard]] QString leftOutWords(const SeasonComparison& comparison, std::size_t pair);
// What the checks on the data found, good or bad, a sentence each.
[[nodiscard]] QStringList allCheckWords(const SeasonComparison& comparison);
void addFairness(Report& report, const SeasonComparison& comparison);
// A part that could not be worked out says why in its place.
void addFailed(Report& report, const QString& what, const Error& error);
void addTastings(Report& report, const SeasonAnswer& answer);
void addPaybacks(Report& report, const SeasonAnswer& answer);
void addProtocols(Report& report, const SeasonAnswer& answer);
// What would make the next one better.
[[nodiscard]] QStringList betterLines(const SeasonComparison& comparison);
// What a reader must know before believing the numbers.
[[nodiscard]] QStringList readerCautions(const SeasonReview& review,
                                         const SeasonComparison& comparison);
// Food and safety, deferring to local law and licensed practice.
[[nodiscard]] QStringList safetyWords();

} // namespace plumule::ui
