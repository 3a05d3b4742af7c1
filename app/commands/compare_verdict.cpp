#include "app/commands/compare_verdict.h"

#include "core/review/comparison/pair_verdict.h"

namespace plumule::app {

PairVerdict tableVerdict(const stats::ComparedPair& pair, const stats::TableComparison& comparison,
                         double level)
{
    VerdictGround ground;
    ground.isComparable = pair.numbers.raw.estimable;
    ground.nA = static_cast<int>(comparison.means[pair.numbers.a].n);
    ground.nB = static_cast<int>(comparison.means[pair.numbers.b].n);
    ground.lower = pair.numbers.lowerTukey;
    ground.upper = pair.numbers.upperTukey;
    ground.isWithinMargin = pair.pEquivalence && *pair.pEquivalence < 1 - level;
    return plumule::verdictOf(ground);
}

const char* verdictKey(PairVerdict verdict)
{
    switch (verdict) {
    case PairVerdict::More:
        return "more";
    case PairVerdict::Less:
        return "less";
    case PairVerdict::SameWithinMargin:
        return "same_within_margin";
    case PairVerdict::RealButTooSmall:
        return "real_but_too_small";
    case PairVerdict::CantTellYet:
        return "cant_tell_yet";
    case PairVerdict::NotComparable:
        return "not_comparable";
    case PairVerdict::NoVerdict:
        return "no_verdict";
    }
    return "";
}

QString verdictWords(PairVerdict verdict)
{
    switch (verdict) {
    case PairVerdict::More:
        return QStringLiteral("more");
    case PairVerdict::Less:
        return QStringLiteral("less");
    case PairVerdict::SameWithinMargin:
        return QStringLiteral("same within the margin");
    case PairVerdict::RealButTooSmall:
        return QStringLiteral("real, but too small to matter");
    case PairVerdict::CantTellYet:
        return QStringLiteral("can't tell yet");
    case PairVerdict::NotComparable:
        return QStringLiteral("not comparable");
    case PairVerdict::NoVerdict:
        return QStringLiteral("no verdict");
    }
    return {};
}

} // namespace plumule::app
