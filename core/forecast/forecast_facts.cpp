#include "core/forecast/forecast_facts.h"

namespace plumule {
namespace {

void forgetAfter(Moment moment, std::optional<Moment>& event)
{
    if (event && *event > moment) {
        event.reset();
    }
}

} // namespace

TrayFact knownAt(TrayFact tray, Moment moment)
{
    forgetAfter(moment, tray.cutAt);
    forgetAfter(moment, tray.discardedAt);
    if (!tray.cutAt) {
        tray.cut = {};
    }
    for (StageFact& stage : tray.stages) {
        forgetAfter(moment, stage.started);
        stage.delayMinutes = 0;
    }
    return tray;
}

ForecastFacts knownAt(const ForecastFacts& facts, Moment moment)
{
    if (moment >= facts.now) {
        return facts;
    }
    ForecastFacts known;
    known.now = moment;
    known.trayArea = facts.trayArea;
    known.varieties = facts.varieties;
    known.media = facts.media;
    for (const TrayFact& tray : facts.trays) {
        if (tray.begunAt() <= moment) {
            known.trays.push_back(knownAt(tray, moment));
        }
    }
    return known;
}

} // namespace plumule
