// Part of ui/text/error_words.h: what no journal holds, journals that are not as Plumule makes
// them, and backups.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(BoundsReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case BoundsReason::Day:
        return Errors::tr("The day %1 lies beyond 1990 to 2100: correct it.").arg(value.day(0));
    case BoundsReason::TimeOfDay:
        return Errors::tr("There is no such time of day: correct it.");
    case BoundsReason::Amount:
        return Errors::tr("A number is beyond anything in a grow room: check its digits and its "
                          "unit.");
    case BoundsReason::TextLength:
        return Errors::tr("The text that begins with “%1” is too long: leave it under %n letters.",
                          nullptr, value.number(1))
            .arg(value[0]);
    case BoundsReason::TextCharacters:
        return Errors::tr("A text has characters that can't be kept: enter it again, or save the "
                          "table it comes from as UTF-8.");
    }
    return {};
}

QString words(SchemaReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case SchemaReason::Foreign:
        return Errors::tr("This journal holds the %1 “%2”, which Plumule never makes, so it was "
                          "not opened: open a backup instead.")
            .arg(value[0], value[1]);
    case SchemaReason::Altered:
        return Errors::tr("The %1 “%2” of this journal is not as Plumule makes it, so it was not "
                          "opened: open a backup instead.")
            .arg(value[0], value[1]);
    case SchemaReason::Missing:
        return Errors::tr("The %1 “%2” is missing from this journal, so it was not opened: open a "
                          "backup instead.")
            .arg(value[0], value[1]);
    }
    return {};
}

QString words(BackupReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case BackupReason::FolderGone:
        return Errors::tr("The folder for backups, %1, is not there: put its disk in, or choose "
                          "another folder.")
            .arg(value[0]);
    case BackupReason::Altered:
        return Errors::tr("The backup %1 is no longer as it was written: choose an older one.")
            .arg(value[0]);
    case BackupReason::PhotoAltered:
        return Errors::tr("The photograph %1 of this backup can't be read: choose another backup.")
            .arg(value[0]);
    case BackupReason::TargetTaken:
        return Errors::tr("There is a file or folder %1 already: choose another name.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
