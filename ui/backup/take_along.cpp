#include "ui/backup/take_along.h"

#include "core/journal/merge/merge_entries.h"

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
    services.tasks.run(
        TakeAlong::tr("Writing the copy"),
        [path = journal.path(), &clock = journal.clock(), copy = *copy,
         file = target.toStdString()](const Progress& progress) -> Done {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            return opened ? (*opened)->copies().writeCopyTo(copy, file, progress)
                          : Done(passOn(opened));
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
