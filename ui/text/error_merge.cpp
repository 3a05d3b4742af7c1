// Part of ui/text/error_words.h: copies that are taken along and brought back.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(MergeReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case MergeReason::NameMissing:
        return Errors::tr("The copy needs a name: say where it goes, as “Rack laptop”.");
    case MergeReason::CopyOfACopy:
        return Errors::tr("This journal is a copy itself: take further copies from the journal "
                          "that it comes from.");
    case MergeReason::NotTaken:
        return Errors::tr("There is a file or folder %1 already: choose another name.")
            .arg(value[0]);
    case MergeReason::NoCopy:
        return Errors::tr("%1 is no copy that was taken along: choose the copy’s file.")
            .arg(value[0]);
    case MergeReason::OfAnother:
        return Errors::tr("%1 is a copy of another journal: open that one, and bring it back "
                          "there.")
            .arg(value[0]);
    case MergeReason::Faulty:
        return Errors::tr(
                   "The copy %1 is damaged, and nothing was brought back: copy its file anew "
                   "from where it is used, and try again.")
            .arg(value[0]);
    case MergeReason::NothingNew:
        return Errors::tr("All that was done in the copy %1 is here already: bring it back when "
                          "more was done in it.")
            .arg(value[0]);
    case MergeReason::NotAllChosen:
        return Errors::tr("Not all is chosen yet, %n row(s) are left: choose one side of each.",
                          nullptr, value.number(0));
    case MergeReason::ChangedMeanwhile:
        return Errors::tr("The journal was changed while you chose: look at it once more.");
    case MergeReason::StillBroken:
        return error.values.empty()
                   ? Errors::tr("What was chosen rests on something that the other side removed: "
                                "choose the other side there.")
                   : Errors::tr("What was chosen does not go together (%1): choose the other side "
                                "of one of them.")
                         .arg(QString::fromStdString(error.values.back()));
    }
    return {};
}

} // namespace plumule::ui
