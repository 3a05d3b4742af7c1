// Part of ui/review/verdict_sentence.h: names, and sentences that stand beside verdicts.
#include "ui/review/verdict_sentence.h"

#include "ui/text/text.h"

#include <QCoreApplication>

#include <array>

namespace plumule::ui {
namespace {

class NameTr
{
    Q_DECLARE_TR_FUNCTIONS(Verdict)
};

QString fedText(std::size_t medium, const SeasonComparison& comparison)
{
    for (const Finding& finding : comparison.fairness) {
        if (finding.aspect != Aspect::Feeding) {
            continue;
        }
        for (const AspectOfMedium& each : finding.media) {
            if (each.medium == medium && each.levels.size() == 1) {
                return each.levels.front().name == "nutrient" ? NameTr::tr("with nutrient")
                                                              : NameTr::tr("without nutrient");
            }
        }
    }
    return {};
}

QString ordinal(int number)
{
    static constexpr std::array kWords = {
        QT_TRANSLATE_NOOP("Verdict", "third"),   QT_TRANSLATE_NOOP("Verdict", "fourth"),
        QT_TRANSLATE_NOOP("Verdict", "fifth"),   QT_TRANSLATE_NOOP("Verdict", "sixth"),
        QT_TRANSLATE_NOOP("Verdict", "seventh"), QT_TRANSLATE_NOOP("Verdict", "eighth"),
        QT_TRANSLATE_NOOP("Verdict", "ninth"),   QT_TRANSLATE_NOOP("Verdict", "tenth")};
    const int index = number - 3;
    return index >= 0 && index < static_cast<int>(kWords.size())
               ? NameTr::tr(kWords[static_cast<std::size_t>(index)])
               : NameTr::tr("last");
}

} // namespace

QString nameInPair(std::size_t medium, const MediaPair& pair, const SeasonComparison& comparison)
{
    const QString name = QString::fromStdString(comparison.means[medium].medium.name);
    const QString fed = pair.as == ComparedAs::AsFed ? fedText(medium, comparison) : QString();
    return fed.isEmpty() ? name : name + ' ' + fed;
}

QString groupName(const GroupOfMedia& group)
{
    static const std::map<std::string, const char*> kNames = {
        {"loose_mix", QT_TRANSLATE_NOOP("Verdict", "loose-mix")},
        {"mat", QT_TRANSLATE_NOOP("Verdict", "mat")},
        {"mesh", QT_TRANSLATE_NOOP("Verdict", "mesh")},
        {"inert", QT_TRANSLATE_NOOP("Verdict", "inert")},
        {"nutrient_bearing", QT_TRANSLATE_NOOP("Verdict", "nutrient-bearing")},
        {"reusable", QT_TRANSLATE_NOOP("Verdict", "reusable")},
        {"single_use", QT_TRANSLATE_NOOP("Verdict", "single-use")}};
    const auto found = kNames.find(group.name);
    return found == kNames.end() ? QString::fromStdString(group.name) : NameTr::tr(found->second);
}

QString pairName(const MediaPair& pair, const SeasonComparison& comparison)
{
    return NameTr::tr("%1 over %2")
        .arg(QString::fromStdString(comparison.means[pair.a].medium.name),
             QString::fromStdString(comparison.means[pair.b].medium.name));
}

QString groupPairName(const MediaPair& pair, const SeasonComparison& comparison)
{
    return NameTr::tr("%1 over %2")
        .arg(groupName(comparison.groups[pair.a]), groupName(comparison.groups[pair.b]));
}

QString moreSentence(const MediaPair& pair)
{
    if (!pair.more) {
        return {};
    }
    if (!pair.more->trials) {
        return NameTr::tr("More than a year of trials.");
    }
    return NameTr::tr("About %n more trial(s) with %1 trays of each.", nullptr, *pair.more->trials)
        .arg(pair.more->traysEach);
}

QString waitingSentence(const SeasonComparison& comparison)
{
    if (const auto planned = comparison.series.plannedTrials) {
        return NameTr::tr("%1 of %n trial(s) in; the answer comes with the %2.", nullptr, *planned)
            .arg(comparison.trialsIn)
            .arg(ordinal(*planned));
    }
    int trays = 0;
    int in = 0;
    for (const Sowing& sowing : comparison.sowings) {
        trays += sowing.trays;
        in += sowing.in;
    }
    return NameTr::tr("%1 of %n tray(s) in; the answer comes with the last.", nullptr, trays)
        .arg(in);
}

} // namespace plumule::ui
