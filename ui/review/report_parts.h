#pragma once

#include "core/review/answer/season_answer.h"
#include "ui/report/report.h"

namespace plumule::ui {

// What reports of a season and of a trial have in common. Numbers are SI and the room's currency.

[[nodiscard]] ReportTable meansTable(const SeasonComparison& comparison);
[[nodiscard]] ReportTable pairsTable(const SeasonComparison& comparison);
// Each term's F and p, each after all others, and what was left out and why.
[[nodiscard]] ReportTable modelTable(const SeasonComparison& comparison);
// How the trays of each medium were grown: what differed, and what did not.
[[nodiscard]] ReportTable conditionsTable(const SeasonComparison& comparison);
// Mean cost of a tray by its parts, a column a medium.
[[nodiscard]] ReportTable costTable(const SeasonReview& review);
[[nodiscard]] ReportTable heightTable(const std::vector<HeightFit>& fits);
[[nodiscard]] ReportTable protocolTable(const std::vector<Protocol>& protocols);
// Every tray that counts.
[[nodiscard]] ReportTable trayTable(const SeasonReview& review);

// The spread between trays over the mean, in percent; none where it is not these trays' own.
[[nodiscard]] std::optional<double> variationPercent(const SeasonComparison& comparison);
// The least difference of two means that Tukey's method calls real; none where it is not the same
// for all pairs.
[[nodiscard]] std::optional<double> leastRealDifference(const SeasonComparison& comparison);

// Means, differences, pairs and model of one response; by variety where the answer is.
void addComparison(Report& report, const SeasonComparison& comparison);
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
