#include "ui/review/metric_text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class MetricTr
{
    Q_DECLARE_TR_FUNCTIONS(Metric)
};

} // namespace

QString metricName(Response response)
{
    switch (response) {
    case Response::YieldPerTray:
        return MetricTr::tr("Yield g/tray");
    case Response::YieldPerTraySown:
        return MetricTr::tr("Yield per tray sown");
    case Response::CostPerGram:
        return MetricTr::tr("Cost per gram");
    case Response::HeightOnDay:
        return MetricTr::tr("Height");
    case Response::Evenness:
        return MetricTr::tr("Evenness");
    case Response::DaysToHarvest:
        return MetricTr::tr("Days to harvest");
    case Response::Residue:
        return MetricTr::tr("Residue");
    case Response::Work:
        return MetricTr::tr("Work");
    case Response::YieldPerArea:
        return MetricTr::tr("Yield g/m²");
    case Response::YieldPerSeed:
        return MetricTr::tr("Yield per gram of seed");
    case Response::YieldPerDay:
        return MetricTr::tr("Yield a day");
    }
    return {};
}

} // namespace plumule::ui
