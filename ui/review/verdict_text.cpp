#include "ui/review/verdict_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

class VerdictTr
{
    Q_DECLARE_TR_FUNCTIONS(Verdict)
};

QString mediumName(const SeasonComparison& comparison, std::size_t index)
{
    return QString::fromStdString(comparison.means[index].medium.name);
}

QString number(double value, const SeasonComparison& comparison)
{
    return numberText(value, responseDecimals(comparison));
}

QString intervalOf(const MediaPair& pair, const SeasonComparison& comparison, bool isTurned)
{
    if (!pair.lower || !pair.upper) {
        return {};
    }
    const double low = isTurned ? -*pair.upper : *pair.lower;
    const double high = isTurned ? -*pair.lower : *pair.upper;
    return VerdictTr::tr("95% interval %1 to %2")
        .arg(number(low, comparison), number(high, comparison));
}

// "%1 … %2 by %3 (%4)." for a difference that is clear of nothing.
const char* differenceSentence(Response response)
{
    switch (response) {
    case Response::CostPerGram:
        return QT_TRANSLATE_NOOP("Verdict", "%1 costs %3 more than %2 (%4).");
    case Response::HeightOnDay:
        return QT_TRANSLATE_NOOP("Verdict", "%1 stands %3 taller than %2 (%4).");
    case Response::DaysToHarvest:
        return QT_TRANSLATE_NOOP("Verdict", "%1 takes %3 longer than %2 (%4).");
    case Response::Residue:
        return QT_TRANSLATE_NOOP("Verdict", "%1 leaves %3 more residue than %2 (%4).");
    case Response::Evenness:
        return QT_TRANSLATE_NOOP("Verdict", "%1 grows less evenly than %2, by %3 (%4).");
    case Response::Work:
        return QT_TRANSLATE_NOOP("Verdict", "%1 takes %3 more than %2 (%4).");
    default:
        return QT_TRANSLATE_NOOP("Verdict", "%1 out-yields %2 by %3 (%4).");
    }
}

QString clearSentence(const MediaPair& pair, const SeasonComparison& comparison)
{
    const bool isTurned = *pair.difference < 0;
    const std::size_t more = isTurned ? pair.b : pair.a;
    const std::size_t less = isTurned ? pair.a : pair.b;
    return VerdictTr::tr(differenceSentence(comparison.ask.response))
        .arg(mediumName(comparison, more), mediumName(comparison, less),
             responseText(std::abs(*pair.difference), comparison),
             intervalOf(pair, comparison, isTurned));
}

QString marginText(const SeasonComparison& comparison)
{
    const QString value = QChar(0x00B1) + responseText(comparison.margin.value, comparison);
    switch (comparison.margin.from) {
    case MarginFrom::Asked:
        return VerdictTr::tr("your margin of %1").arg(value);
    case MarginFrom::Trials:
        return VerdictTr::tr("the trials' margin of %1").arg(value);
    case MarginFrom::Default:
        return VerdictTr::tr("a margin of %1, a tenth of the mean").arg(value);
    }
    return value;
}

QString pairSentence(const MediaPair& pair, const SeasonComparison& comparison)
{
    const QString a = mediumName(comparison, pair.a);
    const QString b = mediumName(comparison, pair.b);
    switch (pair.verdict) {
    case PairVerdict::More:
    case PairVerdict::Less:
        return clearSentence(pair, comparison);
    case PairVerdict::RealButTooSmall:
        return VerdictTr::tr("%1 The difference is real, but too small to matter by %2.")
            .arg(clearSentence(pair, comparison), marginText(comparison));
    case PairVerdict::SameWithinMargin:
        return VerdictTr::tr("%1 and %2 are the same within %3 (%4).")
            .arg(a, b, marginText(comparison), intervalOf(pair, comparison, false));
    case PairVerdict::CantTellYet:
        return (pair.needed
                    ? VerdictTr::tr("%1 and %2 can't be told apart yet (%3); it takes about %4 "
                                    "trays of each.")
                          .arg(a, b, intervalOf(pair, comparison, false))
                          .arg(pair.needed->each)
                    : VerdictTr::tr("%1 and %2 can't be told apart yet (%3).")
                          .arg(a, b, intervalOf(pair, comparison, false)));
    case PairVerdict::NotComparable:
        return VerdictTr::tr("%1 and %2 can't be compared: they never met in one trial or variety.")
            .arg(a, b);
    case PairVerdict::NoVerdict:
        return VerdictTr::tr("%1 and %2: %3.").arg(a, b, pairWords(pair));
    }
    return {};
}

