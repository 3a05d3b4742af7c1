#include "ui/review/verdict_sentence.h"

#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

class VerdictTr
{
    Q_DECLARE_TR_FUNCTIONS(Verdict)
};

using stats::NoVerdictReason;
using stats::Verdict;

bool isOfNextSowing(const SeasonComparison& comparison)
{
    return comparison.scope == stats::AnswerScope::NextSowing;
}

// "%1 … %3 … %2": a against b by how much. What holds, and what was.
struct Saying
{
    const char* gives;
    const char* gave;
};

Saying sayingOf(Response response)
{
    switch (response) {
    case Response::YieldPerTray:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 gives %3 more than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 gave %3 more than %2")};
    case Response::YieldPerTraySown:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 gives %3 more a tray sown than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 gave %3 more a tray sown than %2")};
    case Response::YieldPerArea:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 gives %3 more by area than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 gave %3 more by area than %2")};
    case Response::YieldPerSeed:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 gives %3 more for its seed than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 gave %3 more for its seed than %2")};
    case Response::YieldPerDay:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 gives %3 more a day than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 gave %3 more a day than %2")};
    case Response::CostPerGram:
        return {QT_TRANSLATE_NOOP("Verdict", "A gram from %1 costs %3 more than from %2"),
                QT_TRANSLATE_NOOP("Verdict", "a gram from %1 cost %3 more than from %2")};
    case Response::HeightOnDay:
        return {QT_TRANSLATE_NOOP("Verdict", "On %1 they stand %3 taller than on %2"),
                QT_TRANSLATE_NOOP("Verdict", "on %1 they stood %3 taller than on %2")};
    case Response::DaysToHarvest:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 takes %3 longer than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 took %3 longer than %2")};
    case Response::Residue:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 leaves %3 more residue than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 left %3 more residue than %2")};
    case Response::Evenness:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 grows less evenly than %2, by %3"),
                QT_TRANSLATE_NOOP("Verdict", "%1 grew less evenly than %2, by %3")};
    case Response::Work:
        return {QT_TRANSLATE_NOOP("Verdict", "%1 takes %3 more work than %2"),
                QT_TRANSLATE_NOOP("Verdict", "%1 took %3 more work than %2")};
    }
    return {"", ""};
}

// Names of two things that are compared, whatever they are.
struct TwoNames
{
    QString a;
    QString b;
};

QString percentText(double percent, int decimals)
{
    return VerdictTr::tr("%1 %").arg(numberText(percent, decimals));
}

// Rounding must not move a bound to the other side of 0.
int decimalsFor(double low, double high)
{
    const auto hides = [](double bound) { return bound != 0 && std::abs(bound) < 0.5; };
    return hides(low) || hides(high) ? 1 : 0;
}

QString amountText(const MediaPair& pair, const SeasonComparison& comparison)
{
    if (!stats::isLog(comparison.scale)) {
        return responseText(pair.difference.value_or(0), comparison);
    }
    const double percent = pair.percent.value_or(0);
    return percentText(percent, std::abs(percent) < 0.95 ? 1 : 0);
}

// "In trial T8, ", "In these two trials, ".
QString whereText(const SeasonComparison& comparison)
{
    QStringList codes;
    int unnamed = 0;
    for (const TrialPart& part : comparison.byTrial) {
        const Sowing& sowing = comparison.sowings[part.sowing];
        if (sowing.trial) {
            codes << QString::fromStdString(sowing.code);
        } else {
            ++unnamed;
        }
    }
    if (codes.size() == 1 && unnamed == 0) {
        return VerdictTr::tr("In trial %1 ").arg(codes.front());
    }
    if (codes.size() == 2 && unnamed == 0) {
        return VerdictTr::tr("In the trials %1 ").arg(codes.join(VerdictTr::tr(" and ")));
    }
    return codes.size() + unnamed > 1 ? VerdictTr::tr("In these two sowings ")
                                      : VerdictTr::tr("In this sowing ");
}

QString whetherSentence(const SeasonComparison& comparison)
{
    return comparison.byTrial.size() > 1
               ? VerdictTr::tr("Whether it will next time, two sowings can't say.")
               : VerdictTr::tr("Whether it will next time, one sowing can't say.");
}

