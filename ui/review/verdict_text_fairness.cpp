// Part of ui/review/verdict_text.h: what was unfair.
#include "ui/review/verdict_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class FairnessTr
{
    Q_DECLARE_TR_FUNCTIONS(Fairness)
};

QString aspectName(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return FairnessTr::tr("feeding");
    case Aspect::Variety:
        return FairnessTr::tr("variety");
    case Aspect::Trial:
        return FairnessTr::tr("trial");
    case Aspect::SeedLot:
        return FairnessTr::tr("seed lot");
    case Aspect::SeedDensity:
        return FairnessTr::tr("seed density");
    case Aspect::Shelf:
        return FairnessTr::tr("shelf and its light");
    case Aspect::Season:
        return FairnessTr::tr("time of year");
    case Aspect::DaysGrown:
        return FairnessTr::tr("days grown");
    case Aspect::PieceUses:
        return FairnessTr::tr("uses of the piece");
    case Aspect::Person:
        return FairnessTr::tr("who sowed");
    case Aspect::Temperature:
        return FairnessTr::tr("temperature");
    case Aspect::Vpd:
        return FairnessTr::tr("dryness of the air");
    case Aspect::DailyLight:
        return FairnessTr::tr("light a day");
    }
    return {};
}

QString aspectList(const std::vector<Aspect>& aspects)
{
    QStringList names;
    for (const Aspect aspect : aspects) {
        names << aspectName(aspect);
    }
    return names.join(", ");
}

QString fullyWords(const Finding& finding, const QStringList& media)
{
    if (!finding.worst) {
        return FairnessTr::tr("Wholly mixed with the medium: %1.").arg(aspectName(finding.aspect));
    }
    return FairnessTr::tr(
               "%1 and %2 have nothing in common in %3: their difference is that of medium and %3 "
               "together.")
        .arg(media.value(static_cast<qsizetype>(finding.worst->first)),
             media.value(static_cast<qsizetype>(finding.worst->second)),
             aspectName(finding.aspect));
}

QString adviceText(Advice advice)
{
    switch (advice) {
    case Advice::FeedAllAlike:
        return FairnessTr::tr("feed all media alike");
    case Advice::GrowEachVarietyOnEveryMedium:
        return FairnessTr::tr("grow each variety on every medium");
    case Advice::GrowEveryMediumInEachTrial:
        return FairnessTr::tr("grow every medium in each trial");
    case Advice::UseOneSeedLot:
        return FairnessTr::tr("use one seed lot");
    case Advice::SowAllAsDensely:
        return FairnessTr::tr("sow all as densely");
    case Advice::SpreadMediaOverShelves:
        return FairnessTr::tr("spread the media over the shelves by lot");
    case Advice::SowAllOnOneDay:
        return FairnessTr::tr("sow all on one day");
    case Advice::CutAllOnOneDay:
        return FairnessTr::tr("cut all on one day of growth");
    case Advice::UsePiecesAsWorn:
        return FairnessTr::tr("use pieces that are worn alike");
    case Advice::ShareTheWork:
        return FairnessTr::tr("share the sowing over all media");
    case Advice::GrowInOneClimate:
        return FairnessTr::tr("grow all media in one climate, side by side");
    case Advice::LightAllAlike:
        return FairnessTr::tr("give all media as much light");
    }
    return {};
}

// What to do with the two media that are the most unlike.
const char* adviceForTwo(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return QT_TRANSLATE_NOOP("Fairness", "Feed %1 and %2 alike in one trial");
    case Aspect::Variety:
        return QT_TRANSLATE_NOOP("Fairness", "Grow the same varieties on %1 and %2");
    case Aspect::Trial:
        return QT_TRANSLATE_NOOP("Fairness", "Grow %1 and %2 in the same sowings");
    case Aspect::SeedLot:
        return QT_TRANSLATE_NOOP("Fairness", "Sow %1 and %2 from one seed lot");
    case Aspect::SeedDensity:
        return QT_TRANSLATE_NOOP("Fairness", "Sow %1 and %2 as densely");
    case Aspect::Shelf:
        return QT_TRANSLATE_NOOP("Fairness", "Spread %1 and %2 over the same shelves by lot");
    case Aspect::Season:
        return QT_TRANSLATE_NOOP("Fairness", "Sow %1 and %2 at the same times of the year");
    case Aspect::DaysGrown:
        return QT_TRANSLATE_NOOP("Fairness", "Cut %1 and %2 on the same day of growth");
    case Aspect::PieceUses:
        return QT_TRANSLATE_NOOP("Fairness", "Use pieces of %1 and %2 that are worn alike");
    case Aspect::Temperature:
    case Aspect::Vpd:
        return QT_TRANSLATE_NOOP("Fairness", "Grow %1 and %2 side by side in one climate");
    case Aspect::DailyLight:
        return QT_TRANSLATE_NOOP("Fairness", "Give %1 and %2 as much light a day");
    case Aspect::Person:
        break;
    }
    return QT_TRANSLATE_NOOP("Fairness", "Let the same people sow %1 and %2");
}