// How much a pair has to say: clear differences by their size, then sameness, then the rest.
double weightOf(const MediaPair& pair)
{
    switch (pair.verdict) {
    case PairVerdict::More:
    case PairVerdict::Less:
        return 1e9 + std::abs(pair.difference.value_or(0));
    case PairVerdict::RealButTooSmall:
        return 1e6;
    case PairVerdict::SameWithinMargin:
        return 1e3;
    case PairVerdict::CantTellYet:
        return 1;
    default:
        return 0;
    }
}

std::vector<const MediaPair*> byWeight(const SeasonComparison& comparison)
{
    std::vector<const MediaPair*> pairs;
    for (const MediaPair& pair : comparison.pairs) {
        pairs.push_back(&pair);
    }
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const auto* a, const auto* b) { return weightOf(*a) > weightOf(*b); });
    return pairs;
}

// Where chance may have made every difference.
QString nothingToldSentence(const std::vector<const MediaPair*>& pairs,
                            const SeasonComparison& comparison)
{
    int needed = 0;
    for (const MediaPair* pair : pairs) {
        needed = std::max(needed, pair->needed ? pair->needed->each : 0);
    }
    const auto media = comparison.means.size();
    return needed > 0
               ? VerdictTr::tr("None of the %1 media can be told apart yet; it takes about %2 "
                               "trays of each.")
                     .arg(media)
                     .arg(needed)
               : VerdictTr::tr("None of the %1 media can be told apart yet.").arg(media);
}

QString spreadSentence(const SeasonComparison& comparison)
{
    if (comparison.spread.sd <= 0) {
        return {};
    }
    QString text = VerdictTr::tr("Tray-to-tray spread is %1")
                       .arg(responseText(comparison.spread.sd, comparison));
    if (comparison.spread.from == SpreadFrom::Default) {
        text += VerdictTr::tr(", taken as a tenth of the mean since nothing here is replicated");
    }
    if (comparison.spread.smallestDifference) {
        text += VerdictTr::tr("; a difference under %1 would mostly go unseen")
                    .arg(responseText(*comparison.spread.smallestDifference, comparison));
    }
    return text + '.';
}

VerdictWords wordsByVariety(const SeasonComparison& comparison)
{
    VerdictWords answer;
    answer.headline =
        VerdictTr::tr("The media do not differ alike in all varieties: the answer is by variety.");
    QStringList lines;
    for (const SeasonComparison& each : comparison.byVariety) {
        lines << QStringLiteral("%1: %2").arg(QString::fromStdString(each.variety),
                                              verdictWords(each).headline);
    }
    answer.detail = lines.join('\n');
    return answer;
}

} // namespace

int responseDecimals(const SeasonComparison& comparison)
{
    if (comparison.ask.response == Response::CostPerGram) {
        return 4;
    }
    // Two digits of the spread between trays: more would be noise, fewer would hide differences.
    const double spread = comparison.spread.sd;
    return spread <= 0 || spread >= 10 ? 0 : spread >= 1 ? 1 : spread >= 0.1 ? 2 : 3;
}

QString pText(double p)
{
    return p < 0.0001 ? QStringLiteral("< 0.0001") : numberText(p, p < 0.1 ? 4 : 2);
}

QString responseUnit(const SeasonComparison& comparison)
{
    switch (comparison.ask.response) {
    case Response::YieldPerTray:
        return VerdictTr::tr("g a tray");
    case Response::YieldPerArea:
        return VerdictTr::tr("g/m²");
    case Response::YieldPerSeed:
        return VerdictTr::tr("g per g of seed");
    case Response::YieldPerDay:
        return VerdictTr::tr("g a day");
    case Response::CostPerGram:
        return VerdictTr::tr("%1 a gram").arg(QString::fromStdString(comparison.currency));
    case Response::HeightOnDay:
        return VerdictTr::tr("mm");
    case Response::DaysToHarvest:
        return VerdictTr::tr("days");
    case Response::Residue:
        return VerdictTr::tr("g of residue");
    case Response::Evenness:
        return VerdictTr::tr("% variation within a tray");
    case Response::Work:
        return VerdictTr::tr("minutes of work a tray");
    }
    return {};
}