// "Steel mesh gives 12 % more than jute (4 to 21 %)", without a stop.
QString differenceClause(const TwoNames& names, const MediaPair& pair,
                         const SeasonComparison& comparison)
{
    const Saying saying = sayingOf(comparison.ask.response);
    const char* text = isOfNextSowing(comparison) ? saying.gives : saying.gave;
    const QString where = isOfNextSowing(comparison) ? QString() : whereText(comparison);
    return where + QStringLiteral("%1 (%2)").arg(
                       VerdictTr::tr(text).arg(names.a, names.b, amountText(pair, comparison)),
                       intervalText(pair, comparison));
}

QString moreThan(const TwoNames& names, const MediaPair& pair, const SeasonComparison& comparison)
{
    const QString clause = differenceClause(names, pair, comparison);
    if (!isOfNextSowing(comparison)) {
        return QStringLiteral("%1. %2").arg(clause, whetherSentence(comparison));
    }
    return (comparison.variety
                ? VerdictTr::tr("%1: %n sowing(s) of %2.", nullptr, pair.trialsShared)
                      .arg(clause, QString::fromStdString(comparison.varietyName))
                : VerdictTr::tr("%1: %n sowing(s), on the varieties you grew.", nullptr,
                                pair.trialsShared)
                      .arg(clause));
}

QString marginPercent(const SeasonComparison& comparison)
{
    const double margin = comparison.margin.percent;
    return percentText(margin, std::abs(margin - std::round(margin)) < 0.05 ? 0 : 1);
}

QString sameSentence(const TwoNames& names, const MediaPair& pair,
                     const SeasonComparison& comparison)
{
    const QString where = isOfNextSowing(comparison) ? QString() : whereText(comparison);
    return where +
           VerdictTr::tr("%1 and %2: no difference that matters, within %3 either way (%4).")
               .arg(names.a, names.b, marginPercent(comparison), intervalText(pair, comparison));
}

QString smallSentence(const TwoNames& names, const MediaPair& pair,
                      const SeasonComparison& comparison)
{
    return VerdictTr::tr("%1: real, but not the %2 you care about.")
        .arg(differenceClause(names, pair, comparison), marginPercent(comparison));
}

QString cantTellSentence(const TwoNames& names, const MediaPair& pair,
                         const SeasonComparison& comparison)
{
    const QString where = isOfNextSowing(comparison) ? QString() : whereText(comparison);
    return where + VerdictTr::tr("%1 and %2: can't tell yet (%3).")
                       .arg(names.a, names.b, intervalText(pair, comparison));
}

QString mixedSentence(const TwoNames& names, const MediaPair& pair)
{
    return pair.mixedWith == Aspect::SeedLot
               ? VerdictTr::tr("%1 and %2 were never sown from one seed lot: not comparable.")
                     .arg(names.a, names.b)
               : VerdictTr::tr("%1 and %2 never stood on one shelf: not comparable.")
                     .arg(names.a, names.b);
}

// Why there is no verdict, after "Steel mesh and jute: ".
QString whySentence(NoVerdictReason why, const SeasonComparison& comparison)
{
    switch (why) {
    case NoVerdictReason::NothingHarvested:
        return VerdictTr::tr("of one of them nothing was harvested.");
    case NoVerdictReason::FewSowings:
        return VerdictTr::tr("no verdict from fewer than three sowings with both.");
    case NoVerdictReason::OneTrayEach:
        return VerdictTr::tr("no verdict from one tray of each.");
    case NoVerdictReason::FewDegrees:
        return VerdictTr::tr("no verdict: too few trays to judge chance by.");
    case NoVerdictReason::NoSpread:
        return VerdictTr::tr("no verdict: all alike, there is nothing to judge chance by.");
    case NoVerdictReason::SurvivorsOnly:
        return VerdictTr::tr("no verdict on survivors; the yield per tray sown answers.");
    case NoVerdictReason::PlanRunning:
        return waitingSentence(comparison);
    case NoVerdictReason::Filtered:
        return VerdictTr::tr("no verdict on trays chosen by hand.");
    case NoVerdictReason::VarietiesAlike:
        return VerdictTr::tr("media don't differ otherwise from variety to variety; the answer "
                             "over all of them holds.");
    case NoVerdictReason::NeverMet:
    case NoVerdictReason::Confounded:
        return VerdictTr::tr("not comparable.");
    }
    return {};
}

