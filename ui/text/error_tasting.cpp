// Part of ui/text/error_words.h: what a tasting refuses.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(TastingReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case TastingReason::Unknown:
        return Errors::tr("This tasting is not in the journal any more: choose another one.");
    case TastingReason::NameMissing:
        return Errors::tr("The tasting has no name: give it one.");
    case TastingReason::TooFewMedia:
        return Errors::tr("One medium alone can't be compared: choose two or more.");
    case TastingReason::TooManyMedia:
        return Errors::tr("More than %1 media tire the tongue: choose %1 or fewer.").arg(value[0]);
    case TastingReason::TriangleMedia:
        return Errors::tr("A triangle test compares two media: choose two, or another method.");
    case TastingReason::MediumTwice:
        return Errors::tr("The same medium is chosen twice: choose another one, or take one out.");
    case TastingReason::NoTasters:
        return Errors::tr("No one tastes: enter one taster or more.");
    case TastingReason::TasterTwice:
        return Errors::tr("Two tasters are called %1: tell them apart, such as by a letter.")
            .arg(value[0]);
    case TastingReason::NoAttributes:
        return Errors::tr("Nothing is asked: enter one attribute or more, such as crispness.");
    case TastingReason::TooManyAttributes:
        return Errors::tr("A sheet has room for %1 attributes: take some out.").arg(value[0]);
    case TastingReason::AttributeTwice:
        return Errors::tr("The attribute %1 stands there twice: take one out.").arg(value[0]);
    case TastingReason::AttributeUnknown:
        return Errors::tr("This attribute is not in the tasting any more: open the tasting again.");
    case TastingReason::TooManyServings:
        return Errors::tr("There would be %1 servings, but there are only %2 codes: choose fewer "
                          "tasters or fewer media.")
            .arg(value[0], value[1]);
    case TastingReason::NamesAMedium:
        return Errors::tr("The tasting would not be blind, since its name or an attribute names "
                          "%1: choose other words.")
            .arg(value[0]);
    case TastingReason::HasScores:
        return Errors::tr("%1 has scores already, so its plan stays: plan another tasting.")
            .arg(value[0]);
    case TastingReason::Closed:
        return Errors::tr("%1 is closed, so its scores stay: plan another tasting.").arg(value[0]);
    case TastingReason::Open:
        return Errors::tr(
                   "%1 is still open, so it tells nothing yet: close it when all scores are in.")
            .arg(value[0]);
    case TastingReason::CodeUnknown:
        return Errors::tr("No serving has the code %1: check the three figures on its cup.")
            .arg(value[0]);
    case TastingReason::ScoreRange:
        return Errors::tr("A score here is a whole number from 1 to %1: enter such a one.")
            .arg(value[0]);
    case TastingReason::NoScore:
        return Errors::tr("Serving %1 has no score to take out: check its code.").arg(value[0]);
    case TastingReason::NoScores:
        return Errors::tr("There is no score yet: enter some first.");
    case TastingReason::RankTwice:
        return Errors::tr("%1 gave one rank of %2 to several servings (%3): ask again, and correct "
                          "one of them.")
            .arg(value[0], value[1], value[2]);
    }
    return {};
}

} // namespace plumule::ui
