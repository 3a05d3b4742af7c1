#pragma once

#include "core/base/result.h"
#include "core/chart/chart_spec.h"
#include "core/medium/medium.h"
#include "core/stats/samples/friedman.h"
#include "core/stats/samples/triangle.h"
#include "core/tasting/tasting.h"

namespace plumule {

// One medium at one attribute.
struct SampleScores
{
    Medium medium;
    double mean = 0; // of the scores, or of the ranks
    double median = 0;
    double rankSum = 0; // higher is better liked in a hedonic panel, lower in a ranking
};

// One attribute of a hedonic or ranking panel. Only tasters who judged every sample at it count.
struct AttributeResult
{
    PanelAttribute attribute;
    int tasters = 0;
    std::vector<SampleScores> samples; // by position; empty where nobody judged all
    // None where fewer than two tasters judged all, or all of them found all samples alike; why is
    // in `noTest`.
    std::optional<stats::Friedman> friedman;
    std::optional<Error> noTest;
    std::vector<stats::NemenyiPair> pairs; // of samples by position; empty without a test
    // The least difference of two rank sums that tells samples apart at 5 %.
    std::optional<int> criticalDifference;
    // Tasters with whom such a difference would be shown about every other time, if they went on to
    // differ as these did; only where it was not shown. None where these did not agree at all, or
    // over 500. From the mean rank correlation of two tasters, (n·W − 1)/(n − 1) (Kendall 1948,
    // Rank Correlation Methods), and the 5 % point of χ².
    std::optional<int> tastersWanted;

    // The exact p where it is known, else by χ²; 1 without a test.
    [[nodiscard]] double p() const;
    [[nodiscard]] bool isShown() const { return p() < 0.05; }
};

struct TriangleResult
{
    stats::ForcedChoice test;
    std::optional<int> fewestRight; // significant at 5 %; none where not even all right would be
    // Tasters with whom a share of tellers like this one is shown 4 times in 5; only where it was
    // not shown. None where fewer than chance were right, or over 500.
    std::optional<int> tastersWanted;

    [[nodiscard]] bool isShown() const { return test.p < 0.05; }
};

// Tasters needed to show 4 times in 5, at 5 %, that the share `discriminators` really tells the
// samples of a triangle apart. None over 500.
[[nodiscard]] std::optional<int> triangleTastersFor(double discriminators);

// What a reader must know before believing the result.
enum class TastingCaveatKind
{
    Incomplete,      // `names` did not judge all and were left out
    FewTasters,      // `count` tasters: only a large difference shows, see `limit` and `most`
    NotBuyers,       // `count` tasters are no sample of buyers; `limit` would be needed
    OrderUnbalanced, // `count` tasters; the serving order is balanced with multiples of `limit`
    ManyAttributes,  // `count` were tested; `level` is the p of one that is safe among them
    OneSampleEach    // each medium was one sample: tasters are replicated, trays are not
};
struct TastingCaveat
{
    TastingCaveatKind kind = TastingCaveatKind::Incomplete;
    int count = 0;
    int limit = 0; // FewTasters: right answers or rank sum difference needed (0: none would do)
    int most = 0;  // FewTasters: of how many that can be reached at all
    double level = 0;
    std::vector<std::string> names;
    bool operator==(const TastingCaveat&) const = default;
};

struct TastingResult
{
    Panel panel;
    std::vector<Medium> media; // by position
    int tasters = 0;           // invited
    std::vector<AttributeResult> attributes;
    std::optional<TriangleResult> triangle;
    std::vector<TastingCaveat> caveats;
    std::vector<ChartSpec> charts; // one an attribute, key "ratings_by_medium"
};

// Of a closed panel; `media` by position of its samples. Conflict Open; TooFew
// NoScores where no taster of a triangle answered.
[[nodiscard]] Result<TastingResult> tastingResult(const PanelRecord& record,
                                                  const std::vector<Medium>& media);

// Positions of the samples, the best liked first.
[[nodiscard]] std::vector<std::size_t> bestFirst(const AttributeResult& result,
                                                 TastingMethod method);

} // namespace plumule
