// Part of ui/text/error_words.h: what a search through a journal finds.
#include "ui/text/error_words.h"

#include "ui/text/table_text.h"

namespace plumule::ui {
namespace {

// "Entry 17 (stage of a tray)"
QString rowWords(const Error& error)
{
    if (!error.row) {
        return Errors::tr("An entry");
    }
    const QString what = rowName(error.row->table);
    return error.row->number == 0
               ? Errors::tr("An entry (%1)").arg(what)
               : Errors::tr("Entry %1 (%2)").arg(QString::number(error.row->number), what);
}

QString kindWords(const Error& error)
{
    return error.row ? rowName(error.row->table) : ErrorValues(error)[0];
}

QString fieldWords(const Error& error, const ErrorValues& value)
{
    return fieldName(error.row ? error.row->table : std::string(), value[0].toStdString());
}

} // namespace

QString words(FaultReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case FaultReason::Pages:
        return Errors::tr("Parts of the file that hold no entries are damaged: open the latest "
                          "backup.");
    case FaultReason::TablePages:
        return Errors::tr("Parts of the file are damaged that hold entries of the kind “%1”: save "
                          "what can be read, or open the latest backup.")
            .arg(kindWords(error));
    case FaultReason::Dangling:
        return Errors::tr("%1 belongs to an entry (%2) that is not there: open the latest backup.")
            .arg(rowWords(error), rowName(value[0].toStdString()));
    case FaultReason::CellValue:
        return Errors::tr("%1 has under “%2” what can't stand there, “%3”: correct it where it is "
                          "shown, or open the latest backup.")
            .arg(rowWords(error), fieldWords(error, value), value[1]);
    case FaultReason::CellWord:
        return Errors::tr("%1 has under “%2” a word that means nothing there, “%3”: open the "
                          "latest backup.")
            .arg(rowWords(error), fieldWords(error, value), value[1]);
    case FaultReason::ChangesetDamaged:
        return Errors::tr("Step %1 of the history is not as it was written, so it can't be taken "
                          "back: keep a backup.")
            .arg(value[0]);
    case FaultReason::ChangesetSenseless:
        return Errors::tr("Step %1 of the history makes no sense for this journal, so it can't be "
                          "taken back: keep a backup.")
            .arg(value[0]);
    case FaultReason::IdsRunOut:
        return Errors::tr("New entries would be given numbers that are taken: save what can be "
                          "read into a new journal.");
    }
    return {};
}

QString words(RescueReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case RescueReason::RowUnreadable:
        return Errors::tr("%1 can't be read and was left out: enter it anew.").arg(rowWords(error));
    case RescueReason::RowsUnreadable:
        return Errors::tr("Of the kind “%1” entries may be missing between %2 and %3: look through "
                          "them.")
            .arg(kindWords(error), value[0], value[1]);
    case RescueReason::TableUnreadable:
        return Errors::tr("No entry of the kind “%1” can be read: enter them anew.")
            .arg(kindWords(error));
    case RescueReason::CellUnsound:
        return Errors::tr("%1 was left out, since it has under “%2” what can't stand there, “%3”: "
                          "enter it anew.")
            .arg(rowWords(error), fieldWords(error, value), value[1]);
    case RescueReason::OwnerLost:
        return Errors::tr("%1 was left out with what it belongs to (%2): enter both anew.")
            .arg(rowWords(error), rowName(value[0].toStdString()));
    case RescueReason::RowTwice:
        return Errors::tr("%1 was left out, since another one has its code: enter it anew under "
                          "another.")
            .arg(rowWords(error));
    case RescueReason::StepLost:
        return Errors::tr(
                   "Step %1 of the history was left out, so it can't be taken back: keep the "
                   "damaged file.")
            .arg(value[0]);
    case RescueReason::StepsLost:
        return Errors::tr("Steps of the history may be missing between %1 and %2: keep the damaged "
                          "file.")
            .arg(value[0], value[1]);
    case RescueReason::LogUnreadable:
        return Errors::tr("The log beside the file can't be read, and what was done last may be "
                          "missing: look through the last day.");
    case RescueReason::PhotoLost:
        return Errors::tr("The photograph %1 can't be copied: look for it in a backup.")
            .arg(value[0]);
    case RescueReason::Emptied:
        return Errors::tr("%1 was saved without “%2”, which is lost: complete it.")
            .arg(rowWords(error), fieldWords(error, value));
    case RescueReason::FromHistory:
        return Errors::tr("%1 can't be read and was saved as the history last has it: check it.")
            .arg(rowWords(error));
    case RescueReason::StandIn:
        return Errors::tr("%1 is lost and another stands in its place, so that what belongs to it "
                          "is kept: complete it.")
            .arg(rowWords(error));
    case RescueReason::HeadRebuilt:
        return Errors::tr("The beginning of the file was damaged and was made anew: check what was "
                          "saved.");
    case RescueReason::NothingReadable:
        return Errors::tr("Nothing in %1 can be read any more: open the latest backup.")
            .arg(value[0]);
    }
    return {};
}

