// Part of ui/text/error_words.h: what a medium and its pieces refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(MediumReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case MediumReason::Unknown:
        return Errors::tr("This medium is not in the journal any more: choose another one.");
    case MediumReason::NameMissing:
        return Errors::tr("The medium has no name: give it one.");
    case MediumReason::NameTaken:
        return Errors::tr("There is a medium %1 already: choose another name, or change that one.")
            .arg(value[0]);
    case MediumReason::InUse:
        return Errors::tr(
                   "Trays or pieces hang on %1, so it stays: mark it as no longer bought instead.")
            .arg(value[0]);
    case MediumReason::LooseMixReused:
        return Errors::tr("A loose mix is not washed and used again: choose a mat or a mesh, or "
                          "take that mark off.");
    case MediumReason::PlannedUses:
        return Errors::tr(
            "A piece is planned for one use or more: enter how many, or leave the field empty.");
    case MediumReason::PlannedUsesOfOneUse:
        return Errors::tr("Planned uses are for what is washed and used again: mark the medium so, "
                          "or leave the field empty.");
    case MediumReason::SurfaceBelowRim:
        return Errors::tr("The surface can't lie above the rim: measure from the rim down to the "
                          "medium, or leave the field empty.");
    case MediumReason::AmountPerTray:
        return Errors::tr("The amount for a tray is above 0: enter it, or leave the field empty.");
    case MediumReason::Marker:
        return Errors::tr("This colour and shape is none of those on offer: choose another one.");
    case MediumReason::MarkerTaken:
        return Errors::tr("%1 has this colour and shape already: choose another one.")
            .arg(value[0]);
    case MediumReason::HasPieces:
        return Errors::tr("%1 has numbered pieces, so it stays one that is washed and used again: "
                          "enter another medium for what is used once.")
            .arg(value[0]);
    case MediumReason::NotReusable:
        return Errors::tr("%1 is used once, so it has no numbered pieces: mark it as washed and "
                          "used again first.")
            .arg(value[0]);
    case MediumReason::PieceUnknown:
        return Errors::tr("This piece is not in the journal any more: choose another one.");
    case MediumReason::PieceCount:
        return Errors::tr("At most %n pieces are added at once: choose from 1 to %n.", nullptr,
                          value.number(0));
    case MediumReason::PieceGrows:
        return Errors::tr("A tray grows on %1: harvest or discard that tray first.").arg(value[0]);
    case MediumReason::PieceRetired:
        return Errors::tr("This piece was retired on %1: choose another one.").arg(value.day(0));
    case MediumReason::NoPieceChosen:
        return Errors::tr("No piece is chosen: choose those that were sanitised.");
    case MediumReason::MethodMissing:
        return Errors::tr("The way of sanitising is missing: enter how it was done.");
    case MediumReason::Strength:
        return Errors::tr("The strength of a sanitiser lies above 0 and is %1 at most: enter it as "
                          "on the label, or leave the field empty.")
            .arg(value[0]);
    case MediumReason::ContactMinutes:
        return Errors::tr("A sanitiser is left on for 1 to %1 minutes: enter how long, or leave "
                          "the field empty.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
