#pragma once

#include "core/review/comparison/comparison.h"

#include <QString>
#include <QStringList>

namespace plumule::ui {

// The comparison's answer: what can be said in one sentence, and the rest of it.
struct VerdictWords
{
    QString headline;
    QString detail;
};
[[nodiscard]] VerdictWords verdictWords(const SeasonComparison& comparison);

// "more", "same within the margin", "can't tell yet: 12 more trays of each": one pair in plain
// words.
[[nodiscard]] QString pairWords(const MediaPair& pair);

// "adjusted for variety and trial"; "as weighed" where nothing else is in the model.
[[nodiscard]] QString modelWords(const ComparisonModel& model);

// What else differed between the media, the fully confounded first; empty where all was alike.
[[nodiscard]] QStringList fairnessWords(const SeasonComparison& comparison);
// The same of any findings; `media` are the names that they number.
[[nodiscard]] QStringList fairnessWords(const std::vector<Finding>& findings,
                                        const QStringList& media);
// What would make the next trial fair.
[[nodiscard]] QStringList adviceWords(const std::vector<Suggestion>& suggestions);
// What the checks on the data point at.
[[nodiscard]] QStringList checkWords(const DataChecks& checks);

// A value of the response with its unit.
[[nodiscard]] QString responseText(double value, const SeasonComparison& comparison);
[[nodiscard]] QString responseUnit(const SeasonComparison& comparison);
// As many as the spread between trays makes worth showing.
[[nodiscard]] int responseDecimals(const SeasonComparison& comparison);
// "0.0120", "0.57", "< 0.0001".
[[nodiscard]] QString pText(double p);

} // namespace plumule::ui
