// Part of ui/text/text.h: errors.
#include "ui/text/text.h"

#include "ui/text/error_words.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

// Of what the file, the machine or a sum refuses.
QString generalSentence(ErrorKind kind)
{
    switch (kind) {
    case ErrorKind::Missing:
        return Errors::tr("Something needed is missing: fill in every field that asks for it.");
    case ErrorKind::Invalid:
        return Errors::tr(
            "These values can't be worked with: check them and correct those that stand out.");
    case ErrorKind::Ambiguous:
        return Errors::tr("A number can be read in two ways: type thousands without a mark, and "
                          "decimals with a point.");
    case ErrorKind::NotFound:
        return Errors::tr("There is no file of that name: check the name, or choose another one.");
    case ErrorKind::Duplicate:
        return Errors::tr(
            "There is one of that name already, which was left as it is: choose another name.");
    case ErrorKind::Conflict:
        return Errors::tr("That does not fit how things stand: look at the page again.");
    case ErrorKind::InUse:
        return Errors::tr("Other entries hang on it, so it stays: change it instead.");
    case ErrorKind::ChangedSince:
        return Errors::tr("Later work changed the same entry, so this can't be taken back by "
                          "itself: take that back first.");
    case ErrorKind::NothingThere:
        return Errors::tr("There is nothing to take back or to do again: go on with your work.");
    case ErrorKind::TooFew:
        return Errors::tr(
            "There are too few numbers for that: weigh more trays, or choose a longer time.");
    case ErrorKind::NotEstimable:
        return Errors::tr("These data can't tell that: weigh more trays that differ in it.");
    case ErrorKind::NoConvergence:
        return Errors::tr(
            "No curve fits these points: measure more of them, or choose another curve.");
    case ErrorKind::NotAJournal:
        return Errors::tr(
            "This file is not a Plumule journal, and nothing was changed: choose another one.");
    case ErrorKind::NewerVersion:
        return Errors::tr("This was made by a newer Plumule: update Plumule to open it.");
    case ErrorKind::Damaged:
        return Errors::tr("The journal is damaged, and nothing was changed: open its latest backup "
                          "and keep the damaged file.");
    case ErrorKind::NotWritable:
        return Errors::tr("The file or its folder can't be written to: check who may write there, "
                          "or choose another folder.");
    case ErrorKind::AlreadyOpen:
        return Errors::tr(
            "The journal is open in another window or program: close it there to write here.");
    case ErrorKind::ReadOnly:
        return Errors::tr("The journal is open to read only, so nothing was written: close it "
                          "elsewhere and open it again.");
    case ErrorKind::DiskFull:
        return Errors::tr("The disk is full, but nothing was lost: make room, then do it again.");
    case ErrorKind::FileGone:
        return Errors::tr("The journal's file was moved or removed while it was open, so nothing "
                          "was written: put it back, or open it where it is now.");
    case ErrorKind::Unreadable:
        return Errors::tr(
            "The file can't be read: check that it is there and that you may open it.");
    case ErrorKind::Cancelled:
        return Errors::tr(
            "Stopped as you asked, and nothing was changed: start again when you like.");
    }
    return {};
}

template <class... Families>
struct WordsOf
{
    static QString sentence(const Error& error)
    {
        QString found;
        const auto ask = [&](const auto& reason) {
            if (reason) {
                found = words(*reason, error);
            }
        };
        (ask(error.reason.as<Families>()), ...);
        return found;
    }
};

} // namespace

QString sentence(const Error& error)
{
    QString text = EveryReasonFamily<WordsOf>::sentence(error);
    if (text.isEmpty()) {
        text = generalSentence(error.kind);
    }
    if (!error.row || !error.reason.as<ExchangeReason>()) {
        return text;
    }
    const QString file = QString::fromStdString(error.row->table);
    return file.isEmpty()
               ? Errors::tr("Line %1: %2").arg(QString::number(error.row->number), text)
               : Errors::tr("%1, line %2: %3").arg(file, QString::number(error.row->number), text);
}

} // namespace plumule::ui
