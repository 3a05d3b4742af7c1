// Part of ui/text/error_words.h: rules that taking something back would break.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(RuleReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case RuleReason::PlaceTaken:
        return Errors::tr("%3 would stand at %1, place %2 again, where %4 has stood since: move %4 "
                          "elsewhere, or take back what brought it there.")
            .arg(value[0], value[1], value[2], value[3]);
    case RuleReason::TrayTwice:
        return Errors::tr("%1 would stand at two places at once: take back its later moves first.")
            .arg(value[0]);
    case RuleReason::EndedTrayStands:
        return Errors::tr("%1 would stand at a place though it has ended: take back its harvest or "
                          "its end first.")
            .arg(value[0]);
    case RuleReason::PieceTaken:
        return Errors::tr("%3 would grow on %1, piece %2 again, where %4 grows: take back what put "
                          "%4 there, or harvest it first.")
            .arg(value[0], value[1], value[2], value[3]);
    case RuleReason::PieceRetired:
        return Errors::tr("%3 would grow on %1, piece %2, which is retired: bring the piece back "
                          "into use first.")
            .arg(value[0], value[1], value[2]);
    case RuleReason::PieceNotSanitised:
        return Errors::tr("%3 would grow on %1, piece %2, though it was not sanitised after its "
                          "last use: take back the sowing of %3 first.")
            .arg(value[0], value[1], value[2]);
    case RuleReason::NameTaken:
        return Errors::tr("Another entry is called “%1” by now: give that one another name first.")
            .arg(value[0]);
    case RuleReason::NumberTaken:
        return Errors::tr("%1 has another number %2 by now: take back what gave that number first.")
            .arg(value[0], value[1]);
    case RuleReason::MarkerTaken:
        return Errors::tr("%1 would have the marker of %2, and charts could not tell them apart: "
                          "remove %2 first, or add %1 anew.")
            .arg(value[0], value[1]);
    case RuleReason::GrowsAfterLastCut:
        return Errors::tr("%1 would grow on though its last cut is weighed: take that weighing "
                          "back first.")
            .arg(value[0]);
    case RuleReason::NoLastCut:
        return Errors::tr("%1 would count as harvested without a last cut: correct or remove its "
                          "cuts at the scale instead.")
            .arg(value[0]);
    case RuleReason::StagesOutOfOrder:
        return Errors::tr("The stages of %1 would be out of order: take back the later step first.")
            .arg(value[0]);
    case RuleReason::TickedTwice:
        return Errors::tr("%1 would be ticked twice in one round of %2: take back the later tick "
                          "first.")
            .arg(value[0], value.day(1));
    case RuleReason::PriceTwice:
        return Errors::tr("There is another price from %1 on by now: remove or correct that one "
                          "first.")
            .arg(value.day(0));
    case RuleReason::TastingStaysClosed:
        return Errors::tr("The media of “%1” were shown when it was closed, so it can't be "
                          "tasted blind any more and stays closed: plan a new tasting instead.")
            .arg(value[0]);
    case RuleReason::TastingIsFinal:
        return Errors::tr("“%1” is closed, so its scores stay as they were told: plan a new "
                          "tasting instead.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
