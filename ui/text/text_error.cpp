// Part of ui/text/text.h: errors.
#include "ui/text/text.h"

#include <QCoreApplication>
#include <QHash>

namespace plumule::ui {
namespace {

QString say(const char* text)
{
    return QCoreApplication::translate("Errors", text);
}

// The words for the subjects that core names; what is not here is shown as it stands.
QString thing(const std::string& subject)
{
    static const QHash<QString, const char*> kThings = {
        {"tray", QT_TRANSLATE_NOOP("Errors", "the tray")},
        {"tray.code", QT_TRANSLATE_NOOP("Errors", "the tray's code")},
        {"variety", QT_TRANSLATE_NOOP("Errors", "the variety")},
        {"variety.name", QT_TRANSLATE_NOOP("Errors", "the variety's name")},
        {"variety.code_prefix", QT_TRANSLATE_NOOP("Errors", "the two letters of its codes")},
        {"medium", QT_TRANSLATE_NOOP("Errors", "the medium")},
        {"medium.name", QT_TRANSLATE_NOOP("Errors", "the medium's name")},
        {"piece", QT_TRANSLATE_NOOP("Errors", "the piece")},
        {"place", QT_TRANSLATE_NOOP("Errors", "the place")},
        {"rack", QT_TRANSLATE_NOOP("Errors", "the rack")},
        {"shelf", QT_TRANSLATE_NOOP("Errors", "the shelf")},
        {"seed_lot", QT_TRANSLATE_NOOP("Errors", "the seed lot")},
        {"trial", QT_TRANSLATE_NOOP("Errors", "the trial")},
        {"price", QT_TRANSLATE_NOOP("Errors", "the price")},
        {"height", QT_TRANSLATE_NOOP("Errors", "the height")},
        {"reason", QT_TRANSLATE_NOOP("Errors", "the reason")},
        {"net", QT_TRANSLATE_NOOP("Errors", "the net weight")},
        {"mass", QT_TRANSLATE_NOOP("Errors", "the weight")},
        {"date", QT_TRANSLATE_NOOP("Errors", "the date")},
        {"journal", QT_TRANSLATE_NOOP("Errors", "the journal")},
        {"backup", QT_TRANSLATE_NOOP("Errors", "the backup")},
        {"file", QT_TRANSLATE_NOOP("Errors", "the file")},
        {"room.name", QT_TRANSLATE_NOOP("Errors", "the room's name")},
        {"room.currency", QT_TRANSLATE_NOOP("Errors", "the currency")},
        {"room.morning", QT_TRANSLATE_NOOP("Errors", "the round times (morning before evening)")},
        {"room.tray_size", QT_TRANSLATE_NOOP("Errors", "the size of a tray")},
        {"rack.name", QT_TRANSLATE_NOOP("Errors", "the rack's name")},
        {"rack.shelves", QT_TRANSLATE_NOOP("Errors", "the number of shelves")},
        {"shelf.name", QT_TRANSLATE_NOOP("Errors", "the shelf's name")},
        {"shelf.places", QT_TRANSLATE_NOOP("Errors", "the number of places")},
        {"shelf.light", QT_TRANSLATE_NOOP("Errors", "the power of the light")},
        {"shelf.light_minutes", QT_TRANSLATE_NOOP("Errors", "the hours of light")},
        {"variety.seed_per_tray", QT_TRANSLATE_NOOP("Errors", "the seed for a tray")},
        {"protocol.stage", QT_TRANSLATE_NOOP("Errors", "the stage")},
        {"seed_lot.lot_number", QT_TRANSLATE_NOOP("Errors", "the lot number")},
        {"seed_lot.germination", QT_TRANSLATE_NOOP("Errors", "the germination")},
        {"seed_lot.bought", QT_TRANSLATE_NOOP("Errors", "the weight bought")},
        {"seed_lot.price", QT_TRANSLATE_NOOP("Errors", "the price of the lot")},
        {"seed_lot.variety", QT_TRANSLATE_NOOP("Errors", "the variety of the lot")},
        {"seed_lot.found", QT_TRANSLATE_NOOP("Errors", "the weight found")},
        {"medium.planned_uses", QT_TRANSLATE_NOOP("Errors", "the planned uses")},
        {"medium.is_reusable", QT_TRANSLATE_NOOP("Errors", "whether the medium is reusable")},
        {"medium.surface_below_rim", QT_TRANSLATE_NOOP("Errors", "the depth below the rim")},
        {"medium.amount_per_tray", QT_TRANSLATE_NOOP("Errors", "the amount for a tray")},
        {"piece.number", QT_TRANSLATE_NOOP("Errors", "the piece's number")},
        {"piece.count", QT_TRANSLATE_NOOP("Errors", "the number of pieces")},
        {"piece.retired_on", QT_TRANSLATE_NOOP("Errors", "the day the piece was retired")},
        {"sanitising.method", QT_TRANSLATE_NOOP("Errors", "the way of sanitising")},
        {"trial.name", QT_TRANSLATE_NOOP("Errors", "the trial's name")},
        {"trial.code", QT_TRANSLATE_NOOP("Errors", "the trial's code")},
        {"trial.margin", QT_TRANSLATE_NOOP("Errors", "the margin")},
        {"trial.control", QT_TRANSLATE_NOOP("Errors", "the control medium")},
        {"trial.treatments",
         QT_TRANSLATE_NOOP("Errors", "the media compared (two or more, each once)")},
        {"trial.trays_each", QT_TRANSLATE_NOOP("Errors", "the trays of each medium")},
        {"trial.blocks",
         QT_TRANSLATE_NOOP("Errors", "the blocks (the trays of each medium divide by them)")},
        {"trial.variety", QT_TRANSLATE_NOOP("Errors", "the variety of the trial")},
        {"trial.spread", QT_TRANSLATE_NOOP("Errors", "the spread between trays")},
        {"plan.mean", QT_TRANSLATE_NOOP("Errors", "no yield is on record yet to expect one by")},
        {"trial.layout", QT_TRANSLATE_NOOP("Errors", "the places, which are still to be drawn")},
        {"trial.planned_tray", QT_TRANSLATE_NOOP("Errors", "the planned tray")},
        {"trial.plan", QT_TRANSLATE_NOOP("Errors", "the plan of the trial")},
        {"trial.places", QT_TRANSLATE_NOOP("Errors", "too few places are free for it, only")},
        {"trial.block_places",
         QT_TRANSLATE_NOOP("Errors",
                           "too few shelves have room for a whole block; blocks placed:")},
        {"trial.square_places",
         QT_TRANSLATE_NOOP("Errors", "no square of free places, as many shelves as media")},
        {"trial.sown", QT_TRANSLATE_NOOP("Errors", "the trial, which is sown already")},
        {"trial.pieces", QT_TRANSLATE_NOOP("Errors", "too few clean pieces are free of")},
        {"trial.feeding",
         QT_TRANSLATE_NOOP("Errors", "the feeding: this variety's protocol gives no nutrient")},
        {"tray.count", QT_TRANSLATE_NOOP("Errors", "the number of trays")},
        {"tray.pieces", QT_TRANSLATE_NOOP("Errors", "the pieces: one clean piece a tray")},
        {"tray.piece", QT_TRANSLATE_NOOP("Errors", "the piece")},
        {"tray.places", QT_TRANSLATE_NOOP("Errors", "the places")},
        {"tray.place", QT_TRANSLATE_NOOP("Errors", "the place, where another tray stands")},
        {"tray.seed", QT_TRANSLATE_NOOP("Errors", "the seed of the tray")},
        {"tray.seed_lot", QT_TRANSLATE_NOOP("Errors", "the seed lot")},
        {"tray.trial", QT_TRANSLATE_NOOP("Errors", "the trial")},
        {"tray.block", QT_TRANSLATE_NOOP("Errors", "the block")},
        {"tray.variety", QT_TRANSLATE_NOOP("Errors", "the variety")},
        {"tray.medium", QT_TRANSLATE_NOOP("Errors", "the medium")},
        {"tray.protocol", QT_TRANSLATE_NOOP("Errors", "a protocol for this variety")},
        {"tray.stage", QT_TRANSLATE_NOOP("Errors", "the stage: only the harvest is left")},
        {"tray.stage_start",
         QT_TRANSLATE_NOOP("Errors", "the start, which must keep the stages in order")},
        {"tray.delay", QT_TRANSLATE_NOOP("Errors", "the delay")},
        {"tray.state", QT_TRANSLATE_NOOP("Errors", "the tray, which does not grow any more")},
        {"tray.ended", QT_TRANSLATE_NOOP("Errors", "the day it ended")},
        {"tray.moved", QT_TRANSLATE_NOOP("Errors", "the time of the move")},
        {"tray.discarded", QT_TRANSLATE_NOOP("Errors", "the tray, which was discarded")},
        {"tray.discard_reason", QT_TRANSLATE_NOOP("Errors", "the reason")},
        {"tray.set_aside_reason", QT_TRANSLATE_NOOP("Errors", "the reason")},
        {"piece.retired", QT_TRANSLATE_NOOP("Errors", "the piece, which is retired")},
        {"piece.in_use", QT_TRANSLATE_NOOP("Errors", "the piece, on which a tray grows")},
        {"piece.sanitising",
         QT_TRANSLATE_NOOP("Errors", "the piece, which is to be sanitised first")},
        {"height.reading", QT_TRANSLATE_NOOP("Errors", "the height")},
        {"note.text", QT_TRANSLATE_NOOP("Errors", "the note")},
        {"photo.file", QT_TRANSLATE_NOOP("Errors", "the photograph's file")},
        {"photo.folder", QT_TRANSLATE_NOOP("Errors", "the folder of photographs")},
        {"watering.not_asked",
         QT_TRANSLATE_NOOP("Errors", "this tray needs no water in this round")},
        {"watering.ticked", QT_TRANSLATE_NOOP("Errors", "this tray is ticked already")},
        {"watering.date", QT_TRANSLATE_NOOP("Errors", "the round, which is still to come")},
        {"watering.amount", QT_TRANSLATE_NOOP("Errors", "the amount given")},
        {"watering.method", QT_TRANSLATE_NOOP("Errors", "the way of watering")},
        {"watering.minute", QT_TRANSLATE_NOOP("Errors", "the time")},
        {"reading", QT_TRANSLATE_NOOP("Errors", "the pH or EC")},
        {"reading.ph", QT_TRANSLATE_NOOP("Errors", "the pH, from 0 to 14")},
        {"reading.ec", QT_TRANSLATE_NOOP("Errors", "the EC")},
        {"recipe.dose", QT_TRANSLATE_NOOP("Errors", "the dose")},
        {"recipe.ph", QT_TRANSLATE_NOOP("Errors", "the pH band")},
        {"recipe.ec", QT_TRANSLATE_NOOP("Errors", "the EC band")},
        {"price.amount", QT_TRANSLATE_NOOP("Errors", "the price")},
        {"price.from", QT_TRANSLATE_NOOP("Errors", "the day the price holds from")},
        {"price.medium", QT_TRANSLATE_NOOP("Errors", "the medium the price is for")},
        {"labour.seconds", QT_TRANSLATE_NOOP("Errors", "the minutes of work")},
        {"season", QT_TRANSLATE_NOOP("Errors", "the span of the season")},
        {"season.span", QT_TRANSLATE_NOOP("Errors", "the span of the season")},
        {"scale.text", QT_TRANSLATE_NOOP("Errors", "what the scale sent")},
        {"bowl.gross", QT_TRANSLATE_NOOP("Errors", "the gross weight")},
        {"bowl.tare", QT_TRANSLATE_NOOP("Errors", "the tare")},
        {"harvest.net", QT_TRANSLATE_NOOP("Errors", "the net weight")},
        {"harvest.bowls", QT_TRANSLATE_NOOP("Errors", "the weight")},
        {"medium.marker", QT_TRANSLATE_NOOP("Errors", "the colour and shape")},
        {"journal.trays", QT_TRANSLATE_NOOP("Errors", "the trays in the journal")},
        {"label.size", QT_TRANSLATE_NOOP("Errors", "the labels: each 24 × 15 mm or more, and all "
                                                   "within the page; these would be")},
        {"label.rows", QT_TRANSLATE_NOOP("Errors", "the rows of labels")},
        {"label.columns", QT_TRANSLATE_NOOP("Errors", "the columns of labels")},
        {"label.margin", QT_TRANSLATE_NOOP("Errors", "the margins of the sheet")},
        {"label.gap", QT_TRANSLATE_NOOP("Errors", "the gaps between labels")},
        {"label.skip",
         QT_TRANSLATE_NOOP("Errors", "the labels used already: fewer than are on a sheet")},
        {"harvest.at", QT_TRANSLATE_NOOP("Errors", "the time, which is before the sowing")},
        {"panel", QT_TRANSLATE_NOOP("Errors", "the tasting")},
        {"panel.name", QT_TRANSLATE_NOOP("Errors", "the tasting's name")},
        {"panel.media", QT_TRANSLATE_NOOP("Errors", "the media: from two to nine different ones")},
        {"panel.triangle_media",
         QT_TRANSLATE_NOOP("Errors", "the media: a triangle test compares two")},
        {"panel.tasters", QT_TRANSLATE_NOOP("Errors", "the tasters")},
        {"panel.taster", QT_TRANSLATE_NOOP("Errors", "the taster")},
        {"panel.attributes", QT_TRANSLATE_NOOP("Errors", "the attributes: from one to eight")},
        {"panel.attribute", QT_TRANSLATE_NOOP("Errors", "the attribute")},
        {"panel.servings",
         QT_TRANSLATE_NOOP("Errors", "the servings: there are 900 codes for all of them")},
        {"panel.tells",
         QT_TRANSLATE_NOOP("Errors", "the tasting would not be blind, since its name or an "
                                     "attribute names the medium")},
        {"panel.scored",
         QT_TRANSLATE_NOOP("Errors", "the tasting has scores already, so its plan stays")},
        {"panel.closed", QT_TRANSLATE_NOOP("Errors", "the tasting is closed and final")},
        {"panel.open", QT_TRANSLATE_NOOP("Errors", "the tasting has no result until it is closed")},
        {"panel.scores", QT_TRANSLATE_NOOP("Errors", "the scores")},
        {"panel.rank_twice", QT_TRANSLATE_NOOP("Errors", "one rank was given twice by")},
        {"score.code", QT_TRANSLATE_NOOP("Errors", "the code")},
        {"score.value", QT_TRANSLATE_NOOP("Errors", "the score, which is a whole number")},
    };
    const QString key = QString::fromStdString(subject);
    const auto found = kThings.constFind(key);
    return found == kThings.cend() ? QString(key).replace('_', ' ').replace('.', ' ')
                                   : say(found.value());
}

QString journalSentence(const Error& error)
{
    switch (error.kind) {
    case ErrorKind::NotAJournal:
        return say("This file is not a Plumule journal. Nothing was changed.");
    case ErrorKind::NewerVersion:
        return say("This journal was made by a newer Plumule. Please update Plumule to open it.");
    case ErrorKind::Damaged:
        return say(
            "The journal is damaged. Nothing was changed: open its latest backup, and keep the "
            "damaged file.");
    case ErrorKind::NotWritable:
        return say("The journal's folder or file can't be written, so it is open to read only.");
    case ErrorKind::AlreadyOpen:
        return say(
            "The journal is open in another window or program, so it is open to read only here.");
    case ErrorKind::ReadOnly:
        return say("The journal is open to read only: nothing was written.");
    case ErrorKind::NotFound:
        return say("There is no file of that name.");
    case ErrorKind::Duplicate:
        return say("There is a file of that name already. It was left as it is.");
    case ErrorKind::FileGone:
        return say(
            "The journal's file was moved or removed while it was open. Nothing was written; put "
            "it back or open it where it is now.");
    default:
        return {};
    }
}

QString generalSentence(ErrorKind kind)
{
    switch (kind) {
    case ErrorKind::Missing:
        return say("Please give %1.");
    case ErrorKind::Invalid:
        return say("Please check %1: %2");
    case ErrorKind::NotFound:
        return say("There is no such thing in this journal: %1 %2");
    case ErrorKind::Duplicate:
        return say("Taken already: %1 %2");
    case ErrorKind::Conflict:
        return say("That does not fit how things stand: %1 %2");
    case ErrorKind::InUse:
        return say("It is in use and was kept: %1 %2");
    case ErrorKind::ChangedSince:
        return say(
            "This can't be taken back by itself: later work changed the same entry (%1 %2). Undo "
            "that first.");
    case ErrorKind::NothingThere:
        return say("There is nothing to %1.");
    case ErrorKind::TooFew:
        return say("There are too few numbers for that: %1 %2");
    case ErrorKind::NotEstimable:
        return say("These data cannot tell that: %1 %2");
    case ErrorKind::NoConvergence:
        return say("No curve fits these points: %1 %2");
    case ErrorKind::DiskFull:
        return say(
            "The disk is full. Nothing was lost and nothing was written: make room, or save a "
            "backup elsewhere.");
    case ErrorKind::Cancelled:
        return say("Stopped. Nothing was changed.");
    case ErrorKind::Damaged:
        return say("This entry is damaged and was left alone: %1 %2");
    case ErrorKind::NewerVersion:
        return say(
            "This was written under another version of the journal and can't be taken back.");
    case ErrorKind::AlreadyOpen:
        return say("Another program is writing to the journal just now. Please try again.");
    default:
        return say("The file can't be read or written: %1 %2");
    }
}

} // namespace

QString sentence(const Error& error)
{
    if (error.subject == "journal") {
        const QString known = journalSentence(error);
        if (!known.isEmpty()) {
            return known;
        }
    }
    QString text = generalSentence(error.kind);
    text.replace(QStringLiteral("%1"), thing(error.subject));
    text.replace(QStringLiteral("%2"), QString::fromStdString(error.detail));
    // Without a detail, what would have led to it goes too.
    text.replace(QStringLiteral(" )"), QStringLiteral(")"));
    text = text.trimmed();
    while (text.endsWith(':') || text.endsWith(' ')) {
        text.chop(1);
    }
    return text.endsWith('.') || text.endsWith(')') ? text : text + '.';
}

} // namespace plumule::ui