QString startingLarge(QString text)
{
    text[0] = text[0].toUpper();
    return text;
}

QString adviceSentence(const Finding& finding, const QStringList& media)
{
    const QString what = finding.worst
                             ? FairnessTr::tr(adviceForTwo(finding.aspect))
                                   .arg(media.value(static_cast<qsizetype>(finding.worst->first)),
                                        media.value(static_cast<qsizetype>(finding.worst->second)))
                             : startingLarge(adviceText(adviceFor(finding.aspect)));
    if (finding.confounding == Confounding::Fully) {
        return FairnessTr::tr("%1: till then their difference may be that of %2.")
            .arg(what, aspectName(finding.aspect));
    }
    if (!finding.fullyInTrials.empty()) {
        QStringList trials;
        for (const std::string& trial : finding.fullyInTrials) {
            trials << QString::fromStdString(trial);
        }
        return FairnessTr::tr("%1 (wholly apart in trial %2).").arg(what, trials.join(", "));
    }
    return FairnessTr::tr("%1 (unevenly shared so far).").arg(what);
}

QStringList mediaOf(const SeasonComparison& comparison)
{
    QStringList media;
    for (const ComparedMedium& mean : comparison.means) {
        media << QString::fromStdString(mean.medium.name);
    }
    return media;
}

} // namespace

QStringList adviceSentences(const SeasonComparison& comparison)
{
    QStringList lines;
    const QStringList media = mediaOf(comparison);
    for (const Finding& finding : comparison.fairness) {
        if (callsForAdvice(finding)) {
            lines << adviceSentence(finding, media);
        }
    }
    return lines;
}

QString allowedForWords(const SeasonComparison& comparison)
{
    std::vector<Aspect> allowedFor;
    for (const Finding& finding : comparison.fairness) {
        if (finding.confounding == Confounding::Partly && finding.isInModel) {
            allowedFor.push_back(finding.aspect);
        }
    }
    return allowedFor.empty()
               ? QString()
               : FairnessTr::tr("Not shared out evenly, but allowed for in the means: %1.")
                     .arg(aspectList(allowedFor));
}

QStringList fairnessWords(const SeasonComparison& comparison)
{
    return fairnessWords(comparison.fairness, mediaOf(comparison));
}

QStringList fairnessWords(const std::vector<Finding>& findings, const QStringList& media)
{
    QStringList lines;
    std::vector<Aspect> warned;
    std::vector<Aspect> allowedFor;
    for (const Finding& finding : findings) {
        if (finding.confounding == Confounding::Fully && !finding.isInModel) {
            lines << fullyWords(finding, media);
        } else if (finding.confounding != Confounding::Alike) {
            (finding.isInModel ? allowedFor : warned).push_back(finding.aspect);
        }
        for (const std::string& trial : finding.fullyInTrials) {
            lines << FairnessTr::tr("In trial %1 the medium was wholly mixed with %2.")
                         .arg(QString::fromStdString(trial), aspectName(finding.aspect));
        }
    }
    if (!warned.empty()) {
        lines << FairnessTr::tr("Not shared out evenly over the media, and not allowed for: %1.")
                     .arg(aspectList(warned));
    }
    if (!allowedFor.empty()) {
        lines << FairnessTr::tr("Not shared out evenly, but allowed for in the means: %1.")
                     .arg(aspectList(allowedFor));
    }
    return lines;
}

QStringList adviceWords(const std::vector<Advice>& suggestions)
{
    QStringList lines;
    for (const Advice advice : suggestions) {
        lines << adviceText(advice);
    }
    return lines;
}

} // namespace plumule::ui
