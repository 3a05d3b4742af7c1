#pragma once

#include "core/stats/model/comparisons.h"
#include "core/stats/model/linear_model.h"
#include "core/stats/model/mixed_model.h"
#include "core/stats/samples/checks.h"
#include "core/stats/samples/oneway.h"
#include "core/stats/samples/ranks.h"

namespace plumule::stats {

// Weights by level; levels left out count 0.
using LevelWeights = std::vector<std::pair<std::string, double>>;

// What to compare in a table. `factors` are the others in the model; when the medium is named among
// them that is its place in the order of type I, else it comes first. Covariates follow the
// factors.
struct CompareRequest
{
    std::string response;
    std::string medium;
    std::vector<std::string> factors;
    std::vector<std::string> covariates;
    // Where given, the order of type I of medium, factors and covariates; it then names them all.
    std::vector<std::string> order;
    std::vector<TermColumns> random;
    std::optional<std::string> control;
    std::optional<double> margin;
    std::vector<LevelWeights> contrasts;
    double level = 0.95;
};

// What a reader of the numbers has to know. `subject` names a level, a pair "a - b", a term, a
// contrast by its number; `count` rows or levels.
enum class CompareNote
{
    RowsWithoutResponse,  // left out
    RowsWithGaps,         // left out: a factor or covariate is empty
    MeanNotEstimable,     // subject: level
    PairNotEstimable,     // subject: "a - b"
    ContrastNotEstimable, // subject: its number, from 1
    TermWithoutDf,        // subject: term; nothing of it can be told apart
    TermPartlyEstimable,  // subject: term; fewer df than its levels would give
    RandomSingular,       // subject: the random column; its variance was estimated at 0
    NoSpread,             // the model fits without rest: no test is made
    SingleRowLevels,      // subject: level with one row only
};

struct CompareWarning
{
    CompareNote note{};
    std::string subject;
    std::size_t count = 0;

    bool operator==(const CompareWarning&) const = default;
};

struct ComparedPair
{
    std::string a;
    std::string b;
    PairComparison numbers; // a - b
    // Of the two one-sided tests, when a margin was given.
    std::optional<double> pEquivalence;
};

struct ComparedToControl
{
    std::string level;
    ControlComparison numbers; // level - control
};

// df and ss are missing for a mixed model.
struct ResidualPart
{
    std::optional<double> df;
    std::optional<double> ss;
    double sd = 0;
};

struct RandomPart
{
    std::vector<VarianceComponent> groups;
    double varianceResidual = 0;
    double reml = 0;
    bool singular = false;
};

// Everything a comparison of one table says. With a random column the terms are tests by
// Kenward-Roger (in termsType3, without sums of squares), means and pairs have that method's errors
// and df, and termsType1, termsType2 and rSquared are empty. welch, kruskal and spreadCheck look at
// the medium alone, normality at the residuals; each is missing where it cannot be worked out.
struct TableComparison
{
    std::size_t n = 0;
    std::vector<AnovaRow> termsType1;
    std::vector<AnovaRow> termsType2;
    std::vector<AnovaRow> termsType3;
    ResidualPart residual;
    std::optional<double> rSquared;
    std::vector<MarginalMean> means;
    // One a mean: two share a letter where the interval of their difference (Tukey) holds 0, "a"
    // stands with the highest. Empty where some pair cannot be judged.
    std::vector<std::string> letters;
    std::vector<ComparedPair> pairs;
    std::vector<ComparedToControl> againstControl;
    std::vector<ContrastTest> contrasts;
    std::optional<VarianceRatio> welch;
    std::optional<KruskalWallis> kruskal;
    std::optional<VarianceRatio> spreadCheck; // Brown-Forsythe
    std::optional<Normality> normality;       // Shapiro-Wilk
    std::optional<RandomPart> random;
    std::optional<FTest> kenwardRoger; // of the medium
    std::vector<CompareWarning> warnings;
};

// The columns a request needs, out of a header and rows of cells (row 1 is the first under the
// header): medium, factors and random columns as categories, response and covariates as numbers.
// ColumnUnknown names a missing column, TooFewRows is said of an empty file, RowLength and
// NotANumber of the row that they name.
[[nodiscard]] Result<DataTable> tableForRequest(const std::vector<std::string>& header,
                                                const std::vector<std::vector<std::string>>& rows,
                                                const CompareRequest& request);

// Errors of the models; LevelUnknown for a control or a part of a contrast; ConfidenceLevel, Margin
// and ContrastSum; OneLevel for a medium with one level only.
[[nodiscard]] Result<TableComparison> compareTable(const DataTable& table,
                                                   const CompareRequest& request);

} // namespace plumule::stats
