#pragma once

#include "core/review/comparison/comparison.h"

#include <QString>
#include <QStringList>

namespace plumule::ui {

// The comparison's answer: which trays were thrown away first, what can be said in one sentence,
// and the rest of it.
struct VerdictWords
{
    QStringList discards; // empty where they don't differ
    QString headline;
    QString detail;
};
[[nodiscard]] VerdictWords verdictWords(const SeasonComparison& comparison);

// The clearest and widest difference first.
[[nodiscard]] std::vector<const MediaPair*> pairsByWeight(const std::vector<MediaPair>& all);

// What else bears on it: a side result, sowings that are bunched in one part of the year.
[[nodiscard]] QStringList cautionWords(const SeasonComparison& comparison);

// Why there is no answer by variety yet, or what it says; empty with one variety.
[[nodiscard]] QString varietyWords(const SeasonComparison& comparison);

// "spread tray to tray 5.5 %, of a medium from sowing to sowing 1.7 %".
[[nodiscard]] QString spreadWords(const SeasonComparison& comparison);

// How the verdict was come to, a line each, for the sums.
[[nodiscard]] QStringList sumsWords(const SeasonComparison& comparison);

// "adjusted for variety and trial"; "as weighed" where nothing else is in the model.
[[nodiscard]] QString modelWords(const ComparisonModel& model);

// What else differed between the media, the fully confounded first; empty where all was alike.
[[nodiscard]] QStringList fairnessWords(const SeasonComparison& comparison);
// The same of any findings; `media` are the names that they number.
[[nodiscard]] QStringList fairnessWords(const std::vector<Finding>& findings,
                                        const QStringList& media);
// What would make the next trial fair, in a few words.
[[nodiscard]] QStringList adviceWords(const std::vector<Advice>& suggestions);
// The findings that the answer doesn't account for, each as advice in a sentence that says why;
// what could matter most comes first.
[[nodiscard]] QStringList adviceSentences(const SeasonComparison& comparison);
// What was unlike but is accounted for, in one sentence; empty where nothing was.
[[nodiscard]] QString allowedForWords(const SeasonComparison& comparison);
// Trays that lie far from the others of their medium.
[[nodiscard]] QStringList oddTrayWords(const DataChecks& checks);

// A value of the response with its unit.
[[nodiscard]] QString responseText(double value, const SeasonComparison& comparison);
[[nodiscard]] QString responseUnit(const SeasonComparison& comparison);
// As many as the spread between trays makes worth showing.
[[nodiscard]] int responseDecimals(const SeasonComparison& comparison);
// "0.0120", "0.57", "< 0.0001".
[[nodiscard]] QString pText(double p);

} // namespace plumule::ui
