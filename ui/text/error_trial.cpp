// Part of ui/text/error_words.h: what a trial and its plan refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {
namespace {

QString wordsOfBlocks(int blocksWithRoom, int traysOfABlock)
{
    return blocksWithRoom < 1
               ? Errors::tr("No shelf has room for a whole block of %n trays: choose fewer trays "
                            "or more blocks, or sow on another day.",
                            nullptr, traysOfABlock)
               : Errors::tr("Too few shelves have room for a whole block of %1 trays: choose %n "
                            "block(s), add a shelf, or sow on another day.",
                            nullptr, blocksWithRoom)
                     .arg(traysOfABlock);
}

} // namespace

QString words(TrialReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case TrialReason::Unknown:
        return Errors::tr("This trial is not in the journal any more: choose another one.");
    case TrialReason::NameMissing:
        return Errors::tr("The trial has no name: give it one.");
    case TrialReason::CodeTaken:
        return Errors::tr("There is a trial %1 already: choose another code.").arg(value[0]);
    case TrialReason::Margin:
        return Errors::tr("The margin, a difference too small to matter, is above 0: enter it, or "
                          "leave the field empty.");
    case TrialReason::Spread:
        return Errors::tr(
            "The spread between trays is above 0: enter it, or leave the field empty.");
    case TrialReason::InUse:
        return Errors::tr("Trays or tastings belong to trial %1, so it stays: end it instead.")
            .arg(value[0]);
    case TrialReason::NoPlan:
        return Errors::tr("This trial was not planned here, so it has no plan to open: look at its "
                          "result instead.");
    case TrialReason::Sown:
        return Errors::tr("Trial %1 is sown already, so its plan stays: plan another trial.")
            .arg(value[0]);
    case TrialReason::VarietyMissing:
        return Errors::tr("No variety is chosen: choose the one that all its trays grow.");
    case TrialReason::NothingToGrow:
        return Errors::tr(
            "No variety has a protocol that leads to a harvest: complete one in the setup first.");
    case TrialReason::MediumMissing:
        return Errors::tr("A treatment has no medium: choose one, or take the line out.");
    case TrialReason::MediumTwice:
        return Errors::tr("Two treatments are the same medium with the same feeding: change one, "
                          "or take it out.");
    case TrialReason::TooFewMedia:
        return Errors::tr("One medium alone can't be compared: choose two or more.");
    case TrialReason::ControlUnknown:
        return Errors::tr("The control medium is not in the journal any more: choose another one.");
    case TrialReason::ControlNotCompared:
        return Errors::tr("The control is none of the media compared: choose one of them.");
    case TrialReason::FeedingWithoutNutrient:
        return Errors::tr(
            "The protocol of this variety gives no nutrient, so the feeding can't differ: choose "
            "“as its protocol” for every medium, or let the protocol feed first.");
    case TrialReason::TraysEach:
        return Errors::tr("Every medium needs one tray or more: choose how many.");
    case TrialReason::TooManyTrays:
        return Errors::tr(
            "A trial has %n trays at most: choose fewer of each medium, or fewer media.", nullptr,
            value.number(0));
    case TrialReason::BlocksDontDivide:
        return Errors::tr("The trays of each medium (%1) don't divide evenly by the blocks (%2): "
                          "change one of the two numbers.")
            .arg(value[0], value[1]);
    case TrialReason::SquareCount:
        return Errors::tr("A square needs as many trays of each medium as there are media: choose "
                          "%1 of each, or another design.")
            .arg(value[0]);
    case TrialReason::TooFewPlaces:
        return Errors::tr(
                   "Places are free for %1 of the %n trays: choose fewer trays, or another day.",
                   nullptr, value.number(1))
            .arg(value[0]);
    case TrialReason::BlockPlaces:
        return wordsOfBlocks(value.number(0), value.number(1));
    case TrialReason::SquarePlaces:
        return Errors::tr("A square needs %1 shelves with the same %1 places free: choose another "
                          "design, or another day.")
            .arg(value[0]);
    case TrialReason::TooFewPieces:
        return Errors::tr("Clean pieces of %1 are free for %2 of its %n trays: sanitise or add "
                          "some, or choose fewer trays.",
                          nullptr, value.number(2))
            .arg(value[0], value[1]);
    case TrialReason::LayoutMissing:
        return Errors::tr("The trays have no places yet: draw them first.");
    case TrialReason::LayoutUneven:
        return Errors::tr("The places don't fit the plan any more: draw them again.");
    case TrialReason::PlannedTrayUnknown:
        return Errors::tr("This tray is not in the plan any more: draw the places again.");
    }
    return {};
}

} // namespace plumule::ui
