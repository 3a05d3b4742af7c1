#include "ui/backup/take_along.h"

#include "core/journal/merge/merge_entries.h"
#include "ui/page/aside.h"

#include <QFileInfo>

namespace plumule::ui {
namespace {

class TakeAlong
{
    Q_DECLARE_TR_FUNCTIONS(TakeAlong)
};

// A file's name can't have them.
QString plainName(QString name)
{
    for (QChar& letter : name) {
        if (QStringLiteral("/\\:*?\"<>|").contains(letter)) {
            letter = QLatin1Char('_');
        }
    }
    return name;
}

void writeTo(Journal& journal, const Services& services, QWidget* parent, const QString& name,
             const QString& target)
{
    const auto copy = journal.copies().beginCopy(name.toStdString());
    if (!copy) {
        services.messages.refuse(sentence(copy.error()));
        return;
    }
    askAside(
        services.tasks, TakeAlong::tr("Writing the copy"), journal,
        [copy = *copy, file = target.toStdString()](Journal& elsewhere, const Progress& progress) {
            return elsewhere.copies().writeCopyTo(copy, file, progress);
        },
        parent,
        [&journal, services, copy = *copy, name, target](const Done& written) {
            if (!written) {
                journal.copies().giveUpCopy(copy);
                services.messages.refuse(sentence(written.error()));
                return;
            }
            services.messages.tell(
                TakeAlong::tr("The copy %1 is written: %2. Work in it there, and bring it back "
                              "from the History page.")
                    .arg(name, target));
        });
}

} // namespace

void takeCopyAlong(Journal& journal, const Services& services, QWidget* parent)
{
    services.ask.line(
        parent, TakeAlong::tr("Take a copy along"), TakeAlong::tr("Where does it go?"),
        TakeAlong::tr("Rack laptop"), [&journal, services, parent](const QString& name) {
            const QFileInfo file(QString::fromStdString(journal.path().string()));
            services.ask.fileToSave(parent, TakeAlong::tr("Take a copy along"),
                                    QStringLiteral("%1/%2, %3.plumule")
                                        .arg(file.path(), file.completeBaseName(), plainName(name)),
                                    TakeAlong::tr("Plumule journals (*.plumule)"),
                                    [&journal, services, parent, name](const QString& target) {
                                        writeTo(journal, services, parent, name,
                                                target.endsWith(QStringLiteral(".plumule"))
                                                    ? target
                                                    : target + QStringLiteral(".plumule"));
                                    });
        });
}

} // namespace plumule::ui
