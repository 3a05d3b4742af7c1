#include "ui/review/verdict_text.h"

#include "ui/review/verdict_sentence.h"
#include "ui/text/text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

class AnswerTr
{
    Q_DECLARE_TR_FUNCTIONS(Verdict)
};

using stats::Verdict;

constexpr int kHalfYear = 183; // days

QString nameOfCompared(const SeasonComparison& comparison, std::size_t medium)
{
    return QString::fromStdString(comparison.means[medium].medium.name);
}

// How much a pair has to say: clear differences by their size, then sameness, then the rest.
double weightOf(const MediaPair& pair)
{
    switch (pair.verdict) {
    case Verdict::More:
    case Verdict::Less:
        return 1e9 + std::abs(pair.percent.value_or(0));
    case Verdict::RealButTooSmall:
        return 1e6;
    case Verdict::SameWithinMargin:
        return 1e3;
    case Verdict::CantTellYet:
        return 10;
    case Verdict::NoVerdict:
        return pair.percent ? 2 : 1;
    case Verdict::NotComparable:
        break;
    }
    return 0;
}

QString discardSentence(const DiscardsOfMedium& one, const SeasonComparison& comparison)
{
    int sown = 0;
    int discarded = 0;
    for (const DiscardsOfMedium& other : comparison.discards) {
        sown += other.medium == one.medium ? 0 : other.sown;
        discarded += other.medium == one.medium ? 0 : other.discarded;
    }
    const QString name = nameOfCompared(comparison, one.medium);
    QString text =
        discarded == 0
            ? AnswerTr::tr("%1 of %2 trays on %3 were thrown away, none of the %4 others")
                  .arg(one.discarded)
                  .arg(one.sown)
                  .arg(name)
                  .arg(sown)
            : AnswerTr::tr("%1 of %2 trays on %3 were thrown away, %4 of the %5 others")
                  .arg(one.discarded)
                  .arg(one.sown)
                  .arg(name)
                  .arg(discarded)
                  .arg(sown);
    if (one.discarded == 0) {
        return text + '.';
    }
    const bool countsFailed = comparison.scale == stats::CellScale::LogOfRatio;
    text += countsFailed ? AnswerTr::tr("; they count here.")
                         : AnswerTr::tr(": its mean is that of the survivors.");
    if (one.isInOneTrial) {
        text += ' ' + AnswerTr::tr("All of them in one sowing: losses come in clusters, and this "
                                   "may have been one.");
    }
    return text;
}

QStringList discardSentences(const SeasonComparison& comparison)
{
    QStringList lines;
    for (const DiscardsOfMedium& one : comparison.discards) {
        if (one.differs && one.discarded > 0) {
            lines << discardSentence(one, comparison);
        }
    }
    return lines;
}

QString asFedSentence(const MediaPair& pair)
{
    return pair.as == ComparedAs::AsFed && pair.percent
               ? AnswerTr::tr("Which of the two did it, the medium or the feeding, can't be told: "
                              "they were never apart.")
               : QString();
}

// Where chance may have made every difference.
QString nothingToldSentence(const SeasonComparison& comparison)
{
    std::optional<MediaPair> most;
    for (const MediaPair& pair : comparison.pairs) {
        if (pair.more) {
            most = pair;
        }
    }
    const QString none =
        AnswerTr::tr("None of the %1 media can be told apart yet.").arg(comparison.means.size());
    const QString more = most ? moreSentence(*most) : QString();
    return more.isEmpty() ? none : none + ' ' + more;
}

bool areAll(const SeasonComparison& comparison, Verdict verdict)
{
    return comparison.pairs.size() > 1 &&
           std::all_of(comparison.pairs.begin(), comparison.pairs.end(),
                       [&](const MediaPair& pair) { return pair.verdict == verdict; });
}

bool areAllFor(const SeasonComparison& comparison, stats::NoVerdictReason why)
{
    return !comparison.pairs.empty() &&
           std::all_of(comparison.pairs.begin(), comparison.pairs.end(),
                       [&](const MediaPair& pair) {
                           return pair.why == why || pair.verdict == Verdict::NotComparable;
                       }) &&
           std::any_of(comparison.pairs.begin(), comparison.pairs.end(),
                       [&](const MediaPair& pair) { return pair.why == why; });
}

QString headlineOf(const SeasonComparison& comparison, const MediaPair& first)
{
    if (comparison.isWaiting) {
        return waitingSentence(comparison);
    }
    if (areAllFor(comparison, stats::NoVerdictReason::Filtered)) {
        return AnswerTr::tr("Trays chosen by hand: means and intervals, and no verdict, else one "
                            "would choose until one speaks. The season answers.");
    }
    if (areAll(comparison, Verdict::CantTellYet)) {
        return nothingToldSentence(comparison);
    }
    return pairSentence(first, comparison);
}

