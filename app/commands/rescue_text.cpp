#include "app/commands/rescue_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::app {
namespace {

class RescueTr
{
    Q_DECLARE_TR_FUNCTIONS(Rescue)
};

} // namespace

QString nameOfLost()
{
    return RescueTr::tr("Lost");
}

QStringList rescueWords(const RescueReport& report)
{
    QStringList lines;
    lines << RescueTr::tr("Entries saved: %1.").arg(report.entries)
          << RescueTr::tr("Steps of the history saved: %1.").arg(report.steps)
          << RescueTr::tr("Photographs saved: %1.").arg(report.photos);
    if (report.said.empty()) {
        return lines << RescueTr::tr("Nothing was left out.");
    }
    lines << RescueTr::tr("What could not be taken over as it stood: %1.").arg(report.said.size());
    for (const Error& each : report.said) {
        lines << ui::sentence(each);
    }
    return lines;
}

} // namespace plumule::app
