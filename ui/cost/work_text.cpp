#include "ui/cost/work_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class WorkTr
{
    Q_DECLARE_TR_FUNCTIONS(Work)
};

} // namespace

QString begunText(const WorkTime& work, Date today)
{
    const QString clock = clockText(work.minute);
    return work.on == today ? clock : QStringLiteral("%1, %2").arg(shortDayText(work.on), clock);
}

QString durationText(int seconds)
{
    if (seconds < 60) {
        return WorkTr::tr("%1 s").arg(seconds);
    }
    const int minutes = seconds / 60;
    return minutes < 60 ? WorkTr::tr("%1 min").arg(minutes)
                        : WorkTr::tr("%1 h %2 min")
                              .arg(minutes / 60)
                              .arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

QString minutesText(double seconds)
{
    return WorkTr::tr("%1 min").arg(numberText(seconds / 60, 2));
}

QString measuredText(const MeasuredTask& task)
{
    const auto mean = task.mean();
    return mean ? WorkTr::tr("%1, measured %2, %3")
                      .arg(minutesText(*mean),
                           WorkTr::tr("in %n timing(s)", nullptr, task.stretches),
                           WorkTr::tr("done %n time(s)", nullptr, static_cast<int>(task.times)))
                : WorkTr::tr("not measured yet");
}

} // namespace plumule::ui
