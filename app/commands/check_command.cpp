#include "app/commands/command.h"

namespace plumule::app {

int runCheck(const QStringList& arguments)
{
    QCommandLineParser parser;
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    const auto faults = (*opened)->faults();
    if (!faults) {
        return refused(faults.error());
    }
    for (const std::string& fault : *faults) {
        print(QString::fromStdString(fault));
    }
    print(faults->empty() ? QStringLiteral("The journal is sound.")
                          : QStringLiteral("Faults: %1. Keep this file and open the latest backup.")
                                .arg(faults->size()));
    return faults->empty() ? kDone : kRefused;
}

} // namespace plumule::app
