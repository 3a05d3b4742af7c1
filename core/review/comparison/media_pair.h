#pragma once

#include "core/review/fairness/fairness.h"
#include "core/stats/verdict/verdict.h"

namespace plumule {

enum class MarginFrom
{
    Asked,
    Trials, // the smallest of the trials', as a share of the mean yield
    Default // 10 %
};

// The smallest difference that would change what the grower does.
struct Margin
{
    double percent = 10;
    MarginFrom from = MarginFrom::Default;
    bool operator==(const Margin&) const = default;
};

// What a pair's difference is one of.
enum class ComparedAs
{
    Media,
    AsFed // feeding differed fully: of the media with the feeding they had
};

struct MoreTrials
{
    std::optional<int> trials; // none: more than a year of them
    int traysEach = 0;         // of each medium in each
    bool operator==(const MoreTrials&) const = default;
};

// a over b, a the one with more; they number the means. What the trays don't give is missing. Of
// costs the dearer is a.
struct MediaPair
{
    std::size_t a = 0;
    std::size_t b = 0;
    int trialsShared = 0;
    std::optional<double> percent; // of b
    std::optional<double> lowerPercent;
    std::optional<double> upperPercent;
    std::optional<double> difference; // in the response's unit, at b's mean
    std::optional<double> lower;
    std::optional<double> upper;
    stats::Verdict verdict = stats::Verdict::NoVerdict;
    std::optional<stats::NoVerdictReason> why;
    ComparedAs as = ComparedAs::Media;
    std::optional<Aspect> mixedWith; // not comparable: it differs fully with the medium
    std::optional<MoreTrials> more;  // would tell them apart by the margin four times in five
};

} // namespace plumule
