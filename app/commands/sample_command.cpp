#include "app/commands/command.h"

#include "ui/exchange/sample_room.h"

namespace plumule::app {

int runSample(const QStringList& arguments)
{
    QCommandLineParser parser;
    const auto given = argumentsOf(parser, arguments, {"FILE"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto made = ui::makeSampleJournal(given->front(), clock);
    if (!made) {
        return refused(made.error());
    }
    print(QStringLiteral("Wrote the sample room, which is invented, to %1.").arg(given->front()));
    return kDone;
}

} // namespace plumule::app
