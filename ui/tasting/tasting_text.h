#pragma once

#include "core/tasting/tasting_result.h"
#include "core/tasting/tasting_rules.h"
#include "ui/text/text.h"

#include <QStringList>

namespace plumule::ui {

[[nodiscard]] QString nameOf(TastingMethod method); // "9-point scale"
// Of an attribute, the triangle's too.
[[nodiscard]] QString attributeName(const PanelAttribute& attribute);
[[nodiscard]] QString attributeTitle(const PanelAttribute& attribute); // with a capital
// What the scores 1 to 9 mean (Peryam and Pilgrim 1957, Food Technology 11(9):9; from memory).
[[nodiscard]] QStringList hedonicWords();
// "p 0.031", "p under 0.001".
[[nodiscard]] QString pWords(double p);
// For a table's cell: "0.031", "< 0.001".
[[nodiscard]] QString pCell(double p);

// The result in a sentence, and what belongs to it.
struct TastingAnswerWords
{
    QString headline;
    QString detail;
};
[[nodiscard]] TastingAnswerWords answerWords(const TastingResult& result);
// One attribute in a sentence or two.
[[nodiscard]] QString attributeWords(const TastingResult& result, std::size_t attribute);
// What to bear in mind, a sentence each.
[[nodiscard]] QStringList caveatWords(const TastingResult& result);
// What would make the next tasting better, a sentence each.
[[nodiscard]] QStringList betterWords(const TastingResult& result);

// "Ana: 412, 833": whose scores are missing under which codes, a line each.
[[nodiscard]] QStringList missingWords(const std::vector<MissingScores>& missing);

} // namespace plumule::ui