QString noVerdictSentence(const TwoNames& names, const MediaPair& pair,
                          const SeasonComparison& comparison)
{
    return VerdictTr::tr("%1 and %2: %3")
        .arg(names.a, names.b,
             whySentence(pair.why.value_or(NoVerdictReason::FewDegrees), comparison));
}

QString withMore(const QString& text, const MediaPair& pair)
{
    const QString more = moreSentence(pair);
    return more.isEmpty() ? text : text + ' ' + more;
}

QString sentenceOf(const TwoNames& names, const MediaPair& pair, const SeasonComparison& comparison)
{
    switch (pair.verdict) {
    case Verdict::More:
    case Verdict::Less:
        return moreThan(names, pair, comparison);
    case Verdict::RealButTooSmall:
        return smallSentence(names, pair, comparison);
    case Verdict::SameWithinMargin:
        return sameSentence(names, pair, comparison);
    case Verdict::CantTellYet:
        return withMore(cantTellSentence(names, pair, comparison), pair);
    case Verdict::NotComparable:
        return pair.mixedWith ? mixedSentence(names, pair)
                              : VerdictTr::tr("%1 and %2 never grew in one sowing: not comparable.")
                                    .arg(names.a, names.b);
    case Verdict::NoVerdict:
        return withMore(noVerdictSentence(names, pair, comparison), pair);
    }
    return {};
}

} // namespace

QString pairSentence(const MediaPair& pair, const SeasonComparison& comparison)
{
    return sentenceOf({nameInPair(pair.a, pair, comparison), nameInPair(pair.b, pair, comparison)},
                      pair, comparison);
}

QString groupSentence(const MediaPair& pair, const SeasonComparison& comparison)
{
    const auto named = [&](std::size_t group) {
        return VerdictTr::tr("the %1 group").arg(groupName(comparison.groups[group]));
    };
    QString text = sentenceOf({named(pair.a), named(pair.b)}, pair, comparison);
    text[0] = text[0].toUpper();
    return text;
}

QString pairWords(const MediaPair& pair, const SeasonComparison& comparison)
{
    switch (pair.verdict) {
    case Verdict::More:
        return VerdictTr::tr("more");
    case Verdict::Less:
        return VerdictTr::tr("less");
    case Verdict::SameWithinMargin:
        return VerdictTr::tr("the same, within ±%1").arg(marginPercent(comparison));
    case Verdict::RealButTooSmall:
        return VerdictTr::tr("real, but too small to matter");
    case Verdict::NotComparable:
        return VerdictTr::tr("not comparable");
    case Verdict::CantTellYet:
        break;
    case Verdict::NoVerdict:
        return withMore(whySentence(pair.why.value_or(NoVerdictReason::FewDegrees), comparison),
                        pair);
    }
    if (!pair.more) {
        return VerdictTr::tr("can't tell yet");
    }
    return pair.more->trials ? VerdictTr::tr("can't tell yet: about %n more trial(s)", nullptr,
                                             *pair.more->trials)
                             : VerdictTr::tr("can't tell yet: more than a year of trials");
}

QString intervalText(const MediaPair& pair, const SeasonComparison& comparison)
{
    if (!stats::isLog(comparison.scale)) {
        return pair.lower && pair.upper
                   ? VerdictTr::tr("%1 to %2")
                         .arg(numberText(*pair.lower, responseDecimals(comparison)),
                              responseText(*pair.upper, comparison))
                   : QString();
    }
    if (!pair.lowerPercent || !pair.upperPercent) {
        return {};
    }
    const int decimals = decimalsFor(*pair.lowerPercent, *pair.upperPercent);
    return VerdictTr::tr("%1 to %2")
        .arg(numberText(*pair.lowerPercent, decimals), percentText(*pair.upperPercent, decimals));
}

} // namespace plumule::ui
