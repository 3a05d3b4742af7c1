#pragma once

#include "core/medium/medium.h"
#include "core/review/facts/compared_trays.h"
#include "core/review/model/comparison_model.h"

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

// Adjusted for whatever else is in the model. The numbers are missing where the data do not give
// them; without a model the mean is the plain one.
struct AdjustedMean
{
    Medium medium;
    int n = 0;
    bool isEstimable = false;
    std::optional<double> mean;
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> lower; // 95 %
    std::optional<double> upper;
};

// a and b number the means; the later medium is a.
struct ModelPair
{
    std::size_t a = 0;
    std::size_t b = 0;
    std::optional<double> difference; // a − b
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> lower; // Tukey's, 95 % for all pairs together
    std::optional<double> upper;
    std::optional<double> p; // Tukey's
};

// Trays by a general linear or mixed model, in the response's own unit: what stands under the sums
// and finds odd trays. No verdict rests on it: it takes trays, not sowings, for replicates.
struct TrayModel
{
    ComparisonModel model;           // no terms where nothing could be fitted
    std::vector<AdjustedMean> means; // by medium; of those with a value
    std::vector<ModelPair> pairs;
    double sd = 0; // between trays; 0 without a model
    std::optional<double> df;
    DataChecks checks;
};
[[nodiscard]] TrayModel trayModelOf(const SeasonFacts& facts, const ComparedTrays& trays);

} // namespace plumule
