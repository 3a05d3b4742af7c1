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
    }
    return {};
}

} // namespace

QStringList fairnessWords(const SeasonComparison& comparison)
{
    QStringList media;
    for (const ComparedMedium& mean : comparison.means) {
        media << QString::fromStdString(mean.medium.name);
    }
    return fairnessWords(comparison.fairness, media);
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
