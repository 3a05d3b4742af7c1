// Part of ui/text/error_words.h: what a tray refuses.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(TrayReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case TrayReason::Unknown:
        return Errors::tr("This tray is not in the journal any more: choose another one.");
    case TrayReason::CodeUnknown:
        return Errors::tr("There is no tray %1 in this journal: check the code on its label.")
            .arg(value[0]);
    case TrayReason::CodeTaken:
        return Errors::tr(
                   "There is a tray %1 already: choose another code, or leave the next free one.")
            .arg(value[0]);
    case TrayReason::CodeMissing:
        return Errors::tr("The tray has no code: enter one, or leave the next free one.");
    case TrayReason::CodeOfMany:
        return Errors::tr("One code can't be that of several trays: sow them one by one, or let "
                          "the codes be given.");
    case TrayReason::Count:
        return Errors::tr("At most %n trays are sown at once: choose from 1 to %n.", nullptr,
                          value.number(0));
    case TrayReason::PieceCount:
        return Errors::tr("Every tray needs one clean piece, so %1 in all, but %2 are chosen: "
                          "choose as many as there are trays.")
            .arg(value[0], value[1]);
    case TrayReason::PlaceCount:
        return Errors::tr("There are more places (%2) than trays (%1): choose fewer places, or sow "
                          "more trays.")
            .arg(value[0], value[1]);
    case TrayReason::PieceTwice:
        return Errors::tr(
            "The same piece is chosen for two trays: choose another one for one of them.");
    case TrayReason::PlaceTwice:
        return Errors::tr("Two trays have the same place: choose another one for one of them.");
    case TrayReason::Seed:
        return Errors::tr("The seed of a tray weighs more than nothing: enter its weight, or leave "
                          "the field empty.");
    case TrayReason::Block:
        return Errors::tr(
            "Blocks are numbered from 1: enter such a number, or leave the field empty.");
    case TrayReason::VarietyUnknown:
        return Errors::tr("This variety is not in the journal any more: choose another one.");
    case TrayReason::MediumUnknown:
        return Errors::tr("This medium is not in the journal any more: choose another one.");
    case TrayReason::ProtocolMissing:
        return Errors::tr("%1 has no protocol with a stage after the soak, so nothing says when to "
                          "harvest: complete its protocol first.")
            .arg(value[0]);
    case TrayReason::LotUnknown:
        return Errors::tr(
            "This seed lot is not in the journal any more: choose another one, or none.");
    case TrayReason::LotOfOtherVariety:
        return Errors::tr("Lot %1 is seed of another variety: choose a lot of this one, or none.")
            .arg(value[0]);
    case TrayReason::TrialUnknown:
        return Errors::tr(
            "This trial is not in the journal any more: choose another one, or none.");
    case TrayReason::PieceUnknown:
        return Errors::tr("This piece is not in the journal any more: choose another one.");
    case TrayReason::PieceOfOtherMedium:
        return Errors::tr("Piece %1 is of another medium: choose one of this medium.")
            .arg(value[0]);
    case TrayReason::PieceRetired:
        return Errors::tr("Piece %1 is retired: choose another one.").arg(value[0]);
    case TrayReason::PieceInUse:
        return Errors::tr(
                   "A tray grows on piece %1: choose another one, or harvest that tray first.")
            .arg(value[0]);
    case TrayReason::PieceNotSanitised:
        return Errors::
            tr("Piece %1 is not sanitised since its last use: sanitise it, or choose another one.")
                .arg(value[0]);
    case TrayReason::PlaceUnknown:
        return Errors::tr("This place is not in the room any more: choose another one.");
    case TrayReason::PlaceTaken:
        return Errors::tr(
                   "%1, place %2 is taken by %3: choose another place, or move that tray first.")
            .arg(value[0], value[1], value[2]);
    case TrayReason::PlaceTakenThen:
        return Errors::tr("%1, place %2 was taken by %3 until %4: choose a later time, or another "
                          "place.")
            .arg(value[0], value[1], value[2], value.moment(3));
    case TrayReason::NotGrowing:
        return Errors::tr(
                   "%1 was harvested or discarded: choose a tray that grows, or undo that first.")
            .arg(value[0]);
    case TrayReason::NoStages:
        return Errors::tr(
                   "%1 came in without stages, so it has none to go through: weigh or discard it.")
            .arg(value[0]);
    case TrayReason::NothingBegun:
        return Errors::tr("No stage of %1 has begun: move it on first.").arg(value[0]);
    case TrayReason::OnlyHarvestLeft:
        return Errors::tr("%1 is in its last stage: weigh its harvest next.").arg(value[0]);
    case TrayReason::StageNotBegun:
        return Errors::tr("The stage “%1” has not begun: correct the start of one that has.")
            .arg(value.stage(0));
    case TrayReason::StartOutOfOrder:
        return Errors::tr("With a start on %1 the stages would be out of order: choose a time "
                          "between the stage before and the one after.")
            .arg(value.moment(0));
    case TrayReason::Delay:
        return Errors::tr("A delay takes a minute or more: choose a longer one.");
    case TrayReason::MoveBeforeStay:
        return Errors::tr(
                   "The tray was moved last on %1: choose that time or a later one for the move.")
            .arg(value.moment(0));
    case TrayReason::EndBeforeStay:
        return Errors::tr(
                   "The tray came to its present place on %1: choose a later time for its end.")
            .arg(value.moment(0));
    case TrayReason::DiscardReasonMissing:
        return Errors::tr("The reason is missing: say why the tray is discarded, such as mould.");
    case TrayReason::SetAsideReasonMissing:
        return Errors::tr("The reason is missing: say why the tray is set aside.");
    case TrayReason::HeightRange:
        return Errors::tr(
            "This is no height of a tray: measure again, from 0 to 1000 mm above the medium.");
    case TrayReason::SurfaceUnknown:
        return Errors::tr(
                   "How far %1 lies below the rim is not known, so a height from the rim says "
                   "nothing: measure from the surface, or enter that depth with the medium.")
            .arg(value[0]);
    case TrayReason::NoteMissing:
        return Errors::tr("The note is empty: write something first.");
    case TrayReason::NoteUnknown:
        return Errors::tr(
            "This note is not in the journal any more: look at the tray's page again.");
    case TrayReason::PhotoUnknown:
        return Errors::tr(
            "This photo is not in the journal any more: look at the tray's page again.");
    case TrayReason::PhotoUnreadable:
        return Errors::
            tr("The picture %1 can't be read: check that it is still there, or choose another one.")
                .arg(value[0]);
    case TrayReason::PhotoFolder:
        return Errors::tr("The folder %1, where photos are kept, can't be made: check that the "
                          "journal's folder may be written to.")
            .arg(value[0]);
    case TrayReason::PhotoNotCopied:
        return Errors::tr("The picture %1 could not be copied beside the journal: check that the "
                          "disk has room and that its folder may be written to.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
