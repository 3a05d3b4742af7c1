// Part of ui/text/text.h: errors.
#include "ui/text/text.h"

#include "ui/text/error_words.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

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

// Whatever its reason tells besides: a full disk is mended in one way.
QString wordsOfFullDisk(const QString& file)
{
    return Errors::tr("The disk is full, so %1 was not written, but nothing else was lost: make "
                      "room on it, then do it again.")
        .arg(file);
}

} // namespace

QString sentence(const Error& error)
{
    // What failed within the journal names no file.
    if (error.kind == ErrorKind::DiskFull && !error.is(StorageReason::Failed)) {
        return wordsOfFullDisk(ErrorValues(error)[0]);
    }
    const QString text = EveryReasonFamily<WordsOf>::sentence(error);
    const bool isOfFile =
        error.reason.as<ExchangeReason>().has_value() || error.reason.as<ClimateReason>();
    if (!error.row || !isOfFile) {
        return text;
    }
    const QString file = QString::fromStdString(error.row->table);
    return file.isEmpty()
               ? Errors::tr("Line %1: %2").arg(QString::number(error.row->number), text)
               : Errors::tr("%1, line %2: %3").arg(file, QString::number(error.row->number), text);
}

} // namespace plumule::ui
