#pragma once

#include "core/base/progress.h"
#include "core/review/comparison/media_pair.h"
#include "core/review/fairness/comparison_model.h"
#include "core/review/fairness/fairness.h"

namespace plumule {

// p under 0.05 is pointed at.
struct CheckOfSpread // Brown–Forsythe on what the model leaves over, by medium
{
    double f = 0;
    double df1 = 0;
    double df2 = 0;
    double p = 1;
    bool isAlike = true;
};
struct CheckOfNormality // Shapiro–Wilk on the same
{
    double w = 0;
    double p = 1;
    bool isNormal = true;
};
// Kept in the comparison; whether to set it aside is the grower's to say.
struct OddTray
{
    TrayId tray;
    std::string code;
    std::size_t medium = 0;
    double value = 0;
    double expected = 0;
    double p = 1; // over all trays
};

struct DataChecks
{
    std::optional<CheckOfSpread> spread;
    std::optional<CheckOfNormality> normality;
    std::vector<OddTray> oddTrays;
    std::optional<double> pWelch; // for unlike spreads, where the medium is the only factor
};

// Whether media do not differ alike in all varieties, or fed and unfed.
struct Interaction
{
    ModelPart with = ModelPart::Variety;
    double f = 0;
    double df1 = 0;
    std::optional<double> df2;
    double p = 1;
    bool isClear = false; // p < 0.05; of varieties: verdicts are then by variety
};

struct ComparedValue
{
    TrayId tray;
    std::string code;
    std::size_t medium = 0;
    double value = 0;
};

struct SeasonComparison
{
    ComparisonAsk ask;
    std::optional<int> day; // of the heights
    std::string currency;
    std::string variety; // of one out of `byVariety`
    int n = 0;
    int withoutValue = 0;
    double grandMean = 0;
    std::vector<ComparedValue> trays;
    ComparisonModel model;
    std::vector<AdjustedMean> means; // by medium id
    std::vector<MediaPair> pairs;
    Margin margin;
    SpreadOfTrays spread;
    DataChecks checks;
    std::optional<Interaction> interaction;  // with the variety
    std::vector<SeasonComparison> byVariety; // where it is clear
    // Where it is clear the means and pairs are averages over fed and unfed trays.
    std::optional<Interaction> interactionWithFeeding;
    std::vector<Finding> fairness;
    std::vector<Suggestion> suggestions;
};

// The answer to one question about a season, from the trays that count. When stopped it comes back
// soon, unfinished: the caller who can stop it asks whether it was.
[[nodiscard]] SeasonComparison comparisonOf(const SeasonFacts& facts, const SeasonFilter& filter,
                                            const ComparisonAsk& ask,
                                            const Progress& progress = {});

} // namespace plumule
