#include "app/commands/compare_verdict.h"

namespace plumule::app {

using stats::Verdict;

Verdict tableVerdict(const stats::ComparedPair& pair, const stats::TableComparison& comparison,
                     double level)
{
    if (comparison.means[pair.numbers.a].n < 2 || comparison.means[pair.numbers.b].n < 2) {
        return Verdict::NoVerdict;
    }
    if (!pair.numbers.raw.estimable) {
        return Verdict::NotComparable;
    }
    const auto& lower = pair.numbers.lowerTukey;
    const auto& upper = pair.numbers.upperTukey;
    if (!lower || !upper) {
        return Verdict::NoVerdict;
    }
    const bool isClear = *lower > 0 || *upper < 0;
    if (pair.pEquivalence && *pair.pEquivalence < 1 - level) {
        return isClear ? Verdict::RealButTooSmall : Verdict::SameWithinMargin;
    }
    if (!isClear) {
        return Verdict::CantTellYet;
    }
    return *lower > 0 ? Verdict::More : Verdict::Less;
}

const char* verdictKey(Verdict verdict)
{
    switch (verdict) {
    case Verdict::More:
        return "more";
    case Verdict::Less:
        return "less";
    case Verdict::SameWithinMargin:
        return "same_within_margin";
    case Verdict::RealButTooSmall:
        return "real_but_too_small";
    case Verdict::CantTellYet:
        return "cant_tell_yet";
    case Verdict::NotComparable:
        return "not_comparable";
    case Verdict::NoVerdict:
        return "no_verdict";
    }
    return "";
}

QString verdictWords(Verdict verdict)
{
    switch (verdict) {
    case Verdict::More:
        return QStringLiteral("more");
    case Verdict::Less:
        return QStringLiteral("less");
    case Verdict::SameWithinMargin:
        return QStringLiteral("same within the margin");
    case Verdict::RealButTooSmall:
        return QStringLiteral("real, but too small to matter");
    case Verdict::CantTellYet:
        return QStringLiteral("can't tell yet");
    case Verdict::NotComparable:
        return QStringLiteral("not comparable");
    case Verdict::NoVerdict:
        return QStringLiteral("no verdict");
    }
    return {};
}

} // namespace plumule::app
