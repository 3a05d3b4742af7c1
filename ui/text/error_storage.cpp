// Part of ui/text/error_words.h: the journal's file, its history, and the journal as a whole.
#include "ui/text/error_words.h"

#include "core/journal/journal.h"
#include "ui/text/table_text.h"
#include "ui/text/text.h"

namespace plumule::ui {
namespace {

QString wordsOfFailure(ErrorKind kind)
{
    switch (kind) {
    case ErrorKind::DiskFull:
        return Errors::tr("The disk is full, but nothing was lost: make room, then do it again.");
    case ErrorKind::NotWritable:
        return Errors::tr("The journal's file or its folder can't be written to: check who may "
                          "write there, and that the disk is not write-protected.");
    case ErrorKind::AlreadyOpen:
        return Errors::tr("Another program is writing to the journal: close it there, then do it "
                          "again.");
    case ErrorKind::Damaged:
    case ErrorKind::NotAJournal:
        return Errors::tr("The journal is damaged, and nothing was changed: open its latest backup "
                          "and keep the damaged file.");
    default:
        return Errors::tr("The journal's file could not be read or written, and nothing was "
                          "changed: check the disk, then start Plumule again.");
    }
}

QString wordsOfDamage(const std::optional<RowAt>& row)
{
    if (!row) {
        return Errors::tr("An entry of the journal is damaged: open its latest backup and keep the "
                          "damaged file.");
    }
    const QString table = rowName(row->table);
    return row->number == 0
               ? Errors::tr("An entry of the kind “%1” is damaged: open the journal's latest "
                            "backup and keep the damaged file.")
                     .arg(table)
               : Errors::tr("Entry %2 of the kind “%1” is damaged: open the journal's latest "
                            "backup and keep the damaged file.")
                     .arg(table, QString::number(row->number));
}

} // namespace

QString words(StorageReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case StorageReason::Failed:
        return wordsOfFailure(error.kind);
    case StorageReason::RowDamaged:
        return wordsOfDamage(error.row);
    case StorageReason::NotAJournal:
        return Errors::tr("%1 is not a Plumule journal, and nothing was changed: choose another "
                          "file.")
            .arg(value[0]);
    case StorageReason::MadeByNewer:
        return Errors::tr("%1 was made by a newer Plumule: update Plumule to open it.")
            .arg(value[0]);
    case StorageReason::FileDamaged:
        return Errors::tr("%1 is damaged, and nothing was changed: open its latest backup and keep "
                          "the damaged file.")
            .arg(value[0]);
    case StorageReason::FileMissing:
        return Errors::tr("There is no file %1: check its name, or choose another one.")
            .arg(value[0]);
    case StorageReason::FileUnreadable:
        return Errors::tr("%1 can't be read: check that it is there and that you may open it.")
            .arg(value[0]);
    case StorageReason::FileExists:
        return Errors::tr("There is a file %1 already, which was left as it is: choose another "
                          "name.")
            .arg(value[0]);
    case StorageReason::NotMade:
        return Errors::tr("%1 can't be made: check its folder and the room on the disk, or choose "
                          "another place.")
            .arg(value[0]);
    case StorageReason::NotWritable:
        return Errors::tr("%1 can only be read, not written: check who may write to it and to its "
                          "folder.")
            .arg(value[0]);
    case StorageReason::ShownAsCopy:
        return Errors::tr("%1 can't be written to, so this is a copy of it and of the log beside "
                          "it, which holds every entry but can't be changed: move the journal with "
                          "what lies beside it to a folder of yours to write on.")
            .arg(value[0]);
    case StorageReason::OpenElsewhere:
        return Errors::tr("%1 is open in another window or program: close it there to write here.")
            .arg(value[0]);
    case StorageReason::OlderAndReadOnly:
        return Errors::tr("%1 was made by an older Plumule and can't be brought up to date where "
                          "it is: copy it to a folder that can be written to.")
            .arg(value[0]);
    case StorageReason::FileGone:
        return Errors::tr("%1 was moved or removed while it was open, so nothing was written: put "
                          "it back, or open it where it is now.")
            .arg(value[0]);
    case StorageReason::BackupStopped:
        return Errors::tr("The backup was stopped as you asked, and an older one was left as it "
                          "was: start again when you like.");
    case StorageReason::BackupFaulty:
        return Errors::tr("The copy has a fault, so it was not kept: check the journal, and open "
                          "an older backup.");
    case StorageReason::ChecksumMissing:
        return Errors::tr("The checksum beside %1 can't be read, so nothing says whether it is "
                          "whole: make a new backup.")
            .arg(value[0]);
    case StorageReason::ChecksumDiffers:
        return Errors::tr("%1 is not as it was written: keep it aside and make a new backup.")
            .arg(value[0]);
    case StorageReason::NothingToTakeBack:
        return Errors::tr("There is nothing to take back: go on with your work.");
    case StorageReason::NothingToDoAgain:
        return Errors::tr("There is nothing to do again: go on with your work.");
    case StorageReason::ChangedSince:
        return Errors::tr("Later work changed the same entry, so this can't be taken back by "
                          "itself: take that back first.");
    case StorageReason::StoodOnSince:
        return Errors::tr("Later entries hang on what would go: take those back first.");
    case StorageReason::EntryUnknown:
        return Errors::tr("That step is not in the history any more: look at the list again.");
    case StorageReason::EntryDamaged:
        return Errors::tr("Step %1 of the history is damaged, so it can't be taken back: correct "
                          "the entry itself, and keep a backup of the journal.")
            .arg(value[0]);
    case StorageReason::EntryOfOtherSchema:
        return Errors::tr("That step was made by another version of Plumule and can't be taken "
                          "back here: correct the entry itself.");
    }
    return {};
}

QString explanationOf(FolderKind folder)
{
    switch (folder) {
    case FolderKind::Local:
        return {};
    case FolderKind::Network:
        return Errors::tr("This journal lies on another machine's disk, so each entry is written "
                          "there at once: that is safe but slower. Keep it open on one machine "
                          "only, and the connection up.");
    case FolderKind::Bridged:
        return Errors::tr("This journal lies in a folder that a program keeps for you, perhaps a "
                          "synced one, so each entry is written there at once: that is safe but "
                          "slower. Keep it open on one machine only, and close it before it is "
                          "synced.");
    }
    return {};
}

QString words(JournalReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case JournalReason::ReadOnly:
        return Errors::tr("The journal is open to read only, so nothing was written: close it "
                          "elsewhere and open it again.");
    case JournalReason::Unexpected:
        return Errors::tr("Something went wrong that should not have (%1), and nothing was "
                          "changed: check the journal in the set-up, and keep a backup.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
