#include "app/commands/command.h"

#include "core/journal/exchange/exchange_entries.h"
#include "ui/text/text.h"

#include <QFileInfo>

namespace plumule::app {

int runExport(const QStringList& arguments)
{
    QCommandLineParser parser;
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "FOLDER"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto journal = Journal::open((*given)[0].toStdString(), clock, Access::ReadOnly);
    if (!journal) {
        return refused(journal.error());
    }
    const auto outcome = (*journal)->exchange().writeAll((*given)[1].toStdString());
    if (!outcome) {
        return refused(outcome.error());
    }
    print(QStringLiteral("Wrote %1 files with %2 rows, and %3 photographs, into %4.")
              .arg(QString::number(outcome->files), QString::number(outcome->rows),
                   QString::number(outcome->photos), (*given)[1]));
    for (const std::string& photo : outcome->missingPhotos) {
        print(QStringLiteral("The photograph %1 is not there.").arg(QString::fromStdString(photo)));
    }
    return kDone;
}

} // namespace plumule::app
