// Part of ui/review/verdict_text.h: what was unfair.
#include "ui/review/verdict_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

QString fair(const char* text)
{
    return QCoreApplication::translate("Fairness", text);
}

QString aspectName(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return fair("feeding");
    case Aspect::Variety:
        return fair("variety");
    case Aspect::Trial:
        return fair("trial");
    case Aspect::SeedLot:
        return fair("seed lot");
    case Aspect::SeedDensity:
        return fair("seed density");
    case Aspect::Shelf:
        return fair("shelf and its light");
    case Aspect::Season:
        return fair("time of year");
    case Aspect::DaysGrown:
        return fair("days grown");
    case Aspect::PieceUses:
        return fair("uses of the piece");
    case Aspect::Person:
        return fair("who sowed");
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
        return fair("Wholly mixed with the medium: %1.").arg(aspectName(finding.aspect));
    }
    return fair("%1 and %2 have nothing in common in %3: their difference is that of medium and %3 "
                "together.")
        .arg(media.value(static_cast<qsizetype>(finding.worst->first)),
             media.value(static_cast<qsizetype>(finding.worst->second)),
             aspectName(finding.aspect));
}

QString adviceText(const Suggestion& suggestion)
{
    switch (suggestion.advice) {
    case Advice::FeedAllAlike:
        return fair("feed all media alike");
    case Advice::GrowEachVarietyOnEveryMedium:
        return fair("grow each variety on every medium");
    case Advice::GrowEveryMediumInEachTrial:
        return fair("grow every medium in each trial");
    case Advice::UseOneSeedLot:
        return fair("use one seed lot");
    case Advice::SowAllAsDensely:
        return fair("sow all as densely");
    case Advice::SpreadMediaOverShelves:
        return fair("spread the media over the shelves by lot");
    case Advice::SowAllOnOneDay:
        return fair("sow all on one day");
    case Advice::CutAllOnOneDay:
        return fair("cut all on one day of growth");
    case Advice::UsePiecesAsWorn:
        return fair("use pieces that are worn alike");
    case Advice::ShareTheWork:
        return fair("share the sowing over all media");
    case Advice::GrowMoreTrays:
        return suggestion.trays ? fair("grow %1 trays of each").arg(*suggestion.trays)
                                : fair("grow more trays");
    }
    return {};
}

} // namespace

QStringList fairnessWords(const SeasonComparison& comparison)
{
    QStringList media;
    for (const AdjustedMean& mean : comparison.means) {
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
            lines << fair("In trial %1 the medium was wholly mixed with %2.")
                         .arg(QString::fromStdString(trial), aspectName(finding.aspect));
        }
    }
    if (!warned.empty()) {
        lines << fair("Not shared out evenly over the media, and not allowed for: %1.")
                     .arg(aspectList(warned));
    }
    if (!allowedFor.empty()) {
        lines << fair("Not shared out evenly, but allowed for in the means: %1.")
                     .arg(aspectList(allowedFor));
    }
    return lines;
}

QStringList adviceWords(const std::vector<Suggestion>& suggestions)
{
    QStringList lines;
    for (const Suggestion& suggestion : suggestions) {
        lines << adviceText(suggestion);
    }
    return lines;
}

} // namespace plumule::ui