QString words(CheckReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case CheckReason::TwoTraysOnAPlace:
        return Errors::tr("%3 and %4 both stand at %1, place %2: move one of them.")
            .arg(value[0], value[1], value[2], value[3]);
    case CheckReason::TrayAtTwoPlaces:
        return Errors::tr("%1 stands at two places at a time: move it to where it is.")
            .arg(value[0]);
    case CheckReason::EndedTrayStands:
        return Errors::tr("%1 has ended and still stands at a place: move it off the racks.")
            .arg(value[0]);
    case CheckReason::TwoTraysOnAPiece:
        return Errors::tr("%3 and %4 both grow on %1, piece %2: harvest or discard one of them.")
            .arg(value[0], value[1], value[2], value[3]);
    case CheckReason::RetiredPieceInUse:
        return Errors::tr("%3 grows on %1, piece %2, which is retired: bring the piece back into "
                          "use.")
            .arg(value[0], value[1], value[2]);
    case CheckReason::PieceNotSanitised:
        return Errors::tr("%3 grows on %1, piece %2, which was not sanitised after its last use: "
                          "enter when it was.")
            .arg(value[0], value[1], value[2]);
    case CheckReason::NameTwice:
        return Errors::tr("Two entries are called “%1”: rename one of them.").arg(value[0]);
    case CheckReason::NumberTwice:
        return Errors::tr("%1 has the number %2 twice: remove one of them.")
            .arg(value[0], value[1]);
    case CheckReason::GrowsAfterLastCut:
        return Errors::tr("%1 grows though its last cut is weighed: correct that cut.")
            .arg(value[0]);
    case CheckReason::NoLastCut:
        return Errors::tr("%1 counts as harvested without a last cut: weigh it, or correct its "
                          "cuts.")
            .arg(value[0]);
    case CheckReason::StagesOutOfOrder:
        return Errors::tr("The stages of %1 are out of order: correct when they began.")
            .arg(value[0]);
    case CheckReason::TickedTwice:
        return Errors::tr("%1 was ticked twice in one round of %2: take one of the ticks off.")
            .arg(value[0], value.day(1));
    case CheckReason::PriceTwice:
        return Errors::tr("Two prices of one thing hold from %1 on: remove one of them.")
            .arg(value.day(0));
    case CheckReason::StayEndsBeforeIt:
        return Errors::tr("%1 left a place on %3, before it came there on %2: open the latest "
                          "backup.")
            .arg(value[0], value.day(1), value.day(2));
    case CheckReason::BeforeSowing:
        return Errors::tr("%2 of %1 is of %3, before it was sown on %4: open the latest backup.")
            .arg(value[0], rowWords(error), value.day(1), value.day(2));
    case CheckReason::EndUnknown:
        return Errors::tr("%1 has ended without a day: open the latest backup.").arg(value[0]);
    case CheckReason::GrowsThoughEnded:
        return Errors::tr("%1 grows though it has a day on which it ended: open the latest backup.")
            .arg(value[0]);
    case CheckReason::PieceOfOtherMedium:
        return Errors::tr("%1 grows on a piece of another medium than its own: open the latest "
                          "backup.")
            .arg(value[0]);
    case CheckReason::LotOfOtherVariety:
        return Errors::tr("%1 was sown from a lot of another variety: open the latest backup.")
            .arg(value[0]);
    case CheckReason::ServingOfOtherTasting:
        return Errors::tr("A serving of “%1” belongs to two tastings: open the latest backup.")
            .arg(value[0]);
    case CheckReason::ScoreOfOtherTasting:
        return Errors::tr("A score of “%1” is for what another tasting asks: open the latest "
                          "backup.")
            .arg(value[0]);
    case CheckReason::NetIsNotItsBowls:
        return Errors::tr("A cut of %1 weighs other than its bowls: correct it at the scale.")
            .arg(value[0]);
    case CheckReason::NoRoom:
        return Errors::tr("The journal has no room, or several: open the latest backup.");
    }
    return {};
}

} // namespace plumule::ui