QString responseText(double value, const SeasonComparison& comparison)
{
    return QStringLiteral("%1 %2").arg(number(value, comparison), responseUnit(comparison));
}

QString pairWords(const MediaPair& pair)
{
    switch (pair.verdict) {
    case PairVerdict::More:
        return VerdictTr::tr("more");
    case PairVerdict::Less:
        return VerdictTr::tr("less");
    case PairVerdict::SameWithinMargin:
        return VerdictTr::tr("same within the margin");
    case PairVerdict::RealButTooSmall:
        return VerdictTr::tr("real, but too small to matter");
    case PairVerdict::NotComparable:
        return VerdictTr::tr("not comparable");
    case PairVerdict::CantTellYet:
        return pair.needed ? VerdictTr::tr("can't tell yet; it takes about %1 trays of each")
                                 .arg(pair.needed->each)
                           : VerdictTr::tr("can't tell yet");
    case PairVerdict::NoVerdict:
        break;
    }
    if (pair.needed) {
        const char* text =
            pair.needed->from == SpreadFrom::Default
                ? QT_TRANSLATE_NOOP("Verdict", "no verdict; it would take about %1 trays of "
                                               "each, if trays differ by the usual tenth")
                : QT_TRANSLATE_NOOP("Verdict", "no verdict; it would take about %1 trays of each");
        return VerdictTr::tr(text).arg(pair.needed->each);
    }
    return VerdictTr::tr("no verdict");
}

QString modelWords(const ComparisonModel& model)
{
    if (model.isBootstrap) {
        return VerdictTr::tr("within variety and trial");
    }
    QStringList parts;
    const std::vector<std::pair<ModelPart, QString>> named = {
        {ModelPart::Feeding, VerdictTr::tr("feeding")},
        {ModelPart::Variety, VerdictTr::tr("variety")},
        {ModelPart::Trial, VerdictTr::tr("trial")},
        {ModelPart::Block, VerdictTr::tr("block")},
        {ModelPart::Column, VerdictTr::tr("place along the shelf")},
        {ModelPart::SeedDensity, VerdictTr::tr("seed density")}};
    for (const auto& [part, name] : named) {
        if (model.accountsFor(part)) {
            parts << name;
        }
    }
    return parts.isEmpty() ? VerdictTr::tr("as weighed")
                           : VerdictTr::tr("adjusted for %1").arg(parts.join(", "));
}

VerdictWords verdictWords(const SeasonComparison& comparison)
{
    if (!comparison.byVariety.empty()) {
        return wordsByVariety(comparison);
    }
    VerdictWords answer;
    const auto pairs = byWeight(comparison);
    if (pairs.empty()) {
        answer.headline =
            comparison.means.empty()
                ? VerdictTr::tr("No tray of this span can be compared.")
                : VerdictTr::tr("Only one medium was grown: there is nothing to compare it with.");
        return answer;
    }
    const bool isAllOpen =
        pairs.size() > 1 && std::all_of(pairs.begin(), pairs.end(), [](const MediaPair* pair) {
            return pair->verdict == PairVerdict::CantTellYet;
        });
    answer.headline = isAllOpen ? nothingToldSentence(pairs, comparison)
                                : pairSentence(*pairs.front(), comparison);
    QStringList rest;
    for (std::size_t i = isAllOpen ? 0 : 1; i < std::min<std::size_t>(pairs.size(), 4); ++i) {
        rest << pairSentence(*pairs[i], comparison);
    }
    rest << spreadSentence(comparison);
    answer.detail = rest.join(' ').trimmed();
    return answer;
}

QStringList checkWords(const DataChecks& checks)
{
    QStringList lines;
    if (checks.spread && !checks.spread->isAlike) {
        lines << VerdictTr::tr("The media's trays do not spread alike (p %1).")
                     .arg(pText(checks.spread->p));
    }
    if (checks.normality && !checks.normality->isNormal) {
        lines << VerdictTr::tr("What the model leaves over is not evenly bell-shaped (p %1).")
                     .arg(pText(checks.normality->p));
    }
    for (const OddTray& tray : checks.oddTrays) {
        lines << VerdictTr::tr(
                     "%1 lies far from the others of its medium. It is counted; set it aside "
                     "only with "
                     "a reason.")
                     .arg(QString::fromStdString(tray.code));
    }
    return lines;
}

} // namespace plumule::ui
