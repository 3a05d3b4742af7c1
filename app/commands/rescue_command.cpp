#include "app/commands/command.h"

#include "app/commands/rescue_text.h"
#include "core/journal/check/journal_rescue.h"

namespace plumule::app {

int runRescue(const QStringList& arguments)
{
    QCommandLineParser parser;
    const auto given = argumentsOf(parser, arguments, {"OLD", "NEW"});
    if (!given) {
        return kBadCall;
    }
    const auto saved = rescueJournal((*given)[0].toStdString(), (*given)[1].toStdString(),
                                     nameOfLost().toStdString());
    if (!saved) {
        return refused(saved.error());
    }
    for (const QString& line : rescueWords(*saved)) {
        print(line);
    }
    return kDone;
}

} // namespace plumule::app