VerdictWords wordsOfGroups(const SeasonComparison& comparison)
{
    VerdictWords words;
    const auto pairs = pairsByWeight(comparison.groupPairs);
    words.headline = comparison.isWaiting ? waitingSentence(comparison)
                                          : groupSentence(*pairs.front(), comparison);
    QStringList rest;
    for (std::size_t i = 1; i < std::min<std::size_t>(pairs.size(), 4); ++i) {
        rest << groupSentence(*pairs[i], comparison);
    }
    for (const GroupOfMedia& group : comparison.groups) {
        if (group.widestPercent) {
            const char* text =
                group.areToldApart
                    ? QT_TRANSLATE_NOOP("Verdict", "Members of the %1 group differ by up to %2 %.")
                    : QT_TRANSLATE_NOOP(
                          "Verdict",
                          "Members of the %1 group lie within %2 % of each other, not told apart.");
            rest << AnswerTr::tr(text).arg(groupName(group), numberText(*group.widestPercent, 0));
        }
    }
    words.detail = rest.join(' ');
    return words;
}

bool areSowingsBunched(const SeasonComparison& comparison)
{
    const Sowing* first = nullptr;
    const Sowing* last = nullptr;
    for (const TrialPart& part : comparison.byTrial) {
        const Sowing& sowing = comparison.sowings[part.sowing];
        first = first == nullptr || sowing.sownOn < first->sownOn ? &sowing : first;
        last = last == nullptr || last->sownOn < sowing.sownOn ? &sowing : last;
    }
    return first != nullptr && last->sownOn - first->sownOn < kHalfYear;
}

} // namespace

std::vector<const MediaPair*> pairsByWeight(const std::vector<MediaPair>& all)
{
    std::vector<const MediaPair*> pairs;
    pairs.reserve(all.size());
    for (const MediaPair& pair : all) {
        pairs.push_back(&pair);
    }
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const auto* a, const auto* b) { return weightOf(*a) > weightOf(*b); });
    return pairs;
}

VerdictWords verdictWords(const SeasonComparison& comparison)
{
    VerdictWords words;
    if (comparison.groupPairs.empty()) {
        const auto pairs = pairsByWeight(comparison.pairs);
        if (pairs.empty()) {
            words.headline = comparison.means.empty()
                                 ? AnswerTr::tr("No tray of this span can be compared.")
                                 : AnswerTr::tr("Only one medium was grown: there is nothing to "
                                                "compare it with.");
            return words;
        }
        words.headline = headlineOf(comparison, *pairs.front());
        QStringList rest;
        const bool isOneForAll = words.headline != pairSentence(*pairs.front(), comparison);
        if (!isOneForAll) {
            rest << asFedSentence(*pairs.front());
        }
        bool isAdvised = isOneForAll || pairs.front()->more;
        const bool isSaidOfAll =
            comparison.isWaiting || areAllFor(comparison, stats::NoVerdictReason::Filtered);
        for (std::size_t i = isOneForAll ? 0 : 1;
             i < std::min<std::size_t>(pairs.size(), 3) && !isSaidOfAll; ++i) {
            MediaPair pair = *pairs[i];
            if (isAdvised) {
                pair.more.reset(); // said once already
            }
            isAdvised = isAdvised || pair.more;
            rest << pairSentence(pair, comparison);
        }
        rest.removeAll(QString());
        words.detail = rest.join(' ');
    } else {
        words = wordsOfGroups(comparison);
    }
    words.discards = discardSentences(comparison);
    return words;
}

QStringList cautionWords(const SeasonComparison& comparison)
{
    QStringList lines;
    if (comparison.isSideMetric && comparison.level) {
        lines << AnswerTr::tr("A side result: its bounds are wider, since %1 metrics share what "
                              "chance is allowed.")
                     .arg(kSideMetrics);
    }
    if (comparison.scope == stats::AnswerScope::NextSowing && comparison.trials >= 3 &&
        areSowingsBunched(comparison)) {
        lines << AnswerTr::tr("All within half a year: what suits a medium in one part of the "
                              "year may not in another. Spread trials over the year.");
    }
    return lines;
}

