#include "ui/exchange/sample_room.h"

#include "core/base/file_reason.h"
#include "core/storage/storage_reason.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

namespace plumule::ui {
namespace {

tl::unexpected<Error> notWritten(const QString& path)
{
    return fail(ErrorKind::NotWritable, FileReason::NotWritten, path.toStdString());
}

// The tables that are built in, as files.
Done unpackTables(const QTemporaryDir& folder)
{
    const QDir builtIn(QStringLiteral(":/sample-data"));
    for (const QString& name : builtIn.entryList({QStringLiteral("*.csv")})) {
        if (!QFile::copy(builtIn.filePath(name), folder.filePath(name))) {
            return notWritten(folder.filePath(name));
        }
    }
    return {};
}

Done fillNewJournal(const QString& path, const QTemporaryDir& tables, const Clock& clock)
{
    RoomPlan plan;
    plan.room.name = QCoreApplication::translate("SampleRoom", "Sample room").toStdString();
    const auto journal = Journal::create(path.toStdString(), plan, clock);
    if (!journal) {
        return passOn(journal);
    }
    const auto filled = (*journal)->exchange().fillWithSample(tables.path().toStdString());
    return filled ? Done() : Done(passOn(filled));
}

} // namespace

// Made in a folder of its own beside the place it is for, so that there it is whole or is not.
Result<std::unique_ptr<Journal>> makeSampleJournal(const QString& path, const Clock& clock)
{
    if (QFileInfo::exists(path)) {
        return fail(ErrorKind::Duplicate, StorageReason::FileExists, path.toStdString());
    }
    const QTemporaryDir tables;
    const QTemporaryDir making(QFileInfo(path).absolutePath() + QStringLiteral("/.plumule-XXXXXX"));
    if (!making.isValid()) {
        return notWritten(path);
    }
    const QString made = making.filePath(QFileInfo(path).fileName());
    const Done filled =
        unpackTables(tables).and_then([&] { return fillNewJournal(made, tables, clock); });
    if (!filled) {
        return passOn(filled);
    }
    // Refuses where a file of that name was made meanwhile.
    if (!QFile::rename(made, path)) {
        return notWritten(path);
    }
    return Journal::open(path.toStdString(), clock);
}

} // namespace plumule::ui
