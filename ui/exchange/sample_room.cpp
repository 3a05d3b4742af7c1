#include "ui/exchange/sample_room.h"

#include "core/base/file_reason.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace plumule::ui {

Result<std::unique_ptr<Journal>> makeSampleJournal(const QString& path, const Clock& clock)
{
    const QTemporaryDir folder;
    const QDir builtIn(QStringLiteral(":/sample-data"));
    for (const QString& name : builtIn.entryList({QStringLiteral("*.csv")})) {
        if (!QFile::copy(builtIn.filePath(name), folder.filePath(name))) {
            return fail(ErrorKind::NotWritable, FileReason::NotWritten,
                        folder.filePath(name).toStdString());
        }
    }
    RoomPlan plan;
    plan.room.name = QCoreApplication::translate("SampleRoom", "Sample room").toStdString();
    auto journal = Journal::create(path.toStdString(), plan, clock);
    if (!journal) {
        return journal;
    }
    const auto filled = (*journal)->exchange().fillWithSample(folder.path().toStdString());
    if (!filled) {
        return passOn(filled);
    }
    return journal;
}

} // namespace plumule::ui