QString varietyWords(const SeasonComparison& comparison)
{
    if (comparison.varieties.size() < 2 || comparison.variety ||
        comparison.scope != stats::AnswerScope::NextSowing) {
        return {};
    }
    if (!comparison.gate) {
        return AnswerTr::tr("No answer by variety yet: it takes two sowings of two varieties. The "
                            "answer above is of all of them.");
    }
    if (!comparison.gate->isOpen) {
        return AnswerTr::tr("Media don't differ otherwise from variety to variety, as far as can "
                            "be told: the answer above is of all of them.");
    }
    QStringList lines{AnswerTr::tr("Media differ otherwise from variety to variety.")};
    for (const VarietyPart& part : comparison.byVariety) {
        const auto pairs = pairsByWeight(part.pairs);
        if (!pairs.empty()) {
            lines << QStringLiteral("%1: %2").arg(QString::fromStdString(part.variety),
                                                  pairSentence(*pairs.front(), comparison));
        }
    }
    return lines.join(' ');
}

QString spreadWords(const SeasonComparison& comparison)
{
    QStringList parts;
    if (comparison.spreadPercent) {
        parts << AnswerTr::tr("spread tray to tray %1 %")
                     .arg(numberText(*comparison.spreadPercent, 1));
    }
    if (comparison.trialSpreadPercent) {
        parts << AnswerTr::tr("of a medium from sowing to sowing %1 %")
                     .arg(numberText(*comparison.trialSpreadPercent, 1));
    }
    return parts.join(", ");
}

// How the intervals were come to, and at which level.
QStringList methodWords(const SeasonComparison& comparison)
{
    const bool isOfNext = comparison.scope == stats::AnswerScope::NextSowing;
    QStringList lines;
    lines << (isOfNext
                  ? AnswerTr::tr(
                        "Means of %n sowing(s) by medium, by least squares with the sowing; "
                        "intervals for all pairs together (Tukey–Kramer).",
                        nullptr, comparison.trials)
                  : AnswerTr::tr("Trays within %n sowing(s), block and medium taken off; intervals "
                                 "for all pairs together.",
                                 nullptr, comparison.trials));
    if (comparison.level) {
        lines << AnswerTr::tr("Level of all pairs together: %1 % (%2).")
                     .arg(numberText(100 * *comparison.level, 2),
                          isOfNext && !comparison.series.plannedTrials
                              ? AnswerTr::tr("4 % by the number of sowings, so that it may be "
                                             "looked at after each")
                              : AnswerTr::tr("looked at once"));
    }
    return lines;
}

QStringList sumsWords(const SeasonComparison& comparison)
{
    QStringList lines = methodWords(comparison);
    if (comparison.unlike.isUnlike) {
        lines << AnswerTr::tr("Media spread unlike: each pair is judged by its own spread at half "
                              "the level.");
    } else if (comparison.unlike.brownForsytheP) {
        lines << AnswerTr::tr("Media spread alike (Brown–Forsythe p %1).")
                     .arg(pText(*comparison.unlike.brownForsytheP));
    }
    if (comparison.gate) {
        lines << AnswerTr::tr("Medium × variety: F %1, df %2 and %3, p %4.")
                     .arg(numberText(comparison.gate->f, 2), numberText(comparison.gate->df1, 0),
                          numberText(comparison.gate->df2, 0), pText(comparison.gate->p));
    }
    for (const DiscardsOfMedium& one : comparison.discards) {
        if (one.discarded > 0) {
            lines << AnswerTr::tr("%1: %2 of %3 trays thrown away, p %4 (Fisher, mid-p).")
                         .arg(nameOfCompared(comparison, one.medium))
                         .arg(one.discarded)
                         .arg(one.sown)
                         .arg(pText(one.p));
        }
    }
    const QString spread = spreadWords(comparison);
    if (!spread.isEmpty()) {
        lines << AnswerTr::tr("Percent of the mean: %1.").arg(spread);
    }
    return lines;
}

QString modelWords(const ComparisonModel& model)
{
    QStringList parts;
    const std::vector<std::pair<ModelPart, QString>> named = {
        {ModelPart::Feeding, AnswerTr::tr("feeding")},
        {ModelPart::Variety, AnswerTr::tr("variety")},
        {ModelPart::Trial, AnswerTr::tr("trial")},
        {ModelPart::Block, AnswerTr::tr("block")},
        {ModelPart::Column, AnswerTr::tr("place along the shelf")},
        {ModelPart::SeedDensity, AnswerTr::tr("seed density")}};
    for (const auto& [part, name] : named) {
        if (model.accountsFor(part)) {
            parts << name;
        }
    }
    return parts.isEmpty() ? AnswerTr::tr("as weighed")
                           : AnswerTr::tr("adjusted for %1").arg(parts.join(", "));
}

QStringList oddTrayWords(const DataChecks& checks)
{
    QStringList lines;
    for (const OddTray& tray : checks.oddTrays) {
        lines << AnswerTr::tr("%1 lies far from the others of its medium. It is counted; set it "
                              "aside only with a reason.")
                     .arg(QString::fromStdString(tray.code));
    }
    return lines;
}

} // namespace plumule::ui
